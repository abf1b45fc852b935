/* figure: what the boat's own manuals say of a fitting: torque, quantity, pressure, gap. */
#include "cli/cli.h"
#include "cli/show.h"

#include "base/err.h"
#include "base/text.h"
#include "logbook/figure.h"
#include "logbook/transfer.h"

#include <stdio.h>
#include <string.h>

static const struct option_def options[] = {
	{ "source", "TEXT", "which manual, which page: \"manual p. 41\"" },
	{ "remark", "TEXT", "a remark" },
	{ "yes", NULL, "take what is unlikely as it is" },
	{ "drop", NULL, "take that figure out again; --source says which where several have it" },
	{ "names", NULL, "only the usual names of figures, a line each" },
	{ NULL, NULL, NULL },
};

/* all: those of the boat, for what says otherwise. */
static void
say_figure(const struct cli *c, const char *where, const struct figure *f, const GArray *all)
{
	g_autofree char *words = figure_words(f);
	const struct figure *other = figure_against(all, f);

	cli_say(c, 2, "%s: %s %s (%s%s%s)%s%s", where, f->what, words, f->source, f->remark ? "; " : "",
		f->remark ? f->remark : "", other ? "; differs from " : "", other ? other->source : "");
}

/* fitting NONE: of all. */
static gboolean
list(const struct cli *c, struct book *b, gint64 boat, gint64 fitting, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_FIGURE, boat, err);
	const struct figure *f = all ? (const void *)all->data : NULL;

	for (guint i = 0; f && i < all->len; i++)
		if (fitting == NONE || f[i].fitting == fitting)
			say_figure(c, book_name_of(b, RECORD_FITTING, f[i].fitting), &f[i], all);
	return all != NULL;
}

/* What was kept, and what another source says against it. */
static gboolean
say_kept(const struct cli *c, struct book *b, const char *where, const struct figure *f, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_FIGURE, f->boat, err);

	if (!all)
		return FALSE;
	say_figure(c, where, f, all);
	if (figure_against(all, f))
		cli_say(c, 2, "  Both are kept. The manual of this very design holds; --drop takes the other out.");
	return TRUE;
}

static gboolean
set(const struct cli *c, struct book *b, const struct fitting *on, const struct args *a, GError **err)
{
	struct figure f;
	gboolean ok;

	if (!args_word(a, 2))
		return err_set(err, ERR_USE,
			       "what does the manual say? splitpin figure %s %s \"60 ft-lb\" --source \"manual p. 41\"", on->path,
			       args_word(a, 1));
	record_init(RECORD_FIGURE, &f);
	f.boat = on->boat;
	f.fitting = on->id;
	f.what = g_ascii_strdown(args_word(a, 1), -1);
	f.as_read = args_join(a, 2);
	f.source = g_strdup(args_value(a, "source"));
	f.remark = g_strdup(args_value(a, "remark"));
	ok = book_set_figure(b, &f, args_flag(a, "yes"), err);
	ok = ok && say_kept(c, b, on->path, &f, err);
	record_clear(RECORD_FIGURE, &f);
	return ok;
}

static int
act(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	struct fitting on;
	gboolean ok;

	if (!args_word(a, 0))
		return list(c, b, boat->id, NONE, err) ? EXIT_DONE : EXIT_DATA;
	if (!book_find_fitting(b, boat->id, args_word(a, 0), &on, err))
		return EXIT_DATA;
	if (!args_word(a, 1))
		ok = list(c, b, boat->id, on.id, err);
	else if (args_flag(a, "drop"))
		ok = book_drop_figure(b, &on, args_word(a, 1), args_value(a, "source"), err);
	else
		ok = set(c, b, &on, a, err);
	record_clear(RECORD_FITTING, &on);
	return ok ? EXIT_DONE : EXIT_DATA;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	if (args_flag(a, "names")) {
		for (int i = 0; figure_names[i]; i++)
			puts(figure_names[i]);
		return EXIT_DONE;
	}
	if (args_flag(a, "drop") && (!args_word(a, 1) || args_word(a, 2))) {
		err_set(err, ERR_USE, "which figure? splitpin figure FITTING WHAT --drop");
		return EXIT_USE;
	}
	return cli_with_boat(c, args_word(a, 1) ? BOOK_WRITE : BOOK_READ, a, act, err);
}

const struct command command_figure = {
	"figure",
	"[FITTING [WHAT VALUE...]]",
	"keep a figure of the manual with its page, or list them",
	"splitpin figure drive/propeller torque 60 ft-lb --source \"manual p. 41\"\n"
	"splitpin figure engine/lubrication oil-quantity 5 qt --source \"manual p. 12\"\n"
	"splitpin figure drive/propeller torque --drop\n\n"
	"No figure of torque, quantity or pressure is shipped: it comes from your manual. It is kept as typed and shown with "
	"the other system beside it, here, under splitpin why, and in the fitting's story. A torque or pressure wants its "
	"unit: ft-lb and in-lb differ twelve times. What another source says is kept beside it, and where the two differ, that "
	"is shown.",
	options,
	run, -1,
};
