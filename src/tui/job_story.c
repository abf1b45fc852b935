/* A job, and what it is made of, in words. */
#include "tui/job_view.h"

#include "base/date.h"
#include "base/text.h"
#include "logbook/caution.h"
#include "logbook/photo.h"
#include "logbook/removal_parse.h"

char *
job_state_words(const struct job *j)
{
	char day[16];

	if (j->closed != NONE)
		return g_strdup_printf("CLOSED %s", day_words(j->closed, day));
	if (j->paused != NONE)
		return g_strdup_printf("RESTS since %s", day_words(j->paused, day));
	return g_strdup("UNDER WAY");
}

/* What can be left, in the order in which it is said; how it is said at length, of one and of several, and in short. */
enum left { OFF, PROOF, STEP, TASK, TO_SET, TO_WRITE, LEFTS };
static const struct {
	const char *one, *many, *short_one, *short_many;
} left_words[LEFTS] = {
	[OFF] = { "off and not back", "off and not back", "off", "off" },
	[PROOF] = { "proof not seen", "proofs not seen", "proof", "proofs" },
	[STEP] = { "step to do", "steps to do", "step", "steps" },
	[TASK] = { "task open", "tasks open", "task", "tasks" },
	[TO_SET] = { "setting not compared", "settings not compared", "to set", "to set" },
	[TO_WRITE] = { "not written down", "not written down", "to write", "to write" },
};

static void
count_left(const struct job_sheet *s, int n[LEFTS])
{
	static const enum left of[] = { [LEFT_STEP] = STEP, [LEFT_PROOF] = PROOF, [LEFT_AIM] = TASK };

	n[OFF] = job_off_count(s);
	for (int i = 0; i < (int)s->removals->len; i++) {
		const struct removal *r = job_removal_at(s, i);

		if (r->kind == REMOVAL_SETTING && r->back == NONE)
			n[r->as_found ? TO_SET : TO_WRITE]++;
	}
	for (guint i = 0; i < s->open->len; i++) {
		enum job_left what = ((const struct job_open *)(const void *)s->open->data)[i].what;

		if (what != LEFT_REMOVAL)
			n[of[what]]++;
	}
}

/* The first of them at length. */
static char *
say_left(const int n[LEFTS], int at_length)
{
	GString *out = g_string_new(NULL);

	for (int i = 0; i < LEFTS; i++) {
		const char *one = i < at_length ? left_words[i].one : left_words[i].short_one;
		const char *many = i < at_length ? left_words[i].many : left_words[i].short_many;

		if (n[i])
			g_string_append_printf(out, "%s%d %s", out->len ? ", " : "", n[i], n[i] == 1 ? one : many);
	}
	return g_string_free(out, FALSE);
}

char *
job_left_words(const struct job_sheet *s, int columns)
{
	int n[LEFTS] = { 0 }, at_length = LEFTS;
	char *out;

	if (!s->open->len)
		return g_strdup(s->job.closed != NONE ? "Everything is back, seen and done, or told why not."
						      : "Nothing is left open: c closes it.");
	count_left(s, n);
	out = say_left(n, at_length);
	while (text_width(out) > columns && at_length-- > 0) {
		g_free(out);
		out = say_left(n, at_length);
	}
	return out;
}

static void
add_names(GString *out, const char *words, const GPtrArray *names)
{
	for (guint i = 0; i < names->len; i++)
		g_string_append_printf(out, "%s%s", i ? ", " : words, (const char *)names->pdata[i]);
}

char *
job_minutes_words(const struct job_sheet *s)
{
	return g_strdup_printf("%d min to open and close, each thing once; %d min hands on", (int)s->access_minutes,
			       (int)s->hand_minutes);
}

