-- The file itself: how it is opened, its transactions, and its journal.

-- A file may come from anyone and lie on a stick: check cells, map nothing, reach the disk before "saved" is said.
--! SETTINGS
PRAGMA cell_size_check = ON;
PRAGMA mmap_size = 0;
PRAGMA synchronous = EXTRA;

--! READ_ONLY
PRAGMA query_only = ON;

--! JOURNAL_MODE
PRAGMA journal_mode = DELETE;

--! SYNCHRONOUS
PRAGMA synchronous;

--! QUICK_CHECK
PRAGMA quick_check(1);

--! INTEGRITY_CHECK
PRAGMA integrity_check(100);

-- table, row, the table that it refers to, number of the reference
--! FOREIGN_KEY_CHECK
PRAGMA foreign_key_check;

-- The same of one table: a table that a row of it refers to in vain
--! FOREIGN_KEY_CHECK_OF
SELECT parent FROM pragma_foreign_key_check(?1);

-- type, name, text; statistics that ANALYZE leaves behind do not count
--! SCHEMA_ROWS
SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_schema
WHERE name NOT LIKE 'sqlite~_stat%' ESCAPE '~' ORDER BY type, name;

--! USER_VERSION
PRAGMA user_version;

--! DATA_VERSION
PRAGMA data_version;

--! FOREIGN_KEYS_OFF
PRAGMA foreign_keys = OFF;

--! FOREIGN_KEYS_ON
PRAGMA foreign_keys = ON;

--! BEGIN_READ
BEGIN;

--! BEGIN_WRITE
BEGIN IMMEDIATE;

--! COMMIT
COMMIT;

--! ROLLBACK
ROLLBACK;

-- A bulk import keeps the inner pages of the indexes at hand: 64 MiB, and back to SQLite's usual 2 MB.
--! CACHE_BULK
PRAGMA cache_size = -65536;

--! CACHE_USUAL
PRAGMA cache_size = -2000;

-- A scratch file for the replay: it is thrown away whatever happens.
--! SCRATCH
PRAGMA synchronous = OFF;
PRAGMA journal_mode = OFF;
PRAGMA cache_size = -8000;

-- The indexes that the schema names, for dropping them and making them again; ?1 is the table
--! INDEXES
SELECT name, tbl_name, sql FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL ORDER BY name;

--! ADD_ENTRY
INSERT INTO entry VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11);

--! ENTRIES
SELECT coalesce(max(seq), 0) FROM entry;

--! LAST_ENTRY
SELECT seq, hash FROM entry WHERE seq = (SELECT max(seq) FROM entry);

-- seq; everything but the changeset, and its length
--! ENTRY
SELECT seq, at, who, device, what, schema, undoes, redoes, previous, hash, length(changeset)
FROM entry WHERE seq = ?1;

--! ENTRIES_NEWEST_FIRST
SELECT seq, at, who, device, what, schema, undoes, redoes, previous, hash, length(changeset)
FROM entry ORDER BY seq DESC;

--! ENTRIES_OLDEST_FIRST
SELECT seq, at, who, device, what, schema, undoes, redoes, previous, hash, length(changeset)
FROM entry ORDER BY seq;
