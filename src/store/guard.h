/* What is looked at before a file is trusted.  All return FALSE and a sentence in *err, and write nothing. */
#ifndef STORE_GUARD_H
#define STORE_GUARD_H

#include "store/inside.h"

/* It is there, a regular file, not empty, and may be read; for DB_WRITE also written, it and its folder. */
gboolean guard_path(const char *path, enum db_mode mode, GError **err);
/* The first 100 bytes, read past SQLite's locks and journal: SQLite's mark, our application_id, no newer schema. */
gboolean guard_header(struct db *db, GError **err);
/* quick_check, when the file is small enough for it to go unnoticed. */
gboolean guard_pages(struct db *db, GError **err);
/* Tables and indexes exactly as the migrations make them, no triggers, no views. */
gboolean guard_schema(struct db *db, GError **err);

/* SHA-256 in hex over the names and texts of all tables and indexes; NULL and *err when they can't be read. */
char *guard_schema_hash(struct db *db, GError **err);
/* The same as this program knows it for a version, counted from 1. */
const char *guard_known_hash(int version);

#endif
