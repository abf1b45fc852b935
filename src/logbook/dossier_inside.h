/* What the files of the dossier share; nobody else includes this. */
#ifndef LOGBOOK_DOSSIER_INSIDE_H
#define LOGBOOK_DOSSIER_INSIDE_H

#include "base/each.h"
#include "logbook/dossier.h"
#include "logbook/due.h"
#include "logbook/fitting_history.h"
#include "logbook/inside.h"

/* What the outings of an engine come to. */
struct engine_sum {
	gint64 seconds, guessed; /* as far as the log has them; of those, guesses and what a later reading showed */
	gint64 reading, read; /* the last reading, and its day; NONE */
};

/* A season, from its launch to the eve of the next; before the first, or without any, what lies between. */
struct season_sum {
	gint64 from, to; /* to: the first day after it */
	const struct season *season; /* NULL */
	int outings, guesses, still; /* all; guesses among them; those without an engine */
	gint64 *seconds; /* an engine each */
	int water[4]; /* words_water, and last of outings of which it was not said */
	int salty, rinsed, not_said; /* in salt or brackish water; rinsed afterwards, or not said */
};

struct dossier {
	struct book *b;
	const struct boat *boat;
	const struct dossier_form *form;
	struct fitting_tell tell;
	struct names *names; /* NULL: as they are */
	struct paper *paper;
	GString *head; /* lines that wait for the paragraph under them */
	GPtrArray *problems; /* char *, what verification found */
	int n_problems;
	gint64 last, last_at;
	char *hash;
	struct due_list *due;
	GArray *engines, *seasons_on_record, *fittings, *services, *events;
	struct engine_sum *engine; /* as engines has them */
	GArray *seasons; /* struct season_sum */
};

/* Text is made harmless here and nowhere else.  A heading and a title stay with the paragraph after them; an item's further lines
 * are indented further than its first, those of prose are not. */
void dossier_head(struct dossier *d, const char *heading);
void dossier_title(struct dossier *d, const char *format, ...) G_GNUC_PRINTF(2, 3);
void dossier_say(struct dossier *d, int indent, const char *format, ...) G_GNUC_PRINTF(3, 4);
void dossier_prose(struct dossier *d, const char *format, ...) G_GNUC_PRINTF(2, 3);
void dossier_space(struct dossier *d); /* a blank line before what comes next */
void dossier_flush(struct dossier *d); /* what waits goes on the page */
/* "Labels: a; b; c", or nothing for an empty list. */
void dossier_list(struct dossier *d, int indent, const char *label, const GPtrArray *items);

/* The texts of a record as this reader is to have them, each the caller's; NULL for NULL and for a remark that is left out. */
char *dossier_text(const struct dossier *d, const char *text);
char *dossier_remark(const struct dossier *d, const char *remark);
gboolean dossier_wants(const struct dossier *d, gint64 day); /* not before --since; what has no day is wanted */
const struct fitting *dossier_fitting(const struct dossier *d, gint64 key); /* NULL */

/* Outings read one by one and summed up. */
gboolean dossier_read_seasons(struct dossier *d, GError **err);

/* The sections. */
gboolean dossier_first_page(struct dossier *d, GError **err);
gboolean dossier_boat(struct dossier *d, GError **err);
gboolean dossier_engines(struct dossier *d, GError **err);
gboolean dossier_seasons(struct dossier *d, GError **err);
gboolean dossier_findings(struct dossier *d, GError **err);
gboolean dossier_due(struct dossier *d, GError **err);
gboolean dossier_unknown(struct dossier *d, GError **err);
gboolean dossier_parts(struct dossier *d, GError **err);
gboolean dossier_jobs(struct dossier *d, GError **err);
gboolean dossier_sheets(struct dossier *d, GError **err);
gboolean dossier_costs(struct dossier *d, GError **err);
gboolean dossier_corrections(struct dossier *d, GError **err);

#endif
