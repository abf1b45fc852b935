#include "tui/year_band.h"

#include "base/date.h"
#include "model/words.h"

#include <string.h>

/* Columns of a month: no more than it has days.  The rows of the band; columns that a mechanism needs without and with a
 * bar. */
enum { MONTHS = 12, MOST_W = 28, BAND = 1, LETTERS = 2, LEGEND = 3, WEAR_W = 29, BAR_LEAST = 6, BAR_MOST = 50 };
enum { MECHANISMS = MECH_COUNT - MECH_CORROSION };

static const char assumed[] = "assumed", no_record[] = "not on record";

/* What a column of the band says of its days. */
struct column {
	gboolean wet;	/* in the water on one of them */
	char letter;	/* its saltiest water, else where it lay; '?' assumed; 0: not on record */
	int weight;	/* of the letter, while it is looked for */
};

static gboolean
in_water(const struct span *s)
{
	return s->stand == STAND_AFLOAT || (s->water < WATER_COUNT && !s->film);
}

static void
add_span(struct column *c, const struct span *s)
{
	gboolean wet = in_water(s);
	int weight = s->assumed ? 0 : wet ? 2 + (int)s->water : 1;

	c->wet = c->wet || wet;
	if (c->letter && weight <= c->weight)
		return;
	c->weight = weight;
	c->letter = s->assumed ? '?' : word_of(wet ? &words_water : &words_stand, wet ? (gint64)s->water : (gint64)s->stand)[0];
}

/* Columns of w a month. */
static void
fill(const struct year_band *b, int w, struct column *column)
{
	gint64 first = day_from_ymd(b->year, 1, 1);
	const struct span *s;
	int n = timeline_spans(b->life, &s), at = 0;

	for (int k = 0; k < MONTHS * w; k++) {
		gint64 month = day_add_months(first, k / w), days = month_days(b->year, k / w + 1);
		gint64 from = MAX(month + k % w * days / w, b->from), to = month + (k % w + 1) * days / w;

		while (at < n && s[at].to <= from)
			at++;
		for (int i = at; i < n && s[i].from < to && from < to; i++)
			add_span(&column[k], &s[i]);
	}
}

/* Write the word into every run of a letter that is long enough for it. */
static void
name_runs(const struct column *column, int n, char letter, const char *word, const struct area *row)
{
	int w = (int)strlen(word);

	for (int from = 0, to; from < n; from = to) {
		to = from + 1;
		while (to < n && column[to].letter == column[from].letter)
			to++;
		if (column[from].letter == letter && to - from >= w)
			area_put(row, 0, 1 + from + (to - from - w) / 2, STYLE_PLAIN, word);
	}
}

static void
draw_columns(const struct area *a, const struct column *column, int n)
{
	struct area band = area_part(a, BAND, 0, 1, a->w), letters = area_part(a, LETTERS, 0, 1, a->w);

	for (int k = 0; k < n; k++) {
		const char letter[2] = { column[k].letter, 0 };

		if (!*letter)
			continue;
		area_put(a, BAND, 1 + k, column[k].wet ? STYLE_WATER : STYLE_PLAIN,
			 glyph(a->g, column[k].wet ? GLYPH_AFLOAT : GLYPH_ASHORE));
		area_put(a, LETTERS, 1 + k, STYLE_PLAIN, letter);
	}
	name_runs(column, n, '?', assumed, &letters);
	name_runs(column, n, 0, no_record, &band);
}

/* The first row below the legend. */
static int
draw_band(const struct year_band *b, const struct area *a)
{
	struct area right = area_part(a, 0, 1, a->h, a->w - 1);
	struct column column[MONTHS * MOST_W] = { 0 };
	int w = CLAMP((a->w - 2) / MONTHS, 3, MOST_W);
	gint64 first = day_from_ymd(b->year, 1, 1), next = day_from_ymd(b->year + 1, 1, 1);
	g_autofree char *legend = g_strdup_printf("%s in water, if only a day; %s out; f b s water; a t r ashore, trailer, roof",
						  glyph(a->g, GLYPH_AFLOAT), glyph(a->g, GLYPH_ASHORE));

	fill(b, w, column);
	for (int m = 1; m <= MONTHS; m++) {
		char name[4];

		g_strlcpy(name, month_name(m), sizeof name);
		area_put(a, 0, 1 + (m - 1) * w, STYLE_PLAIN, name);
	}
	draw_columns(a, column, MONTHS * w);
	if (b->today >= first && b->today < next)
		area_put(a, LETTERS, 1 + (int)((b->today - first) * MONTHS * w / (next - first)), STYLE_STRONG,
			 glyph(a->g, GLYPH_TODAY));
	return area_wrap(&right, LEGEND, 0, STYLE_PLAIN, legend);
}

/* The days of the year that are on record; FALSE: none. */
static gboolean
days_known(const struct year_band *b, gint64 *from, gint64 *to)
{
	*from = MAX(day_from_ymd(b->year, 1, 1), b->from);
	*to = MIN(day_from_ymd(b->year + 1, 1, 1), b->today);
	return *from < *to;
}

static const char *
day_or_days(double days)
{
	return days >= .5 && days < 1.5 ? "day" : "days";
}

