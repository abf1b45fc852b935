/* wrench: which inch and metric wrenches do for each other, and how far they turn before they bite. */
#include "cli/cli.h"
#include "cli/show.h"

#include "base/err.h"
#include "base/text.h"
#include "logbook/due.h"
#include "logbook/wrench.h"

#include <math.h>
#include <stdio.h>

static const struct option_def options[] = {
	{ "heads", NULL, "list only the heads of metric threads" },
	{ "csv", NULL, "as CSV" },
	{ "json", NULL, "as JSON" },
	{ NULL, NULL, NULL },
};

static void
say_rules(const struct cli *c)
{
	cli_say(c, 2, "Anything tightened to a figure, corroded, or stainless in aluminium: the right size, six-point, no "
		      "substitute.");
	cli_say(c, 2, "One thread has heads of several sizes: measure across the flats, and note the size with the part.");
}

static void
table_line(const struct cli *c, const struct wrench_row *r)
{
	g_autofree char *metric = wrench_play_words(&r->pair.metric_on_inch), *inch = wrench_play_words(&r->pair.inch_on_metric),
			*difference = g_strdup_printf("%+.2f", r->pair.difference);
	const struct {
		const char *text;
		int columns;
	} cells[] = { { r->inch, 7 }, { r->metric, 4 }, { difference, 6 }, { metric, 14 }, { inch, 13 } };
	g_autoptr(GString) line = g_string_new(NULL);

	for (guint i = 0; i < G_N_ELEMENTS(cells); i++)
		text_add_fit(line, cells[i].text, cells[i].columns);
	cli_say(c, text_width(line->str), "%s%s", line->str, r->verdict);
}

static void
heads_table(const struct cli *c, const struct wrench_book *w)
{
	const struct head_row *h = (const void *)wrench_heads(w)->data;
	g_autofree char *source = NULL;

	puts("Heads by thread, mm across the flats:");
	puts("thread  ISO  older DIN  JIS");
	for (guint i = 0; i < wrench_heads(w)->len; i++) {
		show_fit(h[i].thread, 8);
		show_fit(h[i].iso, 5);
		show_fit(h[i].din, 11);
		puts(h[i].jis);
		if (i + 1 == wrench_heads(w)->len)
			source = source_words(h[i].standing, h[i].source);
	}
	if (source)
		cli_say(c, 2, "(%s)", source);
}

static void
table(const struct cli *c, const struct wrench_book *w)
{
	const struct wrench_row *row = (const void *)wrench_rows(w)->data;

	puts("inch   mm  out   mm on inch    inch on mm   which does");
	for (guint i = 0; i < wrench_rows(w)->len; i++)
		table_line(c, &row[i]);
	puts("");
	cli_say(c, 2, "Out: mm by which the metric size is larger. The angle is how far the largest wrench turns on the smallest "
		      "head before it bites; the right wrench turns 3 to 7. Binds: a full-size or painted head may refuse it. "
		      "Loose: corners get rounded. Where the sizes come from: splitpin wrench 5/8.");
	say_rules(c);
	puts("");
	heads_table(c, w);
}

/* "  16 mm wrench on a 5/8 in head: fits, turns up to 5 deg before it bites (the right one up to 4 deg)" */
static void
say_play(const struct cli *c, const char *tool, const char *head, const struct wrench_play *play, double right)
{
	static const char *const words[] = { [WRENCH_FITS] = "fits", [WRENCH_BINDS] = "binds on a full-size or painted head",
					     [WRENCH_LOOSE] = "is loose", [WRENCH_REFUSES] = "will not go on a full-size head" };

	if (play->fit == WRENCH_REFUSES)
		cli_say(c, 4, "  A wrench of %s %s of %s.", tool, words[play->fit], head);
	else
		cli_say(c, 4, "  A wrench of %s on a head of %s %s: it turns up to %.0f deg before it bites, the right one %.0f.",
			tool, head, words[play->fit], play->degrees, right);
}

