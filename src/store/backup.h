/* A copy of a logbook while it is open. */
#ifndef STORE_BACKUP_H
#define STORE_BACKUP_H

#include "store/db.h"

/* Into a new file, mode 0600, that appears whole or not at all, and is on the disk when this returns TRUE.  Never
 * over a file that is there (ERR_SYSTEM). */
gboolean db_backup(struct db *db, const char *path, GError **err);

#endif
