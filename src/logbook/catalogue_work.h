/* What the news of a catalogue are worked out from; for catalogue_news.c and catalogue_take.c alone. */
#ifndef LOGBOOK_CATALOGUE_WORK_H
#define LOGBOOK_CATALOGUE_WORK_H

#include "logbook/catalogue_inside.h"
#include "logbook/catalogue_news.h"

struct news_work {
	struct catalogue *catalogue; /* as it stands on the boat */
	GArray *fittings, *tasks, *limits, *shipped; /* that the boat has */
	GHashTable *by_name; /* of those but the limits; borrows the names */
};

/* What the boat has by that path or name, and its digest (the caller's); NULL: nothing. */
struct fitting *news_fitting(const struct news_work *w, const char *path);
struct task *news_task(const struct news_work *w, const char *name);
struct shipped *news_shipped(const struct news_work *w, const char *name);
char *news_fitting_digest(const struct news_work *w, const char *path);
char *news_task_digest(const struct news_work *w, const char *name);

#endif
