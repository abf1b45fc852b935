/* undo, redo, history, verify and backup. */
#include "cli/cli.h"

#include "base/amount.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/fitting_history.h"

#include <stdio.h>

static const struct option_def no_options[] = { { NULL, NULL, NULL } };

static void
print_entry(const struct book_entry *e)
{
	g_autofree char *when = book_entry_time(e);
	g_autofree char *who = text_harmless(e->who, FALSE), *what = text_harmless(e->what, FALSE);

	printf("%5" G_GINT64_FORMAT "  %s  %-10s  %s%s\n", e->seq, when, who, what,
	       e->undone_by != NONE ? "  (taken back)" : "");
}

static int
step(struct cli *c, gboolean (*go)(struct book *, struct book_entry *, GError **), const char *done, GError **err)
{
	struct book *b = cli_open(c, BOOK_WRITE, err);
	struct book_entry e = { 0 };
	int code = EXIT_DATA;

	if (!b)
		return EXIT_FILE;
	if (go(b, &e, err)) {
		g_autofree char *what = text_harmless(e.what, FALSE);

		printf("%s: %s\n", done, what);
		code = EXIT_DONE;
	}
	book_entry_clear(&e);
	book_close(b);
	return code;
}

static int
run_undo(struct cli *c, const struct args *a, GError **err)
{
	(void)a;
	return step(c, book_undo, "taken back", err);
}

const struct command command_undo = {
	"undo",
	"",
	"take back the last entry; again: the one before",
	"Nothing is lost: what was taken back stays in the history, and redo brings it back.",
	no_options,
	run_undo, 0,
};

static int
run_redo(struct cli *c, const struct args *a, GError **err)
{
	(void)a;
	return step(c, book_redo, "brought back", err);
}

const struct command command_redo = {
	"redo", "", "bring back what undo took back last", NULL, no_options, run_redo, 0,
};

static void
say_line(void *user, const char *line)
{
	cli_say(user, 4, "%s", line);
}

static const struct option_def history_options[] = {
	{ "limit", "N", "so many entries; else 20" },
	{ "fitting", "PATH", "instead of the journal the whole story of that fitting" },
	{ "csv", NULL, "of --fitting: as CSV" },
	{ "json", NULL, "of --fitting: as JSON" },
	{ NULL, NULL, NULL },
};

static gboolean
list_entries(struct book *b, gint64 limit, GError **err)
{
	g_autoptr(GArray) all = book_history(b, (int)MIN(limit, G_MAXINT), err);

	if (!all)
		return FALSE;
	for (guint i = 0; i < all->len; i++)
		print_entry(&((const struct book_entry *)(const void *)all->data)[i]);
	return TRUE;
}

/* The hash under it stands for all entries up to this one. */
static gboolean
show_entry(struct cli *c, struct book *b, const char *number, GError **err)
{
	g_autofree char *hash = NULL;
	gint64 seq, at;

	if (!count_parse(number, &seq, err) || !book_history_entry(b, seq, say_line, c, err)
	    || !book_entry_hash(b, &seq, &at, &hash, err))
		return FALSE;
	printf("hash %s\n", hash);
	return TRUE;
}

static void
print_story(const struct cli *c, const struct fitting *f, const GArray *events)
{
	cli_say(c, 2, "%s (%s)", f->title, f->path);
	if (f->variant || f->variants)
		cli_say(c, 2, "design: %s", f->variant ? f->variant : "nobody knows");
	for (guint i = 0; i < events->len; i++) {
		g_autofree char *words =
			fitting_event_words(&((const struct fitting_event *)(const void *)events->data)[i], NULL);

		cli_say(c, 2, "%s", words);
	}
	if (!events->len)
		cli_say(c, 2, "Nothing is on record of it.");
}

static int
story(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct fitting_history_ask ask = { boat->id, NONE, NULL, TRUE };
	g_autoptr(GArray) events = NULL;
	g_autofree char *data = NULL;
	gboolean csv = args_flag(a, "csv"), json = args_flag(a, "json");
	struct fitting f;

	if (book_find_fitting(b, boat->id, args_value(a, "fitting"), &f, err)) {
		ask.fitting = f.id;
		events = book_fitting_history(b, &ask, err);
	}
	if (events && (csv || json))
		data = csv ? fitting_history_csv(b, events, err) : fitting_history_json(b, events, err);
	else if (events)
		print_story(c, &f, events);
	if (data)
		cli_data(c, data);
	record_clear(RECORD_FITTING, &f);
	return events && (data || (!csv && !json)) ? EXIT_DONE : EXIT_DATA;
}

