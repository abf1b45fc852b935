/* Logbooks for the tests of store/: a scratch folder, made-up records of every kind, and a small life of a boat. */
#ifndef TESTS_STORE_FIXTURE_H
#define TESTS_STORE_FIXTURE_H

#include "base/err.h"
#include "model/records.h"
#include "store/db.h"

#include <check.h>
#include <string.h>

/* For tcase_add_checked_fixture: makes the folder, removes it with all that is in it. */
void fixture_setup(void);
void fixture_teardown(void);
/* A path in that folder; freed with it. */
const char *fixture_path(const char *name);

/* The key of the n-th record of a kind, n from 1. */
gint64 fixture_key(enum record r, int n);
/* A plausible n-th record of any kind, n from 1, freshly initialised; it refers to the first of other kinds. */
void fixture_record(enum record r, int n, void *record);
/* sizeof the largest record. */
#define FIXTURE_RECORD 512

/* One command that puts the records n1..n2 of a kind. */
void fixture_put(struct db *db, enum record r, int n1, int n2);
/* A new logbook in which every kind has records, with some 20 entries: also corrections, removals, an undo. */
struct db *fixture_book(const char *name);
struct db *fixture_open(const char *name, enum db_mode mode);

/* Begin and commit, or the test fails. */
void fixture_begin(struct db *db);
void fixture_commit(struct db *db, const char *what);
struct entry_head fixture_head(const char *what);

/* Everything in the tables of records, as text; and of any table. */
char *fixture_dump(struct db *db);
/* SHA-256 of a file's bytes in hex. */
char *fixture_bytes(const char *path);
/* How many files the folder holds. */
int fixture_files(void);
/* Run SQL on a file behind the logbook's back. */
void fixture_sql(const char *path, const char *sql);

/* The call failed with that code and a message that holds the words; frees the error. */
#define fixture_fails(call, error, wanted_code, words) \
	do { \
		ck_assert(!(call)); \
		ck_assert_ptr_nonnull(error); \
		ck_assert_msg(strstr((error)->message, words) != NULL, "\"%s\" lacks \"%s\"", (error)->message, \
			      words); \
		ck_assert_msg((error)->code == (int)(wanted_code), "%s: code %d", (error)->message, (error)->code); \
		g_clear_error(&(error)); \
	} while (0)

/* Fails with the message when the call did. */
#define fixture_works(call, error) \
	ck_assert_msg((call), "%s", (error) ? (error)->message : "no message")

#endif
