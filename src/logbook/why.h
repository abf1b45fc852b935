/* Why a task is due when it is: each number with its terms, rate, standing and source, in sentences. */
#ifndef LOGBOOK_WHY_H
#define LOGBOOK_WHY_H

#include "logbook/due.h"

/* Days of one kind of exposure since the last time. */
struct due_term {
	enum stand stand;
	enum water water; /* as of struct span */
	gboolean film, rinsed, assumed;
	double coldest, warmest; /* monthly means, C */
	gint64 days;
	double effective; /* what they count as */
};
/* An array of struct due_term; the caller frees it. */
GArray *due_terms(const struct due_list *l, const struct due_line *d);

/* The constants that a mechanism's rates are made of, and their values in this logbook. */
struct wear_constant;
void due_rates_of(const struct due_list *l, enum mechanism m,
		  void (*each)(void *user, const struct wear_constant *c, double value), void *user);

/* Sentences through say(user, text), a paragraph each. */
void due_why(const struct due_list *l, const struct due_line *d, void (*say)(void *user, const char *text), void *user);
/* The same terms as a JSON text; the caller frees it. */
char *due_why_json(const struct due_list *l, const struct due_line *d);

#endif