static gboolean
check_history(const struct args *a, GError **err)
{
	gboolean fitting = args_flag(a, "fitting");

	if (fitting && (args_word(a, 0) || args_flag(a, "limit")))
		return err_set(err, ERR_USE, "--fitting tells of a fitting: no entry and no --limit with it");
	if (!fitting && (args_flag(a, "csv") || args_flag(a, "json")))
		return err_set(err, ERR_USE, "--csv and --json are of --fitting");
	return !args_flag(a, "csv") || !args_flag(a, "json") || err_set(err, ERR_USE, "--csv and --json together");
}

static int
run_history(struct cli *c, const struct args *a, GError **err)
{
	struct book *b;
	gint64 limit = 20;
	gboolean ok;

	if (!check_history(a, err))
		return EXIT_USE;
	if (args_flag(a, "fitting"))
		return cli_with_boat(c, BOOK_READ, a, story, err);
	b = cli_open(c, BOOK_READ, err);
	if (!b)
		return EXIT_FILE;
	ok = opt_count(a, "limit", &limit, err);
	if (ok && args_word(a, 0))
		ok = show_entry(c, b, args_word(a, 0), err);
	else if (ok)
		ok = list_entries(b, limit, err);
	book_close(b);
	return ok ? EXIT_DONE : EXIT_DATA;
}

const struct command command_history = {
	"history",
	"[ENTRY]",
	"list the journal's entries, what one changed, or a fitting's story",
	"splitpin history 146\n"
	"splitpin history --fitting drive/transom/gimbal-bearing\n\n"
	"Times are UTC. Each entry carries the hash of the one before, so that splitpin verify can tell a history that was "
	"rewritten.",
	history_options,
	run_history, 1,
};

/* With what a reader of a dossier compares. */
static gboolean
print_sound(struct book *b, GError **err)
{
	struct book_entry e = { 0 };
	g_autofree char *hash = NULL, *when = NULL;
	gint64 last = NONE;

	if (!book_entry_hash(b, &last, &e.at, &hash, err))
		return FALSE;
	when = book_entry_time(&e);
	puts("sound: the hash chain holds, and every row is what the journal says");
	if (last)
		printf("last entry %" G_GINT64_FORMAT ", %s UTC, hash %s\n", last, when, hash);
	return TRUE;
}

static int
run_verify(struct cli *c, const struct args *a, GError **err)
{
	struct book *b = cli_open(c, BOOK_READ, err);
	int problems = 0;
	gboolean ok;

	(void)a;
	if (!b)
		return EXIT_FILE;
	ok = book_verify(b, say_line, c, &problems, err);
	if (ok && !problems)
		ok = print_sound(b, err);
	book_close(b);
	if (!ok)
		return EXIT_FILE;
	if (problems)
		printf("%d %s found: keep this file, and go on from a backup that verifies\n", problems,
		       problems == 1 ? "problem" : "problems");
	return problems ? EXIT_NO : EXIT_DONE;
}

const struct command command_verify = {
	"verify",
	"",
	"prove that the logbook is whole and its history not rewritten",
	"Checks the hash chain, SQLite's own integrity, and replays the journal to compare every row. Exit code 1 when "
	"something differs.",
	no_options,
	run_verify, 0,
};

static int
run_backup(struct cli *c, const struct args *a, GError **err)
{
	struct book *b;
	gboolean ok;

	if (!args_word(a, 0)) {
		err_set(err, ERR_INPUT, "which file? splitpin backup FILE writes a new one");
		return EXIT_USE;
	}
	b = cli_open(c, BOOK_READ, err);
	if (!b)
		return EXIT_FILE;
	ok = book_backup(b, args_word(a, 0), err);
	book_close(b);
	if (ok)
		printf("backed up to %s\n", args_word(a, 0));
	return ok ? EXIT_DONE : EXIT_FILE;
}

const struct command command_backup = {
	"backup",
	"FILE",
	"copy the logbook, as it is now, into a new file",
	"An existing file is never written over.",
	no_options,
	run_backup, 1,
};