/* "corrosion   121 days ####------ x 0.37" */
static void
draw_mechanism(const struct area *a, enum mechanism m, double days, double counts, double most)
{
	int bar = MIN(a->w - WEAR_W, BAR_MOST), full;

	area_printf(a, 0, 1, STYLE_PLAIN, "%-9s %5.0f %s", word_of(&words_mechanism, m), counts,
		    day_or_days(counts));
	if (bar < BAR_LEAST) {
		area_printf(a, 0, 22, STYLE_PLAIN, "x %.2f", counts / days);
		return;
	}
	full = (int)(counts / days / most * bar + .5);
	area_repeat(a, 0, 22, full, STYLE_PLAIN, glyph(a->g, GLYPH_FULL));
	area_repeat(a, 0, 22 + full, bar - full, STYLE_PLAIN, glyph(a->g, GLYPH_EMPTY));
	area_printf(a, 0, 23 + bar, STYLE_PLAIN, "x %.2f", counts / days);
}

static double
largest_rate(const struct timeline *t, gint64 from, gint64 to)
{
	double most = 1;

	for (int m = MECH_CORROSION; m < MECH_COUNT; m++)
		most = MAX(most, timeline_days(t, (enum mechanism)m, from, to) / (double)(to - from));
	return most;
}

/* ", 12 of them assumed,"; "" for none.  The caller's. */
static char *
assumed_words(const struct timeline *life, gint64 from, gint64 to)
{
	const struct span *s;
	int n = timeline_spans(life, &s);
	gint64 days = 0;

	for (int i = 0; i < n; i++)
		if (s[i].assumed)
			days += MAX(MIN(s[i].to, to) - MAX(s[i].from, from), 0);
	return days ? g_strdup_printf(", %d of them assumed,", (int)days) : g_strdup("");
}

/* Returns the first row below. */
static int
draw_wear(const struct year_band *b, const struct area *a, gint64 from, gint64 to)
{
	double days = (double)(to - from), most = largest_rate(b->life, from, to);
	g_autofree char *guessed = assumed_words(b->life, from, to);
	int room = MAX(a->h - 1, 1), columns = CLAMP((MECHANISMS + room - 1) / room, 1, MAX(a->w / WEAR_W, 1));
	int rows = (MECHANISMS + columns - 1) / columns;

	area_printf(a, 0, 1, STYLE_PLAIN, "For wear, the %.0f days of %d%s%s count as", days, b->year,
		    to == b->today ? " so far" : from == b->from ? " on record" : "", guessed);
	for (int k = 0; k < MECHANISMS; k++) {
		struct area one = area_part(a, 1 + k % rows, k / rows * (a->w / columns), 1, a->w / columns);
		enum mechanism m = (enum mechanism)(MECH_CORROSION + k);

		if (one.h)
			draw_mechanism(&one, m, days, timeline_days(b->life, m, from, to), most);
	}
	if (1 + rows > a->h)
		area_put_in(a, a->h - 1, 0, a->w, STYLE_KEY, "... Enter shows all of it");
	return 1 + rows;
}

/* "Lay: trailer 142 days, roof 35 days; in the water on 36 of them; salt in play on 1" */
static void
add_lying(GString *out, const struct timeline *life, gint64 from, gint64 to)
{
	gint64 days[STAND_COUNT] = { 0 }, day_out = 0;
	const struct span *s;
	int n = timeline_spans(life, &s);
	const char *comma = "Lay: ";

	for (int i = 0; i < n; i++) {
		gint64 d = MIN(s[i].to, to) - MAX(s[i].from, from);

		if (d <= 0)
			continue;
		days[s[i].stand] += d;
		day_out += s[i].stand != STAND_AFLOAT && in_water(&s[i]) ? d : 0;
	}
	for (int k = 0; k < STAND_COUNT; k++)
		if (days[k]) {
			g_string_append_printf(out, "%s%s %d %s", comma, word_of(&words_stand, k), (int)days[k],
					       day_or_days((double)days[k]));
			comma = ", ";
		}
	if (day_out)
		g_string_append_printf(out, "; in the water on %d of them", (int)day_out);
	g_string_append_printf(out, "; salt in play on %.0f\n", timeline_salt_days(life, from, to));
}

/* As far as there is room. */
static void
draw_days(const struct year_band *b, const struct area *a, gint64 from, gint64 to)
{
	struct area lying;
	g_autoptr(GString) out = g_string_new(NULL);
	int y = draw_wear(b, a, from, to);

	lying = area_part(a, y, 1, a->h - y, a->w - 1);
	add_lying(out, b->life, from, to);
	area_wrap(&lying, 0, 2, STYLE_PLAIN, g_strchomp(out->str));
}

void
year_draw(const struct year_band *b, const struct area *a)
{
	int y = draw_band(b, a);
	struct area days = area_part(a, y, 0, a->h - y, a->w);
	gint64 from, to;

	if (days_known(b, &from, &to))
		draw_days(b, &days, from, to);
	else if (day_from_ymd(b->year, 1, 1) > b->today)
		area_printf(&days, 0, 1, STYLE_PLAIN, "%d lies ahead: nothing has worn yet", b->year);
	else
		area_printf(&days, 0, 1, STYLE_PLAIN, "%d is not on record", b->year);
}

void
year_add_days(GString *out, const struct timeline *life, gint64 from, gint64 to)
{
	g_autofree char *guessed = NULL;
	double days = (double)(to - from);

	if (from >= to)
		return;
	add_lying(out, life, from, to);
	guessed = assumed_words(life, from, to);
	g_string_append_printf(out, "For wear, %.0f %s%s count as\n", days, day_or_days(days), guessed);
	for (int m = MECH_CORROSION; m < MECH_COUNT; m++) {
		double counts = timeline_days(life, (enum mechanism)m, from, to);

		g_string_append_printf(out, "%s: %.0f %s, x %.2f\n", word_of(&words_mechanism, m), counts, day_or_days(counts),
				       counts / days);
	}
}