char *
job_story(const struct job_sheet *s)
{
	const struct step *next = job_next_step(s);
	g_autofree char *left = job_left_words(s, G_MAXINT), *state = job_state_words(&s->job);
	GString *out = g_string_new(NULL);
	char day[16];

	g_string_append_printf(out, "%s. %s, opened %s by %s.\n%s", s->job.title, state, day_words(s->job.opened, day),
			       s->job.who ? s->job.who : "somebody", left);
	if (s->job.closed == NONE && s->job.place)
		g_string_append_printf(out, "\nThings lie: %s", s->job.place);
	if (s->job.remark)
		g_string_append_printf(out, "\nNotes: %s", s->job.remark);
	if (s->job.closed == NONE && next)
		g_string_append_printf(out, "\nNext: step %d, %s", (int)next->no, next->text);
	for (guint i = 0; i < s->open->len; i++)
		g_string_append_printf(out, "%s%s", i ? "\n" : "\nStill open:\n",
				       ((const struct job_open *)(const void *)s->open->data)[i].words);
	add_names(out, "\nAfter the first run, due by themselves: ", s->rechecks);
	return g_string_free(out, FALSE);
}

char *
job_offer_words(const struct job_offer *o)
{
	g_autofree char *count = o->count == NONE ? g_strdup("") : g_strdup_printf("%d ", (int)o->count);

	return g_strdup_printf("%s%s%s%s", count, o->what, o->size ? " " : "", o->size ? o->size : "");
}

char *
job_line_words(const struct removal *r)
{
	g_autofree char *words = removal_words(r);

	return g_strdup_printf("%d. %s", (int)r->no, words);
}

/* ---- of a row ---- */

static char *
caution_story(const struct caution *c)
{
	return g_strdup_printf("%s\n%s\nFirst: %s.\n(%s, %s)", c->sentence, c->text, c->authority, c->standing,
			       c->source);
}

static char *
step_story(const struct step *p)
{
	static const char *const what[] = {
		"To carry, a tool", "To carry, a part", "To carry, used up", "Before starting", "Step", "Proof"
	};
	GString *out = g_string_new(NULL);
	char day[16];

	g_string_append_printf(out, "%s %d: %s%s", what[p->kind], (int)p->no, p->text,
			       p->on_condition == 1 ? " (only when found bad, or where it is so)" : "");
	if (p->done != NONE)
		g_string_append_printf(out, "\n%s %s%s%s.%s%s",
				       p->kind == STEP_PROOF  ? "Seen"
				       : p->kind < STEP_STATE ? "Carried"
							      : "Done",
				       day_words(p->done, day), p->who ? " by " : "", p->who ? p->who : "",
				       p->seen ? " " : "", p->seen ? p->seen : "");
	else if (p->seen)
		g_string_append_printf(out, "\nLeft undone: %s", p->seen);
	else if (p->kind == STEP_PROOF)
		g_string_append(
			out,
			"\nNot seen yet. Enter: seen, with what was seen; p leaves it, with a reason. Without its proofs the work "
			"does not count.");
	return g_string_free(out, FALSE);
}

static char *
aim_story(const struct job_data *d, const struct job_aim *a)
{
	GString *out = g_string_new(NULL);

	g_string_append_printf(out, "%s\n%s: %s%s%s", a->title, a->name, aim_state_words(a->state),
			       a->aim.reason ? ", " : "", a->aim.reason ? a->aim.reason : "");
	if (a->proofs)
		g_string_append_printf(out, "\n%d of %d proofs seen.", a->proved, a->proofs);
	if (a->state == AIM_OPEN || a->state == AIM_UNPROVED)
		g_string_append_printf(out, "\n%s",
				       a->aim.finding != NONE
					       ? "Enter: put right, and how it was left; p leaves it, with a reason."
					       : "Enter: done; p leaves it, with a reason.");
	for (int i = 0; i < (int)d->sheet->steps->len; i++) {
		const struct step *p = job_step_at(d->sheet, i);

		if (p->kind == STEP_PROOF && p->task != NONE && p->task == a->aim.task)
			g_string_append_printf(out, "\n%s %d: %s%s%s", p->done == NONE ? "NOT SEEN" : "Seen",
					       (int)p->no, p->text, p->seen ? ": " : "", p->seen ? p->seen : "");
	}
	return g_string_free(out, FALSE);
}

