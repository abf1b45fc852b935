/* The words of boat_text.h, and answers as text. */
#ifndef TESTS_ENGINE_BOAT_WORDS_H
#define TESTS_ENGINE_BOAT_WORDS_H

#include "base/date.h"
#include "engine/due.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Wrong text is a wrong test. */
static inline void
wrong(const char *what)
{
	fprintf(stderr, "not understood: %s\n", what);
	exit(99);
}

static inline gint64
word_at(const char *words, const char *word)
{
	g_auto(GStrv) all = g_strsplit(words, " ", -1);

	for (int i = 0; all[i]; i++)
		if (!strcmp(all[i], word))
			return i;
	wrong(word);
	return 0;
}

#define STANDS "afloat trailer ashore roof"
#define WATERS "fresh brackish salt -"
#define MECHANISMS "none corrosion galvanic rubber raw-water fluid wear growth frost"
#define CONDITIONS "salt brackish fresh afloat ashore rinsed"
#define CONSEQUENCES "sinks burns hurts strands wrecks costs"
#define PLACES "anywhere out on-hose afloat shop"
#define RULES "done inspection renewal printed-date"
#define SINCES "unknown service fitted made"
#define LIMITS "hours months outings seasons event happening first-hours condition"
#define EVENTS "launch first-day mid-season haul-out lay-up"

static inline enum stand
stand_at(const char *word)
{
	return (enum stand)word_at(STANDS, word);
}

static inline enum water
water_at(const char *word)
{
	return (enum water)word_at(WATERS, word);
}

static inline gint64
day_at(const char *iso)
{
	int y, m, d;

	if (!strcmp(iso, "-"))
		return NONE;
	if (sscanf(iso, "%d-%d-%d", &y, &m, &d) != 3 || day_from_ymd(y, m, d) == NONE)
		wrong(iso);
	return day_from_ymd(y, m, d);
}

static inline gint64
yearday_at(const char *text)
{
	return strcmp(text, "-") ? strtol(text, NULL, 10) * 100 + strtol(text + 3, NULL, 10) : NONE;
}
#define WHENS "now before-launch first-day mid-season-haul this-season lay-up next-spring later each-outing on-condition no-record"

static inline const char *
word_in(const char *words, guint i, char buf[16])
{
	g_auto(GStrv) all = g_strsplit(words, " ", -1);

	g_strlcpy(buf, all[i], 16);
	return buf;
}

static inline const char *
day_or_dash(gint64 day, char buf[DAY_TEXT])
{
	if (day == NONE)
		g_strlcpy(buf, "-", DAY_TEXT);
	else
		day_iso(day, buf);
	return buf;
}

/* "before-launch by 2027-03-02 due 2027-03-02 limit 0 past misfit estimated" */
static inline char *
due_says(const struct due_out *o)
{
	char when[16], by[DAY_TEXT], due[DAY_TEXT];

	word_in(WHENS, o->when, when);
	day_or_dash(o->by, by);
	day_or_dash(o->due, due);
	return g_strdup_printf("%s by %s due %s limit %d%s%s%s", when, by, due, o->governing, o->past ? " past" : "",
			       o->misfit ? " misfit" : "", o->estimated ? " estimated" : "");
}

/* "2024-05-01 2024-06-01 afloat salt film rinsed assumed" */
static inline char *
span_says(const struct span *s)
{
	char from[DAY_TEXT], to[DAY_TEXT], stand[16], water[16];

	word_in(STANDS, s->stand, stand);
	word_in(WATERS, s->water, water);
	return g_strdup_printf("%s %s %s %s%s%s%s", day_iso(s->from, from), day_iso(s->to, to), stand, water,
			       s->film ? " film" : "", s->rinsed ? " rinsed" : "", s->assumed ? " assumed" : "");
}

#endif
