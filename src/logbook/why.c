#include "logbook/why.h"

#include "logbook/due_list.h"
#include "logbook/variant.h"

#include "base/amount.h"
#include "base/date.h"
#include "engine/wear.h"

#include <math.h>
#include <string.h>

static gboolean
is_alike(const struct due_term *t, const struct span *s)
{
	return t->stand == s->stand && t->water == s->water && t->film == s->film && t->rinsed == s->rinsed
	    && t->assumed == s->assumed;
}

static struct due_term *
term_of(GArray *terms, const struct span *s)
{
	struct due_term new = { s->stand, s->water, s->film, s->rinsed, s->assumed, s->coldest, s->warmest, 0, 0 };

	for (guint i = 0; i < terms->len; i++) {
		struct due_term *t = &((struct due_term *)(void *)terms->data)[i];

		if (is_alike(t, s))
			return t;
	}
	g_array_append_val(terms, new);
	return &((struct due_term *)(void *)terms->data)[terms->len - 1];
}

GArray *
due_terms(const struct due_list *l, const struct due_line *d)
{
	GArray *terms = g_array_new(FALSE, FALSE, sizeof(struct due_term));
	const struct span *span;
	int n = timeline_spans(due_timeline(l), &span);
	const struct baseline *since = &d->in.since;
	/* Where the day is not known, from the likely one, as the engine does. */
	gint64 from = since->earliest == NONE ? since->day : since->day - (since->day - since->earliest) / 2;
	gint64 to = due_year(l)->at;

	for (int i = 0; from != NONE && i < n; i++) {
		gint64 a = MAX(span[i].from, from), b = MIN(span[i].to, to);
		struct due_term *t = a < b ? term_of(terms, &span[i]) : NULL;

		if (!t)
			continue;
		t->coldest = MIN(t->coldest, span[i].coldest);
		t->warmest = MAX(t->warmest, span[i].warmest);
		t->effective += timeline_days(due_timeline(l), d->in.mechanism, a, b);
		t->days += b - a;
	}
	return terms;
}

static const char *
mechanism_words(enum mechanism m)
{
	static const char *const words[MECH_COUNT] = {
		"time and use alone",
		"corrosion",
		"galvanic wasting",
		"the ageing of rubber",
		"raw-water scale and corrosion",
		"the ageing of fluids",
		"wear",
		"marine growth",
		"frost",
	};

	return words[m];
}

/* "afloat in salt water", "on its trailer with salt left on" */
static char *
term_words(const struct due_term *t)
{
	GString *out = g_string_new(NULL);
	const char *water = word_of(&words_water, t->water);

	if (t->stand == STAND_AFLOAT)
		g_string_append_printf(out, "afloat in %s water", water);
	else if (t->film || t->water == WATER_COUNT)
		g_string_append_printf(out, "%s%s",
				       t->stand == STAND_TRAILER ? "on its "
				       : t->stand == STAND_ROOF  ? "under a "
								 : "",
				       word_of(&words_stand, t->stand));
	else
		g_string_append_printf(out, "out in %s water%s", water, t->rinsed ? ", rinsed" : "");
	if (t->film)
		g_string_append(out, " with salt left on");
	return g_string_free(out, FALSE);
}

static void
say_since(const struct due_list *l, const struct due_line *d, void (*say)(void *, const char *), void *user)
{
	const struct baseline *s = &d->in.since;
	char day[16], at[16];
	g_autofree char *text = NULL;
	int months;

	if (s->day == NONE) {
		say(user,
		    "Nobody knows when this was last done: no service and no part is on record. Unknown is neither zero "
		    "nor never, so it counts as due until someone looks.");
		return;
	}
	months = day_months_between(MIN(s->day, due_year(l)->at), due_year(l)->at);
	if (s->earliest != NONE)
		text = g_strdup_printf("Last done between %s and %s. Which day, nobody knows: the likely figures count from "
				       "the middle, the early and late ones from either end.",
				       day_words(s->earliest, at), day_words(s->day, day));
	else
		text = g_strdup_printf("%s %s%s, %d y %d mo before %s.",
				       s->what == SINCE_FITTED ? "Fitted"
				       : s->what == SINCE_MADE ? "Made, as printed on it,"
							       : "Last done",
				       s->estimated ? "about " : "", day_words(s->day, day), months / 12, months % 12,
				       day_words(due_year(l)->at, at));
	say(user, text);
}

