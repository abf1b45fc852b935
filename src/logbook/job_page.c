/* Pages of a job as plain text. */
#include "logbook/job_inside.h"

#include "base/date.h"
#include "logbook/caution.h"
#include "logbook/removal_parse.h"

#include <string.h>

static const struct step *
step_at(const struct job_sheet *s, guint i)
{
	return &((const struct step *)(const void *)s->steps->data)[i];
}

static const struct removal *
removal_at(const struct job_sheet *s, guint i)
{
	return &((const struct removal *)(const void *)s->removals->data)[i];
}

/* The open steps of a kind under a heading, with a box to tick. */
static void
put_steps(GString *out, const struct job_sheet *s, gint64 kind, gboolean on_condition, const char *heading)
{
	gboolean any = FALSE;

	for (guint i = 0; i < s->steps->len; i++) {
		const struct step *p = step_at(s, i);

		if (p->kind != kind || (p->on_condition == 1) != on_condition)
			continue;
		if (!any)
			g_string_append_printf(out, "\n%s\n", heading);
		any = TRUE;
		g_string_append_printf(out, "%4d [%c] %s", (int)p->no, p->done != NONE ? 'x' : p->seen ? '-' : ' ', p->text);
		if (p->seen)
			g_string_append_printf(out, "\n         %s: %s", p->done != NONE ? "seen" : "left undone", p->seen);
		g_string_append_c(out, '\n');
	}
}

static void
put_minutes(GString *out, const struct job_sheet *s)
{
	if (s->access_minutes || s->hand_minutes)
		g_string_append_printf(
			out, "About %d min to open and close, each thing once, and %d min hands on; of what is known.\n",
			(int)s->access_minutes, (int)s->hand_minutes);
}

/* What is in the stores for it; where nothing is linked, how that is done stands in the help. */
static void
put_stores(GString *out, struct book *b, const struct job_sheet *s)
{
	g_autoptr(GPtrArray) words = job_stores_words(b, s, NULL);

	if (words && words->len)
		g_string_append(out, "\nOUT OF THE STORES\n");
	for (guint i = 0; words && i < words->len; i++)
		g_string_append_printf(out, "  %s\n", (const char *)words->pdata[i]);
}

char *
job_carry_page(struct book *b, const struct job_sheet *s)
{
	g_autofree char *caution = caution_block(b, s->cautions);
	GString *out = g_string_new(NULL);

	g_string_append_printf(out, "%s: %s\n", s->job.name, s->job.title);
	put_minutes(out, s);
	if (caution)
		g_string_append_printf(out, "\n%s", caution);
	put_steps(out, s, STEP_STATE, FALSE, "BEFORE STARTING");
	put_steps(out, s, STEP_TOOL, FALSE, "TOOLS; sizes are usual ones: try before pulling");
	put_steps(out, s, STEP_PART, FALSE, "PARTS, ALWAYS");
	put_steps(out, s, STEP_PART, TRUE, "PARTS, IF FOUND BAD");
	put_steps(out, s, STEP_CONSUMABLE, FALSE, "GREASE, SEALER AND WHAT IS USED UP");
	put_steps(out, s, STEP_CONSUMABLE, TRUE, "USED UP, IF NEEDED");
	put_stores(out, b, s);
	if (s->while_open->len)
		g_string_append(out, "\nWHILE IT IS OPEN\n");
	for (guint i = 0; i < s->while_open->len; i++)
		g_string_append_printf(out, "  %s\n", (const char *)s->while_open->pdata[i]);
	return g_string_free(out, FALSE);
}

/* "found 3/8 in proud, thick side out, tray 2, to be renewed" */
static void
add_details(GString *out, const struct removal *r)
{
	static const char *const states[] = { NULL, "to be renewed", "MISSING as found", "LEFT OVER" };
	g_autofree char *found = r->as_found ? g_strdup_printf("found %s", r->as_found) : NULL;
	const char *const part[] = { found, r->orientation, r->tray, states[r->state] };

	for (guint i = 0; i < G_N_ELEMENTS(part); i++)
		if (part[i])
			g_string_append_printf(out, ", %s", part[i]);
	if (r->remark)
		g_string_append_printf(out, " (%s)", r->remark);
}

