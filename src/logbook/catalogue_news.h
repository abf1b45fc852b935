/* Editions: what a newer catalogue changes for a boat, line by line, for its owner to take or leave.
 *
 * The logbook keeps a digest of each fitting and task as it was shipped.  A row that still has it is as shipped, and a
 * newer edition may change it; one that differs is its owner's, and stays.  In a logbook from before there were digests
 * what equals the catalogue counts as shipped, and the rest as the owner's. */
#ifndef LOGBOOK_CATALOGUE_NEWS_H
#define LOGBOOK_CATALOGUE_NEWS_H

#include "logbook/book.h"

enum news_kind {
	NEWS_NEW, /* a fitting or task that the boat has not */
	NEWS_CHANGED, /* the boat has it as it was shipped */
	NEWS_GONE, /* a fitting or task that the catalogue no longer has; taking that over retires it */
	NEWS_YOURS, /* the catalogue says something else than the owner, whose row is kept */
};

struct news {
	enum news_kind kind;
	enum shipped_row what;
	const char *name; /* path, or the task's name */
	const char *title;
	char *text; /* what changes: "minutes: 10, was 5; now 50 h (published: ...)"; "" of what is gone */
};

struct news_list {
	gint64 edition, has; /* of the catalogue; that the boat's tasks are of, NONE: not known */
	GArray *lines; /* struct news: fittings before tasks, those that are open first */
	int n_open; /* that can be taken or left: all but the owner's */
	struct news_work *work; /* what it was worked out from */
};

/* NULL and *err when the catalogue or the logbook can't be read. */
struct news_list *book_news(struct book *b, const char *folder, const struct boat *boat, GError **err);
void news_free(struct news_list *n); /* NULL: nothing */
/* Whether a newer edition is there than the boat's tasks are of; cheap.  *edition is its number. */
gboolean catalogue_is_newer(const char *folder, const struct boat *boat, gint64 *edition);

struct news_choice {
	char **take, **leave; /* names, NULL-ended; NULL: none */
	gboolean all; /* take whatever is open and not left */
	int taken, left; /* set */
};
/* Take lines over and leave others for good, in one command.  A new task brings its fitting with it.  What was retired
 * stays retired.  When nothing is open any more the boat is of that edition.  ERR_NOT_FOUND for a name that is no news,
 * ERR_CONFLICT for one that is the owner's own. */
gboolean book_take_news(struct book *b, const char *folder, struct boat *boat, struct news_choice *choice, GError **err);

#endif
