/* long: what every test of a logbook begins with.
 * A logbook in a folder of its own, for the tests of logbook/: set up before each test, and taken away after it. */
#ifndef TESTS_LOGBOOK_OPEN_H
#define TESTS_LOGBOOK_OPEN_H

#include "base/date.h"
#include "logbook/found.h"
#include "logbook/plan.h"
#include "logbook/transfer.h"

#include <check.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>

enum { H = 3600 };

static char *folder, *path;
static struct book_who who;
static struct book *book;
static struct boat boat;

static inline void
setup(void)
{
	folder = g_dir_make_tmp("splitpin-test-XXXXXX", NULL);
	ck_assert_ptr_nonnull(folder);
	path = g_build_filename(folder, "boat.splitpin", NULL);
	who = (struct book_who) { "tester", "desk", 1795600000, day_from_ymd(2026, 11, 25), g_getenv("SPLITPIN_DATA") };
	book = NULL;
	record_init(RECORD_BOAT, &boat);
}

static inline void
teardown(void)
{
	record_clear(RECORD_BOAT, &boat);
	book_close(book);
	g_remove(path);
	g_rmdir(folder);
	g_free(path);
	g_free(folder);
}

static inline const char *
data_folder(void)
{
	return g_getenv("SPLITPIN_DATA") ? g_getenv("SPLITPIN_DATA") : "share";
}

/* The folder of catalogues; the caller's. */
static inline char *
catalogue_folder(void)
{
	return g_build_filename(data_folder(), "catalogue", NULL);
}

static inline void
reopen(enum book_mode mode)
{
	g_autoptr(GError) err = NULL;

	book_close(book);
	book = book_open(path, mode, &who, &err);
	ck_assert_msg(book != NULL, "%s", err ? err->message : "?");
}

static inline void
open_demo(void)
{
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_make_demo(path, &who, data_folder(), &err), "%s", err ? err->message : "?");
	reopen(BOOK_WRITE);
	ck_assert_msg(book_boat(book, NULL, &boat, &err), "%s", err ? err->message : "?");
}

/* A boat without a catalogue, and an engine with a meter at 100 h. */
static inline void
open_plain(const char *name)
{
	struct new_boat n = { .engine = { { "main", 100 * H, NONE, FALSE } }, .n_engines = 1, .catalogue = folder };
	g_autoptr(GError) err = NULL;

	if (!book)
		book = book_create(path, &who, &err);
	ck_assert_msg(book != NULL, "%s", err ? err->message : "?");
	record_init(RECORD_BOAT, &n.boat);
	n.boat.name = g_strdup(name);
	n.boat.kind = KIND_JET;
	n.boat.berth = STAND_TRAILER;
	n.boat.winter = STAND_ROOF;
	n.boat.water = WATER_FRESH;
	n.boat.launch = 415;
	n.boat.haul_out = 1015;
	n.boat.since = day_from_ymd(2026, 1, 1);
	ck_assert_msg(book_add_boat(book, &n, &err), "%s", err ? err->message : "?");
	record_clear(RECORD_BOAT, &boat);
	ck_assert(book_boat(book, name, &boat, &err));
	record_clear(RECORD_BOAT, &n.boat);
}

static inline void
add_task(const char *name, const char *fitting)
{
	struct task t;
	struct limit m;
	struct fitting f;
	g_autoptr(GError) err = NULL;

	ck_assert_msg(book_find_fitting(book, boat.id, fitting, &f, &err), "%s", err ? err->message : "?");
	record_init(RECORD_TASK, &t);
	record_init(RECORD_LIMIT, &m);
	t.boat = boat.id;
	t.name = g_strdup(name);
	t.title = g_strdup("Look");
	t.fitting = f.id;
	t.verb = t.place = t.mechanism = t.consequence = t.rule = 0;
	m.kind = LIMIT_MONTHS;
	m.amount = 12;
	m.standing = STANDING_OWNER;
	m.source = g_strdup("own rule");
	ck_assert_msg(book_add_task(book, &t, &m, 1, &err), "%s", err ? err->message : "?");
	record_clear(RECORD_TASK, &t);
	record_clear(RECORD_LIMIT, &m);
	record_clear(RECORD_FITTING, &f);
}

static inline void
import_text(enum record r, const char *text)
{
	g_autofree char *file = g_build_filename(folder, "in.csv", NULL);
	struct import_form form = { .what = r, .path = file, .boat = boat.name, .decimal_comma = -1 };
	struct import_said said = { 0 };
	g_autoptr(GError) err = NULL;

	ck_assert(g_file_set_contents(file, text, -1, NULL));
	ck_assert_msg(book_import(book, &form, &said, &err), "%s",
		      said.errors && said.errors->len ? (const char *)said.errors->pdata[0] : err ? err->message : "?");
	import_said_clear(&said);
	g_remove(file);
}

static inline int
run_suite(Suite *suite)
{
	SRunner *runner = srunner_create(suite);
	int failed;

	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}

#endif