static void
add_back(GString *out, const struct removal *r)
{
	char d[16];

	g_string_append_printf(out, "\n         back %s", day_words(r->back, d));
	if (r->back_count != NONE)
		g_string_append_printf(out, ", %d in", (int)r->back_count);
	if (r->as_left)
		g_string_append_printf(out, ", left %s", r->as_left);
	if (r->why)
		g_string_append_printf(out, ": %s", r->why);
}

/* For the refit: what is to be filled in. */
static void
add_blank(GString *out, const struct removal *r)
{
	if (r->kind == REMOVAL_SETTING || r->as_found)
		g_string_append(out, "\n         left: ____________________");
	if (r->kind == REMOVAL_RETAINER || r->kind == REMOVAL_PLUG)
		g_string_append(out, "\n         counted in: ____");
}

static void
put_line(GString *out, const struct removal *r, gboolean refit)
{
	g_autofree char *words = removal_words(r);

	g_string_append_printf(out, "%4d [%c] %s", (int)r->no, r->back == NONE ? ' ' : 'x', words);
	add_details(out, r);
	if (r->back != NONE)
		add_back(out, r);
	else if (refit)
		add_blank(out, r);
	g_string_append_c(out, '\n');
}

char *
job_list_page(const struct job_sheet *s, gboolean refit)
{
	GString *out = g_string_new(NULL);
	guint n = s->removals->len;

	g_string_append_printf(out, "%s: %s\n%s\n", s->job.name, s->job.title,
			       refit ? "Going back, the last thing off first." : "As it came off.");
	for (guint i = 0; i < n; i++)
		put_line(out, removal_at(s, refit ? n - 1 - i : i), refit);
	if (!n)
		g_string_append(out, "Nothing is on the list.\n");
	return g_string_free(out, FALSE);
}

char *
job_steps_page(const struct job_sheet *s)
{
	GString *out = g_string_new(NULL);

	g_string_append_printf(out, "%s: %s\n", s->job.name, s->job.title);
	put_steps(out, s, STEP_STATE, FALSE, "BEFORE STARTING");
	put_steps(out, s, STEP_STEP, FALSE, "STEPS");
	put_steps(out, s, STEP_STEP, TRUE, "STEPS, WHERE IT IS SO");
	put_steps(out, s, STEP_PROOF, FALSE, "SEEN TO, BEFORE IT COUNTS");
	return g_string_free(out, FALSE);
}

/* What lies in one tray. */
static void
put_label(GString *out, const struct job_sheet *s, const char *tray)
{
	char d[16];

	g_string_append_printf(out, "+----------------------------------------\n| %s\n| %s, opened %s\n", tray, s->job.name,
			       day_words(s->job.opened, d));
	for (guint i = 0; i < s->removals->len; i++) {
		const struct removal *r = removal_at(s, i);
		g_autofree char *words = removal_words(r);

		if (!r->tray || g_ascii_strcasecmp(r->tray, tray))
			continue;
		g_string_append_printf(out, "| %d: %s%s%s%s\n", (int)r->no, words, r->orientation ? ", " : "",
				       r->orientation ? r->orientation : "", r->back == NONE ? "" : " (back)");
	}
	g_string_append(out, "+----------------------------------------\n\n");
}

char *
job_labels(const struct job_sheet *s)
{
	g_autoptr(GHashTable) seen = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
	GString *out = g_string_new(NULL);

	for (guint i = 0; i < s->removals->len; i++) {
		const char *tray = removal_at(s, i)->tray;

		if (tray && g_hash_table_add(seen, g_ascii_strdown(tray, -1)))
			put_label(out, s, tray);
	}
	return g_string_free(out, FALSE);
}