/* What Enter does. */
static const char *
what_now(const struct removal *r, enum job_face face)
{
	if (face != FACE_REFIT)
		return r->kind == REMOVAL_SETTING && !r->as_found
			     ? "Enter: write down how it stands, before it is disturbed."
			     : "Enter corrects it, x takes it out.";
	if (r->kind == REMOVAL_SETTING)
		return r->as_found ? "To close it: how it is left, and why where that differs."
				   : "How it was found is not written down: e does, or say by what it was set.";
	if (r->state == REMOVAL_MISSING)
		return "It was missing as found: what went in, and why.";
	if (r->state == REMOVAL_EXTRA)
		return "It is left over: where does it belong?";
	if (r->kind == REMOVAL_RETAINER || r->kind == REMOVAL_PLUG)
		return r->count == NONE ? "It is counted out and in, and nobody has said how many came off: e, then 2x."
					: "To close it: count how many are in.";
	return r->as_found ? "To close it: how it is left." : "Enter: it is back.";
}

static void
add_files(GString *out, struct book *b, gint64 removal)
{
	g_autoptr(GArray) files = book_removal_files(b, removal, NULL);

	for (guint i = 0; files && i < files->len; i++) {
		const struct photo *p = &((const struct photo *)(const void *)files->data)[i];

		g_string_append_printf(out, "\nFile: %s", p->path);
	}
}

static char *
removal_story(const struct job_data *d, const struct removal *r)
{
	g_autofree char *words = removal_understood(r);
	GString *out = g_string_new(NULL);
	char day[16];

	g_string_append_printf(out, "Line %d: %s.", (int)r->no, words);
	if (r->kind == REMOVAL_SETTING)
		g_string_append_printf(out, "\nFound: %s", r->as_found ? r->as_found : "not written down");
	if (r->back != NONE) {
		g_string_append_printf(out, "\nLeft:  %s\nBack %s", r->as_left ? r->as_left : "as it was",
				       day_words(r->back, day));
		if (r->back_count != NONE && r->count != NONE)
			g_string_append_printf(out, "; %d off, %d in", (int)r->count, (int)r->back_count);
		else if (r->back_count != NONE)
			g_string_append_printf(out, "; %d in", (int)r->back_count);
		g_string_append_printf(out, "%s%s.", r->who ? ", " : "", r->who ? r->who : "");
	} else {
		g_string_append_printf(out, "\n%s", what_now(r, d->face));
	}
	if (r->why)
		g_string_append_printf(out, "\nWhy: %s", r->why);
	if (r->remark)
		g_string_append_printf(out, "\nRemark: %s", r->remark);
	add_files(out, d->book, r->id);
	g_string_append_printf(out, "\nWritten down %s%s%s.", day_words(r->off, day),
			       r->back == NONE && r->who ? " by " : "", r->back == NONE && r->who ? r->who : "");
	return g_string_free(out, FALSE);
}

static char *
offer_story(const struct job_offer *o)
{
	g_autofree char *words = job_offer_words(o);

	if (o->taken)
		return g_strdup_printf(
			"%s\nLine %d was taken for this. If that is something else, Enter writes this down as well.",
			words, (int)o->line);
	return g_strdup_printf(
		"%s%s%s%s\nUsual, not promised. Enter writes it down as it stands here; a, then Tab, with what differs: "
		"\"5 tray 2\".",
		words, o->metric ? " (or " : "", o->metric ? o->metric : "", o->metric ? ")" : "");
}

char *
job_row_story(const struct job_data *d, const struct job_row *r)
{
	switch (r->kind) {
	case ROW_NOTE:
		return g_strdup_printf("Notes: %s\nn changes them.", d->sheet->job.remark);
	case ROW_TIME:
		return job_minutes_words(d->sheet);
	case ROW_STORES:
		return g_strdup_printf("%s\nThis is what the stores have of what its open tasks need.",
				       (const char *)d->stores->pdata[r->at]);
	case ROW_CAUTION:
		return caution_story(d->cautions->pdata[r->at]);
	case ROW_STEP:
		return step_story(job_step_at(d->sheet, r->at));
	case ROW_WHILE:
		return g_strdup_printf(
			"%s\nIt is due behind the same opening. Enter takes it into the job; else it stays due.",
			(const char *)d->sheet->while_open->pdata[r->at]);
	case ROW_AIM:
		return aim_story(d, job_aim_at(d->sheet, r->at));
	case ROW_REMOVAL:
		return removal_story(d, job_removal_at(d->sheet, r->at));
	case ROW_OFFER:
		return offer_story(job_offer_at(d->sheet, r->at));
	}
	return g_strdup("");
}