/* Of the constants that a mechanism's rates are made of, the beginnings of their names. */
static gboolean
is_rate_of(enum mechanism m, const char *key)
{
	static const char *const begin[MECH_COUNT][2] = {
		[MECH_CORROSION] = { "corrosion.", "air." },	 [MECH_GALVANIC] = { "anode.", NULL },
		[MECH_RUBBER] = { "rubber.", NULL },		 [MECH_RAW_WATER] = { "raw-water.", NULL },
		[MECH_GROWTH] = { "growth.", NULL },
	};

	return (begin[m][0] && g_str_has_prefix(key, begin[m][0])) || (begin[m][1] && g_str_has_prefix(key, begin[m][1]));
}

void
due_rates_of(const struct due_list *l, enum mechanism m, void (*each)(void *user, const struct wear_constant *c, double value),
	     void *user)
{
	struct wear_table table = *due_rates(l);

	for (int i = 0; i < n_wear_constants; i++)
		if (is_rate_of(m, wear_constants[i].key))
			each(user, &wear_constants[i], *wear_table_at(&table, wear_constants[i].key));
}

static void
add_rate(void *user, const struct wear_constant *c, double value)
{
	GString *text = user;

	g_string_append_printf(text, "%s%s %.4g%s%s (%s)", text->len ? ", " : "  Rates: ", c->key, value,
			       *c->unit ? " " : "", c->unit, value == c->value ? c->standing : "owner");
}

static void
say_rates(const struct due_list *l, enum mechanism m, void (*say)(void *, const char *), void *user)
{
	g_autoptr(GString) text = g_string_new(NULL);

	due_rates_of(l, m, add_rate, text);
	if (!text->len)
		return;
	g_string_append(text, ". What each rests on: splitpin export rates.");
	say(user, text->str);
}

static void
add_celsius(GString *text, const struct due_term *t)
{
	int low = (int)lrint(t->coldest), high = (int)lrint(t->warmest);

	if (low == high)
		g_string_append_printf(text, " at %d C", low);
	else
		g_string_append_printf(text, " at %d to %d C", low, high);
}

/* "days that count", with the pair or the rates that made them. */
static void
add_sum(GString *text, const struct limit *m, const struct limit_out *u, double effective)
{
	if (m->salt != NONE)
		g_string_append_printf(text, "that counts as %.0f of %.0f days, %.0f %%: %.3g for 1 in salt water, by the two "
				       "figures of its source.",
				       u->rated, u->allowed, 100 * u->share, (double)m->amount / (double)m->salt);
	else if (effective < u->rated - 0.5)
		g_string_append_printf(text, "that counts as %.0f days, which stretches no interval: %.0f of %.0f days, %.0f %%.",
				       effective, u->rated, u->allowed, 100 * u->share);
	else
		g_string_append_printf(text, "that counts as %.0f of %.0f days, %.0f %%.", u->rated, u->allowed,
				       100 * u->share);
}

static void
say_months(const struct due_list *l, const struct due_line *d, int limit, void (*say)(void *, const char *), void *user)
{
	g_autoptr(GArray) terms = due_terms(l, d);
	g_autoptr(GString) text = g_string_new(NULL);
	gboolean pair = d->limit[limit].salt != NONE, rated = FALSE;
	double effective = 0;

	for (guint i = 0; i < terms->len; i++) {
		const struct due_term *t = &((const struct due_term *)(const void *)terms->data)[i];
		g_autofree char *place = term_words(t);
		double rate = t->effective / (double)t->days;

		g_string_append_printf(text, "%s%" G_GINT64_FORMAT " %s %s", i ? "; " : "  Since then ", t->days,
				       t->days == 1 ? "day" : "days", place);
		if (t->assumed)
			g_string_append(text, ", assumed");
		if (!pair && fabs(rate - 1) > 1e-9) {
			add_celsius(text, t);
			g_string_append_printf(text, " x %.3g", rate);
			rated = TRUE;
		}
		effective += t->effective;
	}
	g_string_append(text, terms->len ? ": " : "  In all ");
	add_sum(text, &d->limit[limit], &d->used[limit], effective);
	say(user, text->str);
	if (rated)
		say_rates(l, d->in.mechanism, say, user);
}

