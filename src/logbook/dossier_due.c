/* What is to be done, and what nobody knows. */
#include "logbook/dossier_inside.h"

#include "base/date.h"

static char *
line_words(const struct dossier *d, const struct due_line *line)
{
	g_autofree char *label = dossier_text(d, line->label);
	char day[20];

	due_day_words(&line->out, day);
	return g_strdup_printf("%s%s%s%s", label, *day || line->out.past ? ", " : "",
			       line->out.past && *day ? "past due since "
			       : line->out.past	      ? "past due"
			       : *day		      ? "due "
						      : "",
			       day);
}

/* What is wanted in this season line by line, what can wait for its end together, and of what comes later how much it is. */
static void
say_group(struct dossier *d, int from, int to)
{
	enum opportunity when = due_at(d->due, from)->out.when;
	g_autofree char *title = due_group_title(d->due, from, to), *sum = due_group_sum(d->due, from, to);
	g_autoptr(GPtrArray) together = g_ptr_array_new_with_free_func(g_free);

	dossier_title(d, "%s: %s", title, sum);
	for (int i = from; i < to; i++) {
		g_autofree char *words = line_words(d, due_at(d->due, i));

		if (when < OPP_LAY_UP)
			dossier_say(d, 2, "%s", words);
		else if (when == OPP_LAY_UP || when == OPP_NEXT_SPRING)
			g_ptr_array_add(together, g_steal_pointer(&words));
	}
	dossier_list(d, 2, "", together);
	dossier_flush(d);
}

gboolean
dossier_due(struct dossier *d, GError **err G_GNUC_UNUSED)
{
	int told = 0;

	dossier_head(d, "To be done");
	for (int i = 0, end; i < due_count(d->due); i = end) {
		end = due_group_end(d->due, i);
		if (due_at(d->due, i)->out.when == OPP_NO_RECORD)
			continue;
		told++;
		say_group(d, i, end);
	}
	if (!told)
		dossier_say(d, 0, "Of no task is it known when it is due.");
	return TRUE;
}

/* Tasks that nobody knows of: those of which a failure sinks, burns or hurts, or the others. */
static void
list_tasks(struct dossier *d, gboolean grave)
{
	g_autoptr(GPtrArray) tasks = g_ptr_array_new_with_free_func(g_free);

	for (int i = 0; i < due_count(d->due); i++) {
		const struct due_line *line = due_at(d->due, i);

		if (line->out.when == OPP_NO_RECORD && (line->in.consequence <= COST_HURTS) == grave)
			g_ptr_array_add(tasks, dossier_text(d, line->label));
	}
	dossier_list(d, 0, grave ? "No record, and a failure can sink, burn or hurt: " : "No record: ", tasks);
}

static void
list_designs(struct dossier *d)
{
	g_autoptr(GPtrArray) designs = g_ptr_array_new_with_free_func(g_free);

	for (EACH(struct fitting, f, d->fittings))
		if (f->variants && !f->variant && f->retired != 1)
			g_ptr_array_add(designs, dossier_text(d, f->title));
	dossier_list(d, 0, "Which design it is: ", designs);
}

static void
list_parts(struct dossier *d)
{
	g_autoptr(GPtrArray) parts = g_ptr_array_new_with_free_func(g_free);

	for (EACH(struct fitting_event, e, d->events))
		if (e->kind == EVENT_FITTED && e->date == NONE) {
			const struct fitting *f = dossier_fitting(d, e->fitting);
			g_autofree char *whole = g_strdup_printf("%s (%s)", e->subject, f ? f->title : "?");

			g_ptr_array_add(parts, dossier_text(d, whole));
		}
	dossier_list(d, 0, "When it was fitted: ", parts);
}

static void
list_engines(struct dossier *d)
{
	for (EACH(struct engine, e, d->engines))
		if (e->hours == NONE)
			dossier_say(d, 0, "What the engine %s had run before this log.", e->name);
		else if (e->estimated == 1)
			dossier_say(d, 0, "What the engine %s had run before this log, but for a guess.", e->name);
}

/* What is on record and yet not known for sure. */
static void
count_services(struct dossier *d)
{
	int claimed = 0, unproved = 0, about = 0, n = 0;

	for (EACH(struct service, v, d->services)) {
		n++;
		claimed += v->outcome == OUTCOME_CLAIMED;
		about += v->estimated == 1 || v->earliest != NONE;
	}
	for (EACH(struct fitting_event, e, d->events))
		unproved += e->kind == EVENT_SERVICE && e->unproved;
	dossier_say(d, 0, "Of %d %s on record %d %s only told by somebody (claimed), of %d the proof that the work asks for is not "
			  "on record, and of %d the day is from memory or known to a span only.", n,
		    n == 1 ? "service" : "services", claimed, claimed == 1 ? "was" : "were", unproved, about);
}

gboolean
dossier_unknown(struct dossier *d, GError **err G_GNUC_UNUSED)
{
	dossier_head(d, "What nobody knows");
	list_engines(d);
	list_tasks(d, TRUE);
	list_tasks(d, FALSE);
	list_designs(d);
	list_parts(d);
	count_services(d);
	return TRUE;
}
