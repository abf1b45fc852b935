/* What the trade knows of findings, out of the shipped findings.csv and words.csv: a sentence in plain words about a fitting
 * meets a rule, which says how grave it is, why, and what it makes due.
 *
 * Words are compared whole and without case.  So that an owner's grammar does not count, the endings -ies, -ing, -ed, -es, -s
 * and -e are taken off, and of a doubled last letter one, while three letters stay: leaks, leaked and leaking are leak.
 * A word that follows no, not, never, without, none, nothing or -n't, with at most one between them and in the same part of
 * the sentence, does not count: "no water" is no water.  An alternative of several words, joined by hyphens in the file, has
 * to stand in one piece, and may begin with such a word itself: no-air. */
#ifndef LOGBOOK_KNOWLEDGE_H
#define LOGBOOK_KNOWLEDGE_H

#include "logbook/book.h"

struct knowledge;

struct trade_word {
	const char *word; /* "weeping" */
	const char *family; /* "fluid" */
	const char *meaning; /* "damp ring, no drop forms in 10 minutes" */
	gint64 level; /* words_level, where no rule is met; NONE */
};

struct finding_rule {
	const char *id; /* "gear-oil.milky" */
	gint64 level; /* words_level */
	gint64 raised; /* the same of a boat that lies afloat unattended; NONE: no other */
	const char *limit; /* "5 h", "recheck": what may be done until then; NULL */
	const char *makes_due; /* names of tasks of the catalogue, separated by blanks; NULL */
	const char *why, *standing, *source;
};

/* Of a folder of catalogues.  NULL, and *err "findings.csv:12: what is wrong". */
struct knowledge *knowledge_read(const char *folder, GError **err);
void knowledge_free(struct knowledge *k); /* NULL: nothing */
/* Of the book's folder, read when first asked for; borrowed as long as the book is open. */
const struct knowledge *book_knowledge(struct book *b, GError **err);
const struct finding_rule *knowledge_rule(const struct knowledge *k, const char *id); /* NULL: there is none */

struct finding_ask {
	const char *sentence; /* as the owner typed it */
	const char *path; /* of the fitting, with the side of a twin or without; NULL: none is said */
	guint consequences; /* of the fitting's tasks: 1 << each of words_consequence */
	gboolean afloat; /* it lies afloat, and nobody looks after it */
	gint64 today; /* day number: 2012 on an extinguisher is an age */
};

struct finding_told {
	const struct finding_rule *rule; /* the gravest that is met, of equals the first of the file; NULL: none */
	GPtrArray *words; /* const struct trade_word *, in the order of the file */
	/* words_level, before anything is raised for the waterline, fuel or a trend.  Without a rule the gravest of the words;
	 * of a fitting that sinks, burns or hurts at least mend.  NONE: nothing was recognised. */
	gint64 level;
};
/* Borrowed of k, but for the array: finding_told_clear. */
void knowledge_tell(const struct knowledge *k, const struct finding_ask *ask, struct finding_told *told);
void finding_told_clear(struct finding_told *told);

#endif
