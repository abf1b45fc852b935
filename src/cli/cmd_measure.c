/* measure: readings of measured values, their history, and the limits they are held to. */
#include "cli/cli.h"
#include "cli/show.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/due.h"
#include "logbook/measure.h"
#include "logbook/transfer.h"
#include "logbook/units.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const struct option_def options[] = {
	{ "date", "DATE", "the day it was read; else today" },
	{ "fitting", "FITTING", "where: a path or words that only one fitting has" },
	{ "water", "WATER", "the water it was read in: fresh, brackish or salt" },
	{ "psu", "PSU", "the salinity of that water" },
	{ "method", "TEXT", "how it was read, and with what: \"infrared B, at idle, on hose\"" },
	{ "remark", "TEXT", "a remark" },
	{ "yes", NULL, "take a reading that can hardly be as it is" },
	{ "instead-of", "ID", "correct that reading: the old one stays in the history" },
	{ "drop", "ID", "take that reading out of the log" },
	{ "list", NULL, "list the readings, of WHAT or of all, newest last" },
	{ "since", "DATE", "with --list: from that day on" },
	{ "kinds", NULL, "list what can be measured, with limits and how to read it" },
	{ "names", NULL, "only the names of what can be measured, a line each" },
	{ "watch-below", "VALUE", "a limit out of the manual: worth watching below this" },
	{ "watch-above", "VALUE", "worth watching above this" },
	{ "stop-below", "VALUE", "not to be run, and its task due, below this" },
	{ "stop-above", "VALUE", "the same above this" },
	{ "source", "TEXT", "where these limits come from: \"manual p. 41\"" },
	{ "standing", "WORD", "manual, published, practice, memory or owner; else manual or owner, as the source begins" },
	{ "no-limits", NULL, "take the boat's own limits of WHAT away again" },
	{ NULL, NULL, NULL },
};

static gboolean
find_fitting(struct book *b, gint64 boat, const struct args *a, gint64 *key, GError **err)
{
	struct fitting f;

	*key = NONE;
	if (!args_value(a, "fitting"))
		return TRUE;
	if (!book_find_fitting(b, boat, args_value(a, "fitting"), &f, err))
		return err_prefix(err, "--fitting: ");
	*key = f.id;
	record_clear(RECORD_FITTING, &f);
	return TRUE;
}

static gboolean
read_form(struct cli *c, struct book *b, gint64 boat, const struct args *a, struct measure_form *f, GError **err)
{
	const char *id = args_value(a, "instead-of"), *psu = args_value(a, "psu");
	struct measurement *m = &f->what;

	m->boat = boat;
	m->date = c->who.today;
	m->as_read = args_join(a, 1);
	m->method = g_strdup(args_value(a, "method"));
	m->remark = g_strdup(args_value(a, "remark"));
	f->sure = args_flag(a, "yes");
	if (psu && !salinity_parse(psu, &m->psu, err))
		return err_prefix(err, "--psu: ");
	return (!id || key_parse(id, &m->id, err)) && opt_date(c, a, "date", &m->date, err)
	    && opt_word(a, "water", &words_water, &m->water, err) && find_fitting(b, boat, a, &m->fitting, err);
}

/* The tasks that this reading makes due, as the due list has them. */
static gboolean
say_due(struct cli *c, struct book *b, const struct boat *boat, const struct measurement *m, GError **err)
{
	struct due_list *l = due_list_new();
	struct due_ask ask = { book_today(b), NONE };
	gboolean ok = book_due(b, boat, &ask, l, err);
	int n = 0;

	for (int i = 0; ok && i < due_count(l); i++)
		for (int k = 0; k < due_at(l, i)->n_readings; k++) {
			const struct due_line *d = due_at(l, i);
			const struct due_reading *r = &d->reading[k];

			if (r->verdict != VERDICT_STOP || r->cleared || r->date != m->date || strcmp(r->kind->what, m->what)
			    || strcmp(r->as_read, m->as_read))
				continue;
			cli_say(c, 4, "  due at once: %s, %s", d->name, d->title);
			n++;
		}
	if (ok && !n)
		cli_say(c, 4, "  no task falls due by it: none asks for it there, or a later reading or the work itself came "
			      "after it");
	due_list_free(l);
	return ok;
}

/* How it stands to the one before. */
static gboolean
say_before(struct cli *c, struct book *b, const struct measurement *m, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_MEASUREMENT, m->boat, err);
	const struct measurement *before = all ? measure_before(all, m) : NULL;
	g_autofree char *words = before ? measure_before_words(m, before) : NULL, *second = book_second_meter(b, m, NULL);

	if (second)
		cli_say(c, 4, "  %s", second);
	if (words)
		cli_say(c, 4, "  %s%s", words, m->method || !measure_another_way(m, before) ? "" : " --method says it.");
	return all != NULL;
}

struct recorded {
	struct measure_form form;
	struct measure_limits limits;
	struct condition_out judged;
};

