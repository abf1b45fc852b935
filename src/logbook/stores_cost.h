/* What the boat cost: the work, and what was taken of the stores for it.  In whole cents, each currency by itself; nothing is
 * converted.
 *
 * A lot's price is shared out among all that was taken of it, and what is left, by quantity; of the cents left over each goes to
 * the largest remainder, of equal ones to the first taken.  So the shares of a lot that is used up add up to its price. */
#ifndef LOGBOOK_STORES_COST_H
#define LOGBOOK_STORES_COST_H

#include "logbook/stores.h"

enum cost_by {
	COST_SEASON, /* from the day after one haul-out to the next, named by the year of that; without haul-outs the year */
	COST_FITTING, /* whose task it was for; "" of what was for none */
	COST_HOUR, /* as by season, and what an engine hour came to: all engines' hours together */
	COST_YEAR, /* what was paid, receipt by receipt: lots in the year they arrived (else were ordered), the work in its own.
		    * The stores are the logbook's: every lot counts, for whichever boat it is */
};
extern const char *const cost_words[4]; /* season, fitting, hour, year */

struct cost_line {
	int year; /* 0 of a fitting */
	gint64 fitting; /* NONE */
	char currency[4]; /* "": none was said */
	gint64 work, parts; /* cents */
	gint64 lost; /* cents of what was lost, thrown away or sent back: of no boat, in no sum */
	gint64 hours; /* seconds run in that season */
};
struct costs {
	enum cost_by by;
	GArray *lines; /* struct cost_line, oldest first; of fittings the dearest first, each currency together */
	int unknown; /* takings whose lot has no price, by year the lots without one: in no sum */
};
/* Of what was done, taken, bought and run from that day on; NONE: all. */
gboolean book_costs(struct book *b, const struct boat *boat, enum cost_by by, gint64 since, struct costs *costs, GError **err);
void costs_clear(struct costs *costs);
const struct cost_line *costs_line(const struct costs *c, guint i); /* NULL past the last */
/* Cents an hour, rounded half up; NONE without hours. */
gint64 cost_an_hour(const struct cost_line *l);
/* "2026", a fitting's path, "no fitting"; the caller's. */
char *cost_name(struct book *b, const struct cost_line *l);

/* What each taking of a lot comes to: cents, in the order of s->taken; NONE where the price is not known.  An array of gint64. */
GArray *stores_shares(const struct stores *s);

char *costs_csv(struct book *b, const struct costs *c);
char *costs_json(struct book *b, const struct costs *c, const char *boat);

#endif
