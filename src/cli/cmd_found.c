/* found: what was seen wrong, its list, and how it ended. */
#include "cli/found_text.h"
#include "cli/show.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/photo.h"

#include <stdio.h>

static const struct option_def options[] = {
	{ "task", "TASK", "at whose work it was found; its fitting counts" },
	{ "level", "LEVEL", "hold, mend or watch; else as proposed" },
	{ "date", "DATE", "the day it was found, or with --mend the day it was put right; else today, or the outing's" },
	{ "measured", "READING", "a reading that shows it, recorded with it: \"bearing-roughness 2\"" },
	{ "photo", "FILE", "a file that shows it; several may be given" },
	{ "until", "DATE", "the day by which it is to be mended, or with --waive the last day" },
	{ "allowed", "TEXT", "what may be done with it until then: \"5 h, then look again\"" },
	{ "due", "TASK", "a task that it makes due at once, besides those of the rule; several may be given" },
	{ "outing", "ID", "the outing on which it was found: a key, or last" },
	{ "by", "NAME", "who found it; else --who" },
	{ "remark", "TEXT", "a remark" },
	{ "yes", NULL, "take a reading that can hardly be as it is" },
	{ "instead-of", "ID", "correct that finding; what is not said stays" },
	{ "list", NULL, "list what is open, the worst first" },
	{ "all", NULL, "with --list: also what is mended" },
	{ "since", "DATE", "with --list: found from that day on" },
	{ "csv", NULL, "with --list: as CSV" },
	{ "json", NULL, "with --list: as JSON" },
	{ "show", "ID", "all that is on record of a finding" },
	{ "mend", "ID", "it is put right; the words say how it was left" },
	{ "reopen", "ID", "it is not put right after all" },
	{ "drop", "ID", "take a finding out of the log, with its photos" },
	{ "waive", "ID", "let it pass: with --reason, and --until the last day" },
	{ "reason", "TEXT", "with --waive: why" },
	{ "view", "ID", "open its photo files in your viewer: $SPLITPIN_VIEWER, else xdg-open" },
	{ NULL, NULL, NULL },
};

/* Open a file, and do not wait for the viewer to end. */
static gboolean
open_viewer(const char *path, GError **err)
{
	const char *own = g_getenv("SPLITPIN_VIEWER");
	g_auto(GStrv) words = NULL;
	g_autoptr(GPtrArray) argv = g_ptr_array_new();
	g_autoptr(GError) why = NULL;

	if (!g_shell_parse_argv(own && *own ? own : "xdg-open", NULL, &words, &why))
		return err_set(err, ERR_SYSTEM, "SPLITPIN_VIEWER: %s", why->message);
	for (int i = 0; words[i]; i++)
		g_ptr_array_add(argv, words[i]);
	g_ptr_array_add(argv, (gpointer)(guintptr)path);
	g_ptr_array_add(argv, NULL);
	if (g_spawn_async(NULL, (char **)argv->pdata, NULL,
			  G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, NULL, &why))
		return TRUE;
	return err_set(err, ERR_SYSTEM, "the viewer did not start: %s; $SPLITPIN_VIEWER names another", why->message);
}

/* A file that is gone is said, and the others are opened. */
static gboolean
view(struct cli *c, struct book *b, const struct finding *f, GError **err)
{
	g_autoptr(GArray) all = book_photos(b, f->id, err);
	gboolean gone = FALSE;

	if (!all)
		return FALSE;
	if (!all->len)
		return err_set(err, ERR_NOT_FOUND, "no photo is on record of that finding");
	for (guint i = 0; i < all->len; i++) {
		const struct photo *p = &((const struct photo *)(const void *)all->data)[i];
		enum photo_state state = photo_state(p);

		cli_say(c, 2, "%s%s%s", p->path, state == PHOTO_AS_IT_WAS ? "" : ": ", photo_state_words(state));
		gone |= state == PHOTO_GONE;
		if (state != PHOTO_GONE && !open_viewer(p->path, err))
			return FALSE;
	}
	return !gone || err_set(err, ERR_SYSTEM, "not every photo is there");
}

