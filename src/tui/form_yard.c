/* A sheet for the yard: what is on it, whose lines, and into which files. */
#include "base/date.h"
#include "base/err.h"
#include "tui/form.h"
#include "tui/yard_page.h"

#include <string.h>

enum lines_for { FOR_YARD, FOR_OWNER, FOR_BOTH };
static const char *const for_list[] = { "yard", "owner", "both" };
static const struct words words_for = { "whose lines", for_list, G_N_ELEMENTS(for_list) };
static const char *const paper_list[] = { "A4", "Letter" }; /* as enum paper_size */
static const struct words words_paper = { "paper", paper_list, G_N_ELEMENTS(paper_list) };
static const char *const name_list[] = { "shown", "left out" };
static const struct words words_name = { "name", name_list, G_N_ELEMENTS(name_list) };

static const char *const files[] = { "csv", "text", "pdf" };

char *
yard_path(const char *typed)
{
	return g_str_has_prefix(typed, "~/") ? g_build_filename(g_get_home_dir(), typed + 2, NULL) : g_strdup(typed);
}

/* "yard-2026-11-25.csv", with a number behind it where one of that name is there. */
static char *
free_name(const char *day)
{
	char *name = g_strdup_printf("yard-%s.csv", day);

	for (int i = 2; i < 100 && g_file_test(name, G_FILE_TEST_EXISTS); i++) {
		g_free(name);
		name = g_strdup_printf("yard-%s-%d.csv", day, i);
	}
	return name;
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	char day[DAY_TEXT];
	g_autofree char *csv = free_name(day_iso(app_today(a), day));

	(void)err;
	form_add(f, "what", "What to do", "names of tasks, keys of findings; empty: all findings, and what is wanted", NULL);
	form_add(f, "until", "Due until", "a day, launch, haul-out; empty: before the launch", NULL);
	form_add(f, "mine", "Owner does", "of tasks and findings, what the owner does", NULL);
	form_add_choice(f, "for", "Lines for", &words_for, FOR_YARD, FALSE);
	form_add(f, "csv", "CSV", "a new file, which the yard fills in and splitpin reads back", csv);
	form_add(f, "text", "Text", "a new file to be printed", NULL);
	form_add(f, "pdf", "PDF", "a new file to be printed", NULL);
	form_add_choice(f, "paper", "Paper", &words_paper, PAPER_A4, FALSE);
	form_add_choice(f, "name", "Boat's name", &words_name, 0, FALSE);
	return TRUE;
}

/* What the fields hold; the texts are its own. */
struct typed {
	struct yard_form form;
	char *file[G_N_ELEMENTS(files)]; /* NULL: not wanted */
};

static void
typed_clear(struct typed *t)
{
	g_strfreev(t->form.what);
	g_strfreev(t->form.mine);
	for (guint i = 0; i < G_N_ELEMENTS(files); i++)
		g_free(t->file[i]);
}

/* Words between blanks or commas; NULL: none. */
static char **
names_in(const char *text)
{
	g_auto(GStrv) part = g_strsplit_set(text, " ,", -1);
	g_autoptr(GPtrArray) all = g_ptr_array_new();

	for (int i = 0; part[i]; i++)
		if (*part[i])
			g_ptr_array_add(all, g_strdup(part[i]));
	if (!all->len)
		return NULL;
	g_ptr_array_add(all, NULL);
	return (char **)g_ptr_array_free(g_steal_pointer(&all), FALSE);
}

static void
read_files(struct form *f, struct typed *t)
{
	int wanted = 0;

	for (guint i = 0; i < G_N_ELEMENTS(files); i++) {
		if (!*form_text(f, files[i]))
			continue;
		wanted++;
		t->file[i] = yard_path(form_text(f, files[i]));
		if (g_file_test(t->file[i], G_FILE_TEST_EXISTS))
			form_refuse(f, files[i], "that is there already, and is not written over");
		for (guint k = 0; k < i; k++)
			if (!g_strcmp0(t->file[k], t->file[i]))
				form_refuse(f, files[i], "that is the name of the other file, too");
	}
	if (!wanted)
		form_refuse(f, "csv", "wanted: the name of a file, here or below");
}

static void
read_form(struct app *a, struct form *f, struct typed *t)
{
	gint64 who = form_word(f, "for");
	GError *err = NULL;

	*t = (struct typed) { .form.ask = { app_today(a), NONE } };
	t->form.what = names_in(form_text(f, "what"));
	t->form.mine = names_in(form_text(f, "mine"));
	t->form.for_yard = who != FOR_OWNER;
	t->form.for_owner = who != FOR_YARD;
	t->form.without_names = form_word(f, "name") == 1;
	if (t->form.for_owner && !t->form.mine)
		form_refuse(f, "mine", "wanted: which lines are the owner's?");
	if (*form_text(f, "until") && !book_day(a->book, &a->boat, form_text(f, "until"), &t->form.ask.until, &err))
		form_wrong(f, "until", &err);
	read_files(f, t);
}

/* FALSE: a name is wrong, which is said at its field. */
static gboolean
count_lines(struct app *a, struct form *f, const struct typed *t, int lines[2])
{
	struct yard_form without = t->form;
	g_autoptr(GError) err = NULL;
	GError *why = NULL;
	int none[2];

	if (book_yard_count(a->book, &a->boat, &t->form, lines, &err))
		return TRUE;
	without.mine = NULL;
	if (book_yard_count(a->book, &a->boat, &without, none, &why))
		form_refuse(f, "mine", err->message);
	form_wrong(f, "what", &why);
	return FALSE;
}

static char *
check(struct app *a, struct form *f)
{
	struct typed t;
	int lines[2];
	GString *sum = NULL;

	read_form(a, f, &t);
	if (count_lines(a, f, &t, lines)) {
		sum = g_string_new(NULL);
		if (t.form.for_yard)
			g_string_append_printf(sum, "%d %s for the yard%s", lines[LINE_YARD],
					       lines[LINE_YARD] == 1 ? "line" : "lines", t.form.for_owner ? ", " : "");
		if (t.form.for_owner)
			g_string_append_printf(sum, "%d %s for the owner", lines[LINE_OWNER],
					       lines[LINE_OWNER] == 1 ? "line" : "lines");
		g_string_append(sum, ". What is handed out stays on record.");
		if (lines[LINE_YARD] + lines[LINE_OWNER] == 0)
			form_refuse(f, "what", "nothing of that kind is wanted: name what is to be on it");
	}
	typed_clear(&t);
	return sum ? g_string_free(sum, FALSE) : NULL;
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	struct typed t;
	struct yard_out out = { .modules = a->start.modules };
	g_autofree char *first = NULL;
	gboolean ok;
	int lines;

	read_form(a, f, &t);
	out.csv = t.file[0];
	out.text = t.file[1];
	out.pdf = t.file[2];
	out.for_spreadsheet = TRUE;	/* that is where the yard opens it */
	out.paper = (enum paper_size)form_word(f, "paper");
	ok = book_yard(a->book, &a->boat, &t.form, &out, &lines, err);
	if (ok) {
		first = g_canonicalize_filename(out.csv ? out.csv : out.text ? out.text : out.pdf, NULL);
		app_say(a, STYLE_STRONG, "%d %s written to %s%s", lines, lines == 1 ? "line" : "lines", first,
			out.csv && (out.text || out.pdf) ? ", and for paper" : "");
	}
	typed_clear(&t);
	return ok;
}

const struct form_kind form_yard = {
	.name = "yard", .title = "A sheet for the yard", .button = "Enter writes it", .begin = begin, .check = check, .save = save,
};
