/* What the tests of the yard sheet do: a boat with work and findings, a sheet of all of it, and answers to its lines. */
#ifndef TESTS_LOGBOOK_YARD_OPEN_H
#define TESTS_LOGBOOK_YARD_OPEN_H

#include "logbook/finding.h"
#include "logbook/yard.h"
#include "open.h"

/* Work that sinks, work that costs, a thing seen and one that holds the launch. */
static inline void
open_tern(void)
{
	open_plain("Tern");
	import_text(RECORD_FITTING, "path,title,needs-off,off-minutes,variants\nhull,Hull,,,\nengine,Engine,,,plain sealed\n"
				    "engine/belt,Belt,engine/guard,10,\nengine/guard,Guard,,5,\n");
	import_text(RECORD_TASK, "name,fitting,title,verb,place,mechanism,consequence,rule\n"
				 "hull.plug,hull,Renew the plug,renew,out,none,sinks,done\n"
				 "engine.clean,engine,Clean,change,anywhere,none,costs,done\n"
				 "belt.renew,engine/belt,Renew the belt,renew,anywhere,rubber,costs,renewal\n"
				 "belt.look,engine/belt,Look at the belt,inspect,anywhere,rubber,sinks,inspection\n");
	import_text(RECORD_FINDING, "date,words,level,fitting,makes-due\n2026-11-01,crack,hold,hull,\n"
				    "2026-11-02,belt squeals,mend,engine/belt,belt.renew\n");
}

static const char *everything[] = { "hull.plug", "engine.clean", "belt.renew", "belt.look", NULL };

/* The sheet as text: CSV of the tasks named, and what was found. */
static inline char *
write_sheet(char **mine, gboolean owner)
{
	struct yard_form form = { .ask = { who.today, NONE }, .mine = mine, .for_yard = TRUE, .for_owner = owner };
	g_autoptr(GArray) findings = book_findings(book, boat.id, FALSE, NULL);
	g_autoptr(GStrvBuilder) names = g_strv_builder_new();
	g_auto(GStrv) what = NULL;
	g_autofree char *file = g_build_filename(folder, "sheet.csv", NULL);
	struct yard_out out = { .csv = file };
	GError *err = NULL;
	char *text;
	int lines;

	g_strv_builder_addv(names, everything);
	for (guint i = 0; i < findings->len; i++) {
		g_autofree char *key = book_key_text(((struct finding *)(void *)findings->data)[i].id);

		g_strv_builder_add(names, key);
	}
	form.what = what = g_strv_builder_end(names);
	ck_assert_msg(book_yard(book, &boat, &form, &out, &lines, &err), "%s", err ? err->message : "?");
	ck_assert(g_file_get_contents(file, &text, NULL, NULL));
	g_remove(file);
	return text;
}

static inline GArray *
lines(void)
{
	return book_records(book, RECORD_SHEETLINE, boat.id, NULL);
}

/* The line of a task, by its name, or of a finding, by its words. */
static inline struct sheetline
line_of(const char *name)
{
	g_autoptr(GArray) all = lines();
	struct sheetline found = { .id = NONE };

	for (guint i = 0; i < all->len; i++) {
		const struct sheetline *s = &((struct sheetline *)(void *)all->data)[i];
		struct finding f;

		if (s->task != NONE && !strcmp(book_name_of(book, RECORD_TASK, s->task), name))
			found = *s;
		if (s->finding == NONE)
			continue;
		g_autofree char *key = book_key_text(s->finding);

		ck_assert(book_find_finding(book, boat.id, key, &f, NULL));
		if (!strcmp(f.words, name))
			found = *s;
		record_clear(RECORD_FINDING, &f);
	}
	ck_assert(found.id != NONE);
	found.answer = NULL;
	return found;
}

static struct yard_said said;
static GString *file_text;

static inline void
begin_file(void)
{
	file_text = g_string_new("yard_initials,id,extra,line_no,yard_result,yard_cost,yard_date\n");
}

static inline void
fill(const char *name, const char *result, const char *cost)
{
	struct sheetline s = line_of(name);
	g_autofree char *key = book_key_text(s.id);

	g_string_append_printf(file_text, "JW,%s,x,%d,%s,%s,2026-11-20\n", key, (int)s.no, result, cost);
}

/* Read the file back; the error's code, 0 when it was read. */
static inline int
read_file(struct yard_read_form form)
{
	g_autofree char *file = g_build_filename(folder, "filled.csv", NULL);
	GError *err = NULL;
	int code = 0;

	ck_assert(g_file_set_contents(file, file_text->str, -1, NULL));
	form.path = file;
	yard_said_clear(&said);
	if (!book_yard_read(book, &boat, &form, &said, &err))
		code = err->code + 1;
	g_clear_error(&err);
	g_remove(file);
	return code;
}

static inline void
counts(int taken, int before, int refused)
{
	ck_assert_int_eq(said.count[YARD_TAKEN], taken);
	ck_assert_int_eq(said.count[YARD_AS_BEFORE], before);
	ck_assert_int_eq(said.count[YARD_REFUSED], refused);
}

static inline guint
n_of(enum record r)
{
	g_autoptr(GArray) all = book_records(book, r, boat.id, NULL);

	return all->len;
}

static inline void
end(void)
{
	yard_said_clear(&said);
	g_string_free(file_text, TRUE);
}

#endif