static gboolean
mend(struct cli *c, struct book *b, struct finding *f, const struct args *a, GError **err)
{
	g_autofree char *left_as = args_join(a, 0);
	gint64 day = c->who.today;

	if (!opt_date(c, a, "date", &day, err) || !book_mend(b, f, day, left_as, err))
		return FALSE;
	cli_say(c, 2, "mended: %s", f->words);
	if (f->service == NONE && f->makes_due)
		cli_say(c, 4, "  of what it asked for no work is on record since: %s", f->makes_due);
	return TRUE;
}

static gboolean
show(struct cli *c, struct book *b, struct finding *f, const struct args *a, GError **err)
{
	(void)a;
	return found_show(c, b, f, err);
}

static gboolean
view_photos(struct cli *c, struct book *b, struct finding *f, const struct args *a, GError **err)
{
	(void)a;
	return view(c, b, f, err);
}

static gboolean
reopen(struct cli *c, struct book *b, struct finding *f, const struct args *a, GError **err)
{
	(void)a;
	if (!book_reopen(b, f, err))
		return FALSE;
	cli_say(c, 2, "open again: %s", f->words);
	return TRUE;
}

static gboolean
drop(struct cli *c, struct book *b, struct finding *f, const struct args *a, GError **err)
{
	(void)a;
	if (!book_drop_finding(b, f, err))
		return FALSE;
	cli_say(c, 2, "taken out of the log: %s; splitpin undo brings it back", f->words);
	return TRUE;
}

static gboolean
waive(struct cli *c, struct book *b, struct finding *f, const struct args *a, GError **err)
{
	g_autofree char *key = book_key_text(f->id);

	return waive_thing(c, b, f->boat, key, a, err);
}

/* What is done with one finding, named by its key. */
static const struct deed {
	const char *option;
	enum book_mode mode;
	gboolean words; /* the words are its */
	gboolean (*act)(struct cli *c, struct book *b, struct finding *f, const struct args *a, GError **err);
} deeds[] = {
	{ "show", BOOK_READ, FALSE, show },	 { "mend", BOOK_WRITE, TRUE, mend },  { "reopen", BOOK_WRITE, FALSE, reopen },
	{ "drop", BOOK_WRITE, FALSE, drop }, { "view", BOOK_READ, FALSE, view_photos },
	{ "waive", BOOK_WRITE, FALSE, waive },
};

static const struct deed *
deed_of(const struct args *a, int *n)
{
	const struct deed *d = NULL;

	*n = 0;
	for (guint i = 0; i < G_N_ELEMENTS(deeds); i++)
		if (args_value(a, deeds[i].option)) {
			d = &deeds[i];
			++*n;
		}
	return d;
}

static int
found(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	int n;
	const struct deed *d = deed_of(a, &n);
	struct finding f;
	gboolean ok;

	if (args_flag(a, "list"))
		return found_list(c, b, boat, a, err) ? EXIT_DONE : EXIT_DATA;
	if (!d)
		return found_record(c, b, boat, a, err) ? EXIT_DONE : EXIT_DATA;
	ok = book_find_finding(b, boat->id, args_value(a, d->option), &f, err) && d->act(c, b, &f, a, err);
	record_clear(RECORD_FINDING, &f);
	return ok ? EXIT_DONE : EXIT_DATA;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	int n;
	const struct deed *d = deed_of(a, &n);
	enum book_mode mode = d ? d->mode : cli_list_mode(a);

	if (n + args_flag(a, "list") > 1 || (d && !d->words && args_word(a, 0))) {
		err_set(err, ERR_USE,
			"recording, --list, --show, --mend, --reopen, --drop, --waive, --view: one of them at a time");
		return EXIT_USE;
	}
	return cli_with_boat(c, mode, a, found, err);
}

const struct command command_found = {
	"found",
	"[FITTING] WORDS",
	"record what was seen wrong, with its level, and what it makes due",
	"splitpin found gimbal-bearing \"rough, growls in turns\" --measured \"bearing-roughness 2\"\n"
	"splitpin found \"gear oil milky\"\n"
	"splitpin found bellows \"crack in a fold\" --photo bellows.jpg --until 2027-04-15\n"
	"splitpin found --list\n"
	"splitpin found --mend KEY \"new bearing, turns smooth\"\n\n"
	"The level is hold (not launched before it is put right), mend (this season) or watch (looked at again). It is proposed by "
	"rule from your words, the fitting, and what was found before; --level sets another, and the record keeps both. The tasks "
	"that it makes due are due at once until they are done. KEY is a finding's key; letters will do with which only one begins "
	"or ends.",
	options,
	run, -1,
};