static double
right_turn(const struct hex_limits *head, struct hex_limits opening)
{
	return wrench_turn(head->least, opening.most);
}

static void
say_pair(const struct cli *c, const struct wrench_row *r)
{
	g_autofree char *inch = g_strdup_printf("%s in", r->inch), *metric = g_strdup_printf("%s mm", r->metric),
			*source = source_words(r->standing, r->source);
	struct hex_limits inch_head, metric_head = wrench_metric_head(r->pair.metric);

	cli_say(c, 2, "%s (%.2f mm) and %s: %s.", inch, r->pair.inch, metric, r->verdict);
	if (wrench_inch_head(r->pair.inch, &inch_head))
		say_play(c, metric, inch, &r->pair.metric_on_inch, right_turn(&inch_head, wrench_inch_opening(r->pair.inch)));
	say_play(c, inch, metric, &r->pair.inch_on_metric, right_turn(&metric_head, wrench_metric_opening(r->pair.metric)));
	cli_say(c, 4, "  (%s; angles worked out here)", source);
}

static void
say_thread(const struct cli *c, const struct head_row *h)
{
	g_autofree char *source = source_words(h->standing, h->source);

	cli_say(c, 2, "%s: a head of %s mm to ISO, %s mm to the older DIN, %s mm to JIS (%s).", h->thread, h->iso, h->din,
		h->jis, source);
}

static gboolean
of_size(const struct cli *c, const struct wrench_book *w, const struct wrench_size *size, const char *text, GError **err)
{
	const struct wrench_row *row = (const void *)wrench_rows(w)->data;
	int n = 0;

	if (size->thread)
		say_thread(c, size->thread);
	for (guint i = 0; i < wrench_rows(w)->len; i++) {
		if (!wrench_is_of(&row[i], size))
			continue;
		say_pair(c, &row[i]);
		n++;
	}
	if (!n && !size->thread)
		return err_set(err, ERR_NOT_FOUND,
			       "%s: no pair of that size is listed, so use the right wrench; splitpin wrench lists the pairs",
			       text);
	say_rules(c);
	return TRUE;
}

static gboolean
act(const struct cli *c, const struct wrench_book *w, const struct args *a, GError **err)
{
	g_autofree char *text = args_join(a, 0), *data = NULL;
	struct wrench_size asked, *size = *text ? &asked : NULL;
	const struct head_row *only;

	if (size && args_flag(a, "heads"))
		return err_set(err, ERR_USE, "--heads lists them all: leave the size out");
	if (size && !wrench_size_parse(w, text, size, err))
		return FALSE;
	only = size ? size->thread : NULL;
	if (args_flag(a, "csv"))
		data = only || args_flag(a, "heads") ? heads_csv(w, only) : wrench_csv(w, size);
	else if (args_flag(a, "json"))
		data = only || args_flag(a, "heads") ? heads_json(w, only) : wrench_json(w, size);
	if (data)
		cli_data(c, data);
	else if (args_flag(a, "heads"))
		heads_table(c, w);
	else if (size)
		return of_size(c, w, size, text, err);
	else
		table(c, w);
	return TRUE;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	g_autofree char *catalogue = g_build_filename(c->data, "catalogue", NULL);
	struct wrench_book *w;
	gboolean ok;

	if (args_flag(a, "csv") && args_flag(a, "json")) {
		err_set(err, ERR_INPUT, "--csv and --json together");
		return EXIT_USE;
	}
	w = wrench_book_read(catalogue, err);
	if (!w)
		return EXIT_FILE;
	ok = act(c, w, a, err);
	wrench_book_free(w);
	return ok ? EXIT_DONE : EXIT_DATA;
}

const struct command command_wrench = {
	"wrench",
	"[SIZE]",
	"which inch and metric wrenches do for each other",
	"splitpin wrench 5/8\n"
	"splitpin wrench 16 mm\n"
	"splitpin wrench M10\n\n"
	"Without a size the whole table. How far a wrench turns before the corners bite is worked out from the limits of heads "
	"and openings. No logbook is needed.",
	options,
	run, 3,
};