static gboolean
said(struct cli *c, struct book *b, const struct boat *boat, const struct recorded *r, GError **err)
{
	const struct measurement *m = &r->form.what;
	const struct measure_limits *l = &r->limits;
	g_autofree char *verdict = measure_verdict(l, &r->judged), *bands = measure_bands(l),
			*source = measure_source(l), *read = measure_read_words(l->kind, m->as_read, l->units);
	char d[16];

	cli_say(c, 2, "%s %s on %s: %s", m->what, read, day_words(m->date, d), verdict);
	if (!strcmp(m->what, "compression-spread") && !strchr(m->as_read, '%'))
		cli_say(c, 4, "  the lowest is %.1f %% below the highest", m->value);
	cli_say(c, 4, "  limits: %s (%s%s)", bands, l->own ? "this boat's own; " : "", source);
	if (!say_before(c, b, m, err))
		return FALSE;
	if (r->judged.verdict == VERDICT_STOP)
		return say_due(c, b, boat, m, err);
	return TRUE;
}

static gboolean
record_one(struct cli *c, struct book *b, const struct boat *boat, const struct args *a,
	   const struct condition_kind *kind, GError **err)
{
	struct recorded r = { .form.kind = kind };
	gboolean ok;

	record_init(RECORD_MEASUREMENT, &r.form.what);
	ok = read_form(c, b, boat->id, a, &r.form, err) && book_measure(b, &r.form, &r.limits, &r.judged, err)
	  && said(c, b, boat, &r, err);
	record_clear(RECORD_MEASUREMENT, &r.form.what);
	return ok;
}

/* "stop", or what takes the place of a verdict. */
static const char *
short_verdict(const struct condition_kind *kind, const struct condition_out *j)
{
	static const char *const verdicts[VERDICT_COUNT] = { "good", "watch", "stop", "not judged" };

	return kind ? verdicts[j->verdict] : "not judged";
}

static void
list_line(struct book *b, const struct readings *kinds, const GArray *bounds, const struct measurement *m, gint64 units)
{
	const struct condition_kind *kind = readings_find(kinds, m->what);
	struct condition_out j = { 0 };
	g_autofree char *key = book_key_text(m->id), *read = measure_read_words(kind, m->as_read, units);
	const char *place = m->fitting == NONE ? "" : book_name_of(b, RECORD_FITTING, m->fitting);
	char d[DAY_TEXT];

	if (kind) {
		struct measure_limits l = measure_limits_of(kind, measure_bound_on(bounds, m->what, m->fitting), units);

		measure_judge(&l, m, &j);
	}
	printf("%s  %s  ", key, day_iso(m->date, d));
	show_fit(m->what, 25);
	putchar(' ');
	show_fit(read, units == NONE ? 12 : 24);
	putchar(' ');
	if (place && *place) {
		g_autofree char *safe = text_harmless(place, FALSE);

		show_fit(short_verdict(kind, &j), 10);
		printf(" %s\n", safe);
	} else {
		puts(short_verdict(kind, &j));
	}
}

static gboolean
list(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, const struct condition_kind *kind,
     GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_MEASUREMENT, boat->id, err),
			  bounds = all ? book_records(b, RECORD_BOUND, boat->id, err) : NULL;
	const struct measurement *m = bounds ? (const void *)all->data : NULL;
	const struct readings *kinds = bounds ? book_readings(b, err) : NULL;
	gint64 since = NONE, fitting;

	if (!kinds || !opt_date(c, a, "since", &since, err) || !find_fitting(b, boat->id, a, &fitting, err))
		return FALSE;
	for (guint i = 0; i < all->len; i++)
		if ((!kind || !strcmp(kind->what, m[i].what)) && (fitting == NONE || m[i].fitting == fitting)
		    && (since == NONE || m[i].date >= since))
			list_line(b, kinds, bounds, &m[i], boat->units);
	return TRUE;
}

static void
kind_lines(struct cli *c, const struct condition_kind *k)
{
	struct measure_limits l = measure_limits_of(k, NULL, NONE);
	g_autofree char *bands = measure_bands(&l), *source = measure_source(&l);

	cli_say(c, 4, "%s%s%s: %s (%s)", k->what, *k->unit ? ", " : "", k->unit, bands, source);
	cli_say(c, 4, "    %s%s", k->how, k->water == WATER_SALT ? "; judged in salt water only" : "");
}

/* All that can be measured, with or without limits; no logbook is wanted for that. */
static int
kinds(struct cli *c, gboolean names_only, GError **err)
{
	g_autofree char *folder = g_build_filename(c->data, "catalogue", NULL);
	struct readings *all = readings_read(folder, err);

	for (guint i = 0; all && i < readings_count(all); i++)
		if (names_only)
			puts(readings_nth(all, i)->what);
		else
			kind_lines(c, readings_nth(all, i));
	readings_free(all);
	return all ? EXIT_DONE : EXIT_DATA;
}

static gboolean
limit_value(const struct args *a, const char *name, const struct condition_kind *kind, double *value, GError **err)
{
	const char *text = args_value(a, name);

	return !text || measure_parse(kind, text, value, err) || err_prefix(err, "--%s: ", name);
}