static void
say_hours(const struct due_list *l, const struct due_line *d, const struct limit_out *u,
	  void (*say)(void *, const char *), void *user)
{
	g_autoptr(GString) text = g_string_new(NULL);
	double usage = timeline_usage(due_timeline(l), d->in.engine) / 3600;

	g_string_append_printf(text, "  %.1f h run since", u->raw / 3600);
	if (fabs(u->rated - u->raw) > 18)
		g_string_append_printf(text, ", which count as %.1f h for %s", u->rated / 3600,
				       mechanism_words(d->in.mechanism));
	g_string_append_printf(text, ": %.0f %% of %.1f h.", 100 * u->share, u->allowed / 3600);
	if (u->share < 1 && usage > 0)
		g_string_append_printf(
			text, " Ahead, %.2f h a day in season are assumed by the log of the latest seasons.", usage);
	say(user, text->str);
}

/* ", between 1 Mar 2027 and 5 Aug 2027" */
static void
add_spread(GString *text, const struct limit_out *u)
{
	char early[16], late[16];

	g_string_append_printf(text, ", between %s and %s", u->early == NONE ? "?" : day_words(u->early, early),
			       u->late == NONE ? "not in sight" : day_words(u->late, late));
}

static void
say_limit(const struct due_list *l, const struct due_line *d, int i, void (*say)(void *, const char *), void *user)
{
	const struct limit *m = &d->limit[i];
	const struct limit_out *u = &d->used[i];
	g_autofree char *words = limit_words(m), *source = limit_source(m), *reading = due_reading_why(d, i);
	g_autoptr(GString) text = g_string_new(NULL);
	char day[16];

	g_string_append_printf(text, "%s (%s)", words, source);
	if (u->due != NONE)
		g_string_append_printf(text, "%s %s", u->due <= due_year(l)->at ? ": reached on" : ": reached about",
				       day_words(u->due, day));
	if (u->due != NONE && (u->early != u->due || u->late != u->due))
		add_spread(text, u);
	else if (u->due == NONE && !d->no_hours && d->in.since.day != NONE && (m->kind == LIMIT_HOURS || m->kind == LIMIT_OUTINGS))
		g_string_append(text, ": not in sight within ten years, or hardly before another limit");
	g_string_append(text, u->governs ? ". This one governs." : ".");
	say(user, text->str);
	if (reading)
		say(user, reading);
	if (d->no_hours && (m->kind == LIMIT_HOURS || m->kind == LIMIT_FIRST_HOURS))
		say(user, "  What this engine has run is not known: the calendar alone counts.");
	if (isnan(u->share) || d->in.since.day == NONE)
		return;
	if (m->kind == LIMIT_MONTHS)
		say_months(l, d, i, say, user);
	else if (m->kind == LIMIT_HOURS || m->kind == LIMIT_FIRST_HOURS)
		say_hours(l, d, u, say, user);
}

