/* Two tables of the same kind, row by row and column by column. */
#ifndef STORE_COMPARE_H
#define STORE_COMPARE_H

#include "model/record.h"
#include "store/inside.h"

/* Each difference as a sentence, in which the rows of file are "the file" and those of replay "the journal".  FALSE
 * when the replay can't be read; damage of the file is a difference. */
gboolean compare_tables(struct db *file, struct db *replay, enum record r,
			void (*differ)(void *context, const char *sentence), void *context, GError **err);

#endif