static gboolean
read_bound(struct book *b, gint64 boat, const struct args *a, const struct condition_kind *kind, struct bound *o,
	   GError **err)
{
	const char *source = args_value(a, "source");

	if (!source)
		return err_set(err, ERR_INPUT,
			       "--source is wanted: where do the limits come from? --source \"manual p. 41\"");
	o->boat = boat;
	o->what = g_strdup(kind->what);
	o->source = g_strdup(source);
	return limit_value(a, "watch-below", kind, &o->watch_below, err)
	    && limit_value(a, "watch-above", kind, &o->watch_above, err)
	    && limit_value(a, "stop-below", kind, &o->stop_below, err)
	    && limit_value(a, "stop-above", kind, &o->stop_above, err)
	    && opt_standing(a, &o->standing, err)
	    && find_fitting(b, boat, a, &o->fitting, err);
}

static void
say_limits(struct cli *c, const struct condition_kind *kind, const struct bound *own, gint64 units)
{
	struct measure_limits l = measure_limits_of(kind, own, units);
	g_autofree char *bands = measure_bands(&l), *source = measure_source(&l);

	cli_say(c, 2, "%s: %s (%s)", kind->what, bands, source);
}

static gboolean
set_limits(struct cli *c, struct book *b, gint64 boat, const struct args *a, const struct condition_kind *kind,
	   GError **err)
{
	struct bound o;
	gboolean ok;

	record_init(RECORD_BOUND, &o);
	ok = read_bound(b, boat, a, kind, &o, err) && book_set_bound(b, &o, err);
	if (ok)
		say_limits(c, kind, &o, book_units(b, boat));
	record_clear(RECORD_BOUND, &o);
	return ok;
}

static gboolean
drop_limits(struct cli *c, struct book *b, gint64 boat, const struct args *a, const struct condition_kind *kind,
	    GError **err)
{
	gint64 fitting;

	if (!find_fitting(b, boat, a, &fitting, err) || !book_drop_bound(b, boat, fitting, kind->what, err))
		return FALSE;
	say_limits(c, kind, NULL, book_units(b, boat));
	return TRUE;
}

static gboolean
gives_limits(const struct args *a)
{
	return args_value(a, "watch-below") || args_value(a, "watch-above") || args_value(a, "stop-below")
	    || args_value(a, "stop-above");
}

static gboolean
change(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, const struct condition_kind *kind,
       GError **err)
{
	gboolean limits = gives_limits(a), none = args_flag(a, "no-limits"), value = args_word(a, 1) != NULL;

	if (limits + none + value > 1)
		return err_set(err, ERR_USE, "a reading, limits, or --no-limits: one of them at a time");
	if (limits)
		return set_limits(c, b, boat->id, a, kind, err);
	if (none)
		return drop_limits(c, b, boat->id, a, kind, err);
	if (!value)
		return err_set(err, ERR_USE, "what does it read? splitpin measure %s VALUE UNIT; how: %s", kind->what,
			       kind->how);
	return record_one(c, b, boat, a, kind, err);
}

static gboolean
drop_one(struct book *b, const char *text, GError **err)
{
	gint64 id;

	if (!key_parse(text, &id, err) || !book_drop_measurement(b, id, err))
		return FALSE;
	puts("taken out of the log; splitpin undo brings it back");
	return TRUE;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	gboolean lists = args_flag(a, "list"), ok = FALSE;
	const char *what = args_word(a, 0);
	const struct condition_kind *kind = NULL;
	struct book *b;
	struct boat boat;

	if (args_flag(a, "kinds") || args_flag(a, "names"))
		return kinds(c, args_flag(a, "names"), err);
	if (!what && !lists && !args_value(a, "drop")) {
		err_set(err, ERR_USE, "what was measured? splitpin measure --kinds lists what can be");
		return EXIT_DATA;
	}
	b = cli_open(c, lists ? BOOK_READ : BOOK_WRITE, err);
	if (!b)
		return EXIT_FILE;
	if (what && !(kind = measure_kind(b, what, err))) {
		ok = FALSE;
	} else if (args_value(a, "drop")) {
		ok = drop_one(b, args_value(a, "drop"), err);
	} else if (cli_boat(c, b, &boat, err)) {
		ok = lists ? list(c, b, &boat, a, kind, err) : change(c, b, &boat, a, kind, err);
		record_clear(RECORD_BOAT, &boat);
	}
	book_close(b);
	return ok ? EXIT_DONE : EXIT_DATA;
}

const struct command command_measure = {
	"measure",
	"[WHAT VALUE [UNIT...]]",
	"record a measured value, and hold it to its limits",
	"splitpin measure anode-left 60 % --fitting drive/anodes\n"
	"splitpin measure steering-play 3/64 in\n"
	"splitpin measure compression 150 148 120 151 psi\n"
	"splitpin measure half-cell-aluminium-drive --water salt -- -950 mV\n"
	"splitpin measure shaft-runout --watch-above \".003 in\" --stop-above \".006 in\" --source \"manual p. 41\"\n\n"
	"What was read is kept as it was read. A reading is good, worth watching, or says stop; a stop makes the tasks that "
	"ask for that value due at once, until they are done or it reads well again. The limits hold until those of the "
	"manual are typed in. Negative values go after --.",
	options,
	run, -1,
};