static char *
when_words(const struct due_list *l, const struct due_line *d)
{
	const struct due_year *y = due_year(l);
	char day[16];

	switch (d->out.when) {
	case OPP_NOW:
		return g_strdup("It is wanted now, before the boat is used again.");
	case OPP_BEFORE_LAUNCH:
		return g_strdup_printf("It is wanted before the launch on %s%s.", day_words(y->launch, day),
				       d->in.place == WORK_OUT
					       ? ", the last time that the boat is out of the water before it falls due"
					       : "");
	case OPP_FIRST_DAY:
		return g_strdup_printf("It is wanted on the first day afloat, %s.", day_words(y->launch, day));
	case OPP_MID_SEASON:
		return g_strdup_printf("It is wanted at a haul-out in mid-season, by %s.", day_words(d->out.by, day));
	case OPP_THIS_SEASON:
		return g_strdup_printf("It is wanted this season, by %s.",
				       d->out.by == NONE ? "haul-out" : day_words(d->out.by, day));
	case OPP_LAY_UP:
		return g_strdup_printf("It can wait for the lay-up, %s.", day_words(y->haul_out, day));
	case OPP_NEXT_SPRING:
		return g_strdup_printf("It can wait for next spring, before %s.", day_words(y->next_launch, day));
	case OPP_LATER:
		return g_strdup("It can wait longer than the coming year.");
	case OPP_EACH_OUTING:
		return g_strdup("It belongs to every outing.");
	case OPP_ON_CONDITION:
		return g_strdup("It is done when a finding or a happening asks for it; nothing does now.");
	case OPP_NO_RECORD:
		return g_strdup("It stands under no record until it is done, or found good, once.");
	case OPPORTUNITY_COUNT:
		break;
	}
	g_assert_not_reached();
}

static void
say_figures(const struct due_line *d, void (*say)(void *, const char *), void *user)
{
	g_autofree char *text = NULL;

	if (d->figures)
		text = g_strdup_printf("Figures: %s.", d->figures);
	else if (d->verb == VERB_TIGHTEN)
		text = g_strdup_printf("How tight, the maker's manual says: splitpin figure %s torque \"... ft-lb\" --source "
				       "\"manual p. ...\" keeps it.", d->path);
	if (text)
		say(user, text);
}

/* While nobody knows the design, the tasks of all are listed, though they may contradict one another. */
static void
say_design(const struct due_line *d, void (*say)(void *user, const char *text), void *user)
{
	g_autofree char *designs = variant_words(d->variants), *text = NULL;

	if (!d->variants || d->variant)
		return;
	text = g_strdup_printf("The design is not known, and this task is for: %s. splitpin fitting %s --variant DESIGN says "
			       "which it is.", designs, d->path);
	say(user, text);
}

static void
say_found(const struct due_finding *f, void (*say)(void *, const char *), void *user)
{
	g_autofree char *words = due_finding_words(f), *key = book_key_text(f->id),
			*text = g_strdup_printf("Asked for at once by what was %s (%s, finding %s).", words,
						word_of(&words_level, f->level), key);

	say(user, text);
}

void
due_why(const struct due_list *l, const struct due_line *d, void (*say)(void *user, const char *text), void *user)
{
	g_autofree char *head = g_strdup_printf("%s (%s)", d->label, d->name);
	g_autofree char *cost =
		g_strdup_printf("%s. A failure %s; it goes by %s.", d->title,
				word_of(&words_consequence, d->in.consequence), mechanism_words(d->in.mechanism));
	g_autofree char *when = when_words(l, d);

	say(user, head);
	say(user, cost);
	say_design(d, say, user);
	say_since(l, d, say, user);
	for (int i = 0; i < d->in.n_limits; i++)
		say_limit(l, d, i, say, user);
	for (int i = 0; i < d->n_found; i++)
		say_found(&d->found[i], say, user);
	if (d->out.past && d->in.consequence <= COST_HURTS)
		say(user, "Past due, and a failure can sink, burn or hurt: no lateness is given.");
	if (d->out.misfit == MISFIT_NEEDS_OUT)
		say(user,
		    "It wants the boat out of the water, and falls due before haul-out: a haul in mid-season would do.");
	if (d->out.misfit == MISFIT_NEEDS_AFLOAT)
		say(user, "It wants the boat afloat, and falls due while it is ashore.");
	say(user, when);
	if (d->off) {
		g_autofree char *off = g_strdup_printf("First off or open: %s.", d->off);

		say(user, off);
	}
	say_figures(d, say, user);
	say(user, "The maker's manual wins over every figure here: splitpin plan sets its value and page.");
}
