/* Ticking the steps of a job, and closing it. */
#include "cli/job_text.h"

#include "base/err.h"
#include "base/text.h"

#include <string.h>

static const struct step *
step_at(const struct job_sheet *s, guint i)
{
	return &((const struct step *)(const void *)s->steps->data)[i];
}

gboolean
job_say_next(const struct cli *c, struct book *b, const struct job *job, GError **err)
{
	struct job_sheet *s = book_job_sheet(b, job, err);
	const struct step *next = s ? job_next_step(s) : NULL;
	gboolean ok = s != NULL;

	if (next)
		cli_say(c, 2, "next: step %d, %s", (int)next->no, next->text);
	job_sheet_free(s);
	return ok;
}

/* Of a range those that are open, always done, and no proof: what depends on what is found is said by its own number. */
static gboolean
take_range(const struct job_sheet *s, gint64 from, gint64 to, GArray *numbers, GError **err)
{
	guint before = numbers->len;

	for (guint i = 0; i < s->open->len; i++) {
		const struct job_open *o = &((const struct job_open *)(const void *)s->open->data)[i];

		if (o->what == LEFT_STEP && o->no >= from && o->no <= to)
			g_array_append_val(numbers, o->no);
	}
	return numbers->len > before
	    || err_set(err, ERR_NOT_FOUND, "no step from %d to %d is open; a proof is seen, and ticked, by its own number",
		       (int)from, (int)to);
}

/* "76" or "39-76" */
static gboolean
take_numbers(const struct job_sheet *s, const char *text, GArray *numbers, GError **err)
{
	g_auto(GStrv) end = g_strsplit(text, "-", 2);
	g_autofree char *shown = text_quoted(text);
	guint64 from, to;
	gint64 no;

	if (!end[0] || !g_ascii_string_to_unsigned(end[0], 10, 1, 99999, &from, NULL)
	    || (end[1] && !g_ascii_string_to_unsigned(end[1], 10, from, 99999, &to, NULL)))
		return err_set(err, ERR_INPUT, "%s is no step: a number, or the first and the last of several, 39-76", shown);
	no = (gint64)from;
	if (end[1])
		return take_range(s, no, (gint64)to, numbers, err);
	g_array_append_val(numbers, no);
	return TRUE;
}

static GArray *
numbers_of(struct book *b, const struct job *job, const struct args *a, const char *option, GError **err)
{
	struct job_sheet *s = book_job_sheet(b, job, err);
	GArray *numbers = g_array_new(FALSE, FALSE, sizeof(gint64));
	const char *v;
	gboolean ok = s != NULL;

	for (int k = 0; ok && (v = args_nth(a, option, k)); k++)
		ok = take_numbers(s, v, numbers, err);
	job_sheet_free(s);
	if (!ok)
		g_clear_pointer(&numbers, g_array_unref);
	return numbers;
}

/* "step 76", "4 steps" */
static void
say_ticked(const struct cli *c, const GArray *numbers, const char *words)
{
	if (numbers->len == 1)
		cli_say(c, 2, "step %d %s", (int)g_array_index(numbers, gint64, 0), words);
	else
		cli_say(c, 2, "%u steps: each %s", numbers->len, words);
}

gboolean
job_step(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	g_autoptr(GArray) numbers = numbers_of(b, job, a, "step", err);

	if (!numbers
	    || !book_job_step_each(b, job, (const gint64 *)(const void *)numbers->data, numbers->len, args_value(a, "seen"), err))
		return FALSE;
	say_ticked(c, numbers, "is done");
	return job_say_next(c, b, job, err);
}

gboolean
job_skip_step(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	g_autoptr(GArray) numbers = numbers_of(b, job, a, "skip-step", err);
	g_autofree char *words = g_strdup_printf("is left undone: %s", args_value(a, "reason"));

	if (!numbers
	    || !book_job_skip_each(b, job, (const gint64 *)(const void *)numbers->data, numbers->len, args_value(a, "reason"), err))
		return FALSE;
	say_ticked(c, numbers, words);
	return job_say_next(c, b, job, err);
}

/* ---- close ---- */

/* Whether nothing but steps is left, and at least one. */
static gboolean
only_steps(const struct job_sheet *s)
{
	for (guint i = 0; i < s->open->len; i++)
		if (((const struct job_open *)(const void *)s->open->data)[i].what != LEFT_STEP)
			return FALSE;
	return s->open->len > 0;
}

static const struct step *
step_of(const struct job_sheet *s, gint64 no)
{
	for (guint i = 0; i < s->steps->len; i++)
		if (step_at(s, i)->no == no)
			return step_at(s, i);
	return NULL;
}

/* Each open step is asked for; what is answered is recorded at once, so that it can be broken off. */
static gboolean
ask_steps(struct cli *c, struct book *b, const struct job *job, const struct job_sheet *s, GError **err)
{
	g_autoptr(GArray) rest = g_array_new(FALSE, FALSE, sizeof(gint64));
	gboolean ok = TRUE, all = FALSE;

	cli_say(c, 2, "%u step%s not ticked. Enter: it was done; all: so were all the rest; else why it was left undone.",
		s->open->len, s->open->len == 1 ? " is" : "s are");
	for (guint i = 0; ok && i < s->open->len; i++) {
		gint64 no = ((const struct job_open *)(const void *)s->open->data)[i].no;
		char answer[200] = "";

		if (!all) {
			cli_say(c, 2, "step %d, %s", (int)no, step_of(s, no)->text);
			if (!cli_ask("done, all, or why not", "done", answer, sizeof answer))
				return err_set(err, ERR_CONFLICT, "%s stays open: %u steps are not ticked", job->name,
					       s->open->len - i);
			all = !strcmp(answer, "all");
		}
		if (all)
			g_array_append_val(rest, no);
		else if (!strcmp(answer, "done"))
			ok = book_job_step(b, job, no, NULL, err);
		else
			ok = book_job_skip_step(b, job, no, answer, err);
	}
	return ok && (!rest->len || book_job_step_each(b, job, (const gint64 *)(const void *)rest->data, rest->len, NULL, err));
}

gboolean
job_close(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	struct job_sheet *s = book_job_sheet(b, job, err);
	gboolean ok = s && (!c->ask || job->paused != NONE || job->closed != NONE || !only_steps(s) || ask_steps(c, b, job, s, err))
		   && book_job_close(b, job, err);

	(void)a;
	if (ok)
		cli_say(c, 2, "%s is closed: everything is back, counted and proved, or told why not.", job->name);
	for (guint i = 0; ok && i < s->rechecks->len; i++)
		cli_say(c, 4, "  after the first run: %s", (const char *)s->rechecks->pdata[i]);
	job_sheet_free(s);
	return ok;
}
