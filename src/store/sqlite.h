/* The one place where SQLite's header comes in, with its session extension; for the .c files of store/ alone. */
#ifndef STORE_SQLITE_H
#define STORE_SQLITE_H

#define SQLITE_ENABLE_SESSION 1
#define SQLITE_ENABLE_PREUPDATE_HOOK 1
#include <sqlite3.h>

#endif
