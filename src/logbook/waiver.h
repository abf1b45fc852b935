/* What holds the launch, let pass for a while by somebody who answers for it. */
#ifndef LOGBOOK_WAIVER_H
#define LOGBOOK_WAIVER_H

#include "logbook/book.h"

enum { WAIVER_DAYS = 366 }; /* at most, from its first day */

/* Whether it is whole: one thing, a name, a reason, and a last day neither before the first nor too far off. */
gboolean waiver_check(const struct waiver *w, GError **err);

/* The finding or happening of that key, or the task that the words mean: into *w.  ERR_INPUT for what can't hold the launch:
 * work that costs money only, what is mended, closed or retired. */
gboolean book_waiver_thing(struct book *b, gint64 boat, const char *words, struct waiver *w, GError **err);

/* Let it pass from today on; one that holds for the same thing ends.  who NULL: whoever acts.  Fills in the rest of *w. */
gboolean book_waive(struct book *b, struct waiver *w, GError **err);
/* From today on it holds no longer: by its key, or by what it lets pass.  ERR_NOT_FOUND. */
gboolean book_take_back(struct book *b, gint64 boat, const char *words, GError **err);

/* Those that hold on a day: not before the first, not after the last, not from the day on which they were taken back.  An
 * array of struct waiver that clears itself. */
GArray *book_waivers_on(struct book *b, gint64 boat, gint64 day, GError **err);
/* Of such an array the one that lets a thing pass, the others being NONE; NULL. */
const struct waiver *waiver_of(const GArray *waivers, gint64 finding, gint64 task, gint64 happening);
/* What it lets pass: a task's name, a finding's words, "grounding on 20 Jul 2024"; the caller's. */
char *book_waiver_words(struct book *b, const struct waiver *w);

/* Whether a task of that name and consequence can hold the launch: it sinks, burns or hurts, or keeps the shift linkage
 * together. */
gboolean task_can_hold(const char *name, const char *path, gint64 consequence);

#endif
