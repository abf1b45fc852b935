/* Jobs and how they closed, and sheets that yards were handed. */
#include "logbook/dossier_inside.h"

#include "base/date.h"
#include "logbook/job.h"
#include "logbook/yard.h"

#include <string.h>

static void
say_head(struct dossier *d, const struct job *j)
{
	g_autofree char *name = dossier_text(d, j->name), *title = dossier_text(d, j->title);
	g_autofree char *who = names_person(d->names, j->who), *place = names_place(d->names, j->place);
	g_autofree char *remark = dossier_remark(d, j->remark);
	char opened[16], day[16];

	dossier_title(d, "%s, %s: opened %s%s%s; %s%s%s%s%s%s", name, title, day_words(j->opened, opened), who ? " by " : "",
		    who ? who : "",
		    j->closed != NONE	? "closed "
		    : j->paused != NONE ? "open, rests since "
					: "open",
		    day_words(j->closed != NONE ? j->closed : j->paused, day), place ? "; things lie: " : "", place ? place : "",
		    remark ? "; " : "", remark ? remark : "");
}

static void
say_aims(struct dossier *d, const struct job_sheet *s)
{
	for (EACH(struct job_aim, a, s->aims)) {
		g_autofree char *title = dossier_text(d, a->title), *reason = dossier_text(d, a->aim.reason);
		g_autofree char *proofs = g_strdup_printf("; proofs seen: %d of %d", a->proved, a->proofs);

		dossier_say(d, 2, "%s: %s%s%s%s", title, aim_state_words(a->state), reason ? ", " : "", reason ? reason : "",
			    a->proofs ? proofs : "");
	}
}

/* What came off, what is back, and what went back otherwise than it was found. */
static void
say_list(struct dossier *d, const struct job_sheet *s)
{
	int n = 0, back = 0, missing = 0, extra = 0;

	for (EACH(struct removal, r, s->removals)) {
		n++;
		back += r->back != NONE;
		missing += r->state == REMOVAL_MISSING;
		extra += r->state == REMOVAL_EXTRA;
	}
	if (!n)
		return;
	dossier_say(d, 2, "strip-down list: %d %s, %d closed; missing as found %d, left over %d", n, n == 1 ? "line" : "lines",
		    back, missing, extra);
	for (EACH(struct removal, r, s->removals)) {
		g_autofree char *what = r->why ? dossier_text(d, r->what) : NULL, *why = r->why ? dossier_text(d, r->why) : NULL;

		if (why)
			dossier_say(d, 4, "%s is back otherwise than found: %s", what, why);
	}
}

/* Aims that are open were told as such. */
static void
say_open(struct dossier *d, const struct job_sheet *s)
{
	for (EACH(struct job_open, o, s->open)) {
		g_autofree char *words = dossier_text(d, o->words);

		if (s->job.closed == NONE && o->what != LEFT_AIM)
			dossier_say(d, 2, "open: %s", words);
	}
}

gboolean
dossier_jobs(struct dossier *d, GError **err)
{
	g_autoptr(GArray) jobs = book_jobs(d->b, d->boat->id, TRUE, err);
	int told = 0;

	if (!jobs)
		return FALSE;
	dossier_head(d, "Jobs");
	for (EACH(struct job, j, jobs)) {
		struct job_sheet *s = dossier_wants(d, j->closed) ? book_job_sheet(d->b, j, err) : NULL;

		if (!s && dossier_wants(d, j->closed))
			return FALSE;
		if (!s)
			continue;
		told++;
		say_head(d, j);
		say_aims(d, s);
		say_list(d, s);
		say_open(d, s);
		dossier_flush(d);
		job_sheet_free(s);
	}
	if (!told)
		dossier_say(d, 0, "None is on record.");
	return TRUE;
}

/* As the list of those handed out has them, each with what was not answered under it. */
gboolean
dossier_sheets(struct dossier *d, GError **err)
{
	g_autofree char *all = book_yard_open(d->b, d->boat->id, err), *told = dossier_text(d, all);
	g_auto(GStrv) line = g_strsplit(told ? g_strchomp(told) : "", "\n", -1);

	if (!all)
		return FALSE;
	dossier_head(d, "Sheets handed to a yard");
	if (!line[0] || !*line[0])
		dossier_say(d, 0, "None is on record.");
	for (int i = 0; line[i] && *line[0]; i++) {
		int indent = (int)strspn(line[i], " ");

		dossier_say(d, indent, "%s%s", indent ? "not answered: " : "", line[i] + indent);
	}
	return TRUE;
}
