/* Findings: what was seen wrong in plain words, how grave it is, what it makes due, and how it ended. */
#ifndef LOGBOOK_FINDING_H
#define LOGBOOK_FINDING_H

#include "logbook/measure.h"

/* The level that the rules give, to be confirmed by the owner.  In this order:
 *   what the shipped findings.csv says of such words on such a fitting; a rule is for that place, and its level stands;
 *   else the gravest of the words, or mend where nothing is recognised; on a fitting below the waterline, or that carries
 *   fuel, one up; a fitting that could not be seen, with work that sinks, burns or hurts when it fails, holds the launch;
 *   what is worth watching and was so the last time, and got worse since - a worse reading of the same value, or a graver
 *   one of weeping, seeping, dripping, streaming - is to be mended. */
struct finding_proposal {
	gint64 level; /* words_level, never NONE */
	const char *rule; /* its name; interned, NULL: no rule knew the words */
	char *why; /* the rule's ground with where it comes from, or the words that were recognised, or that nothing was */
	char *raised; /* what raised it: "below the waterline"; NULL */
	char *makes_due; /* names of this boat's tasks, separated by spaces; NULL */
	char *allowed; /* NULL */
};
void finding_proposal_clear(struct finding_proposal *p);

struct finding_form {
	/* boat, fitting (or task, whose fitting counts), words, and what is known of outing, date, until, allowed, who,
	 * remark.  level NONE: as proposed.  makes_due: more than the rule asks for.  id: of the finding that this corrects, of
	 * which how it ended and its photos stay; NONE: a new one.  The rest is filled in. */
	struct finding what;
	const char *measured; /* "bearing-roughness 2": a reading recorded with it; NULL */
	const char *const *photos; /* paths of files, ends with NULL; NULL: none */
	gboolean sure; /* take a reading that can hardly be as it is */
	/* Writes what belongs to it in the same transaction, its key given; NULL: nothing does. */
	gboolean (*also)(struct book *b, gint64 finding, void *user, GError **err);
	void *user;
};

/* What the rules say of f->what so far; writes nothing. */
gboolean book_propose(struct book *b, const struct finding_form *f, struct finding_proposal *p, GError **err);
/* Record or correct it, its reading and photos with it.  p is filled in either way and to be cleared. */
gboolean book_finding(struct book *b, struct finding_form *f, struct finding_proposal *p, GError **err);

/* It is mended on that day, and left so; the latest work on a task that it asked for, or was found at, is linked: f->service. */
gboolean book_mend(struct book *b, struct finding *f, gint64 day, const char *left_as, GError **err);
gboolean book_reopen(struct book *b, struct finding *f, GError **err);
/* With its photos and waivers; the reading stays. */
gboolean book_drop_finding(struct book *b, const struct finding *f, GError **err);

/* The open ones, the worst first, of equals the oldest; with all, behind them those that are mended, the newest first.  An
 * array of struct finding that clears itself. */
GArray *book_findings(struct book *b, gint64 boat, gboolean all, GError **err);
/* That of a key, or of letters with which just one key begins or ends.  ERR_INPUT, ERR_NOT_FOUND. */
gboolean book_find_finding(struct book *b, gint64 boat, const char *key, struct finding *f, GError **err);
/* The open findings that ask for a task, by its name. */
GArray *book_findings_for(struct book *b, gint64 boat, const char *task, GError **err);

/* In which season it is carried: 1 is that in which it was found, and every season begun since, until a day or until it was
 * mended, is one more.  seasons: struct season of its boat. */
int finding_season(const struct finding *f, const GArray *seasons, gint64 day);
/* "3rd season"; "" for the first.  Returns buf. */
const char *finding_season_words(int season, char buf[16]);

/* The fitting that a sentence is about: the only one of which every word of the title, or of the end of the path, stands in it,
 * or of several that with the most such words.  ERR_INPUT when there is none: near then holds the titles and paths of those that
 * it could be (char *, owned by it), the nearest first; it was empty. */
gboolean book_fitting_meant(struct book *b, gint64 boat, const char *sentence, GPtrArray *near, struct fitting *f, GError **err);

/* All that is on record of it, paragraphs, a line each: level and why, what it makes due and whether that was done, what may be
 * done until when, photos, how it ended.  files: look at the photo files, too, whether they are as they were.  The caller's. */
char *finding_story(struct book *b, const struct finding *f, gboolean files, GError **err);
/* Findings for other programs, in the order given: CSV, or JSON, an array of objects; the caller's.  NULL and *err. */
char *findings_csv(struct book *b, const GArray *findings, GError **err);
char *findings_json(struct book *b, const GArray *findings, GError **err);

#endif
