/* Taking indexes away while many rows come in, and making them anew. */
#ifndef STORE_INDEXES_H
#define STORE_INDEXES_H

#include "store/inside.h"

/* Drop those that the schema names, of one table or (NULL) of all.  Returns their texts, for g_ptr_array_free; NULL
 * on failure.  No statement may be reading. */
GPtrArray *indexes_drop(struct db *db, const char *table, GError **err);
gboolean indexes_make(struct db *db, const GPtrArray *texts, GError **err);

#endif
