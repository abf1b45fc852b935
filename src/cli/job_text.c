#include "cli/job_text.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/job_template.h"
#include "logbook/removal_parse.h"

#include <stdio.h>
#include <string.h>

void
job_say_page(const struct cli *c, const char *text)
{
	g_auto(GStrv) line = g_strsplit(text, "\n", -1);

	for (int i = 0; line[i]; i++)
		if (*line[i])
			cli_say(c, (int)strspn(line[i], " ") + 4, "%s", line[i]);
		else if (line[i + 1])
			putchar('\n');
}

static void
say_job(const struct cli *c, const struct job *j, const struct job_sheet *s)
{
	char opened[16], other[16];
	int off = job_off_count(s);

	cli_say(c, 4, "%s: %s", j->name, j->title);
	if (j->closed != NONE)
		cli_say(c, 4, "  opened %s, closed %s", day_words(j->opened, opened), day_words(j->closed, other));
	else
		cli_say(c, 4, "  opened %s, %s%s; %d thing%s off, %u to be seen to", day_words(j->opened, opened),
			j->paused == NONE ? "under way" : "rests since ", j->paused == NONE ? "" : day_words(j->paused, other),
			off, off == 1 ? "" : "s", s->open->len);
	if (j->closed == NONE && j->place)
		cli_say(c, 4, "  things lie: %s", j->place);
}

gboolean
job_say_jobs(const struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	g_autoptr(GArray) jobs = book_jobs(b, boat->id, args_flag(a, "all"), err);

	if (!jobs)
		return FALSE;
	if (args_flag(a, "csv") || args_flag(a, "json")) {
		g_autofree char *text = args_flag(a, "csv") ? jobs_csv(b, jobs, err) : jobs_json(b, jobs, err);

		if (text)
			cli_data(c, text);
		return text != NULL;
	}
	for (guint i = 0; args_flag(a, "names") && i < jobs->len; i++)
		puts(((const struct job *)(const void *)jobs->data)[i].name);
	for (guint i = 0; !args_flag(a, "names") && i < jobs->len; i++) {
		const struct job *j = &((const struct job *)(const void *)jobs->data)[i];
		struct job_sheet *s = book_job_sheet(b, j, err);

		if (!s)
			return FALSE;
		say_job(c, j, s);
		job_sheet_free(s);
	}
	if (!jobs->len && !args_flag(a, "names"))
		cli_say(c, 2, "No job is open. splitpin job templates lists what there is; splitpin job start opens one.");
	return TRUE;
}

gboolean
job_say_templates(const struct cli *c, struct book *b, const struct boat *boat, gboolean names, GError **err)
{
	struct job_templates *t = book_job_templates(b, err);
	g_autoptr(GPtrArray) fit = t ? book_job_templates_for(b, t, boat, err) : NULL;

	for (guint i = 0; fit && i < fit->len; i++) {
		const struct job_template *one = fit->pdata[i];

		if (names) {
			puts(one->name);
			continue;
		}
		cli_say(c, 4, "%s: %s", one->name, one->title);
		if (one->minutes != NONE)
			cli_say(c, 4, "  about %d min, %s%s", (int)one->minutes,
				one->crew == 1 ? "one alone can do it" : "two people or more", one->remark ? "" : ".");
		if (one->remark)
			cli_say(c, 4, "  %s. (%s)", one->remark, one->source);
	}
	if (fit && !fit->len)
		cli_say(c, 2, "There is no template for a boat of this kind.");
	job_templates_free(t);
	return fit != NULL;
}

static void
say_aims(const struct cli *c, const struct job_sheet *s)
{
	for (guint i = 0; i < s->aims->len; i++) {
		const struct job_aim *a = &((const struct job_aim *)(const void *)s->aims->data)[i];

		if (!i)
			cli_say(c, 2, "What it is for:");
		cli_say(c, 4, "  %s, %s: %s%s%s", a->name, a->title, aim_state_words(a->state), a->aim.reason ? ", " : "",
			a->aim.reason ? a->aim.reason : "");
	}
}

/* Everything that is off; of what is to be written down or proved, how much. */
static void
say_left(const struct cli *c, const struct job_sheet *s)
{
	int n[LEFT_AIM + 1] = { 0 }, written = 0;

	for (guint i = 0; i < s->open->len; i++)
		n[((const struct job_open *)(const void *)s->open->data)[i].what]++;
	for (guint i = 0; i < s->removals->len; i++) {
		const struct removal *r = &((const struct removal *)(const void *)s->removals->data)[i];

		written += r->back == NONE && r->kind == REMOVAL_SETTING && !r->as_found;
	}
	for (guint i = 0, any = 0; i < s->removals->len; i++) {
		const struct removal *r = &((const struct removal *)(const void *)s->removals->data)[i];
		g_autofree char *words = removal_understood(r);

		if (r->back != NONE || r->kind == REMOVAL_SETTING)
			continue;
		if (!any++)
			cli_say(c, 2, "Off, and not back:");
		cli_say(c, 4, "  line %d, %s", (int)r->no, words);
	}
	if (written)
		cli_say(c, 2, "How it stood is still to be written down of %d thing%s: --list shows them.", written,
			written == 1 ? "" : "s");
	if (!s->open->len)
		cli_say(c, 2, "Nothing is left: it can be closed.");
	else
		cli_say(c, 2, "Left before it can close: %d line%s, %d step%s, %d proof%s, %d task%s.", n[LEFT_REMOVAL],
			n[LEFT_REMOVAL] == 1 ? "" : "s", n[LEFT_STEP], n[LEFT_STEP] == 1 ? "" : "s", n[LEFT_PROOF],
			n[LEFT_PROOF] == 1 ? "" : "s", n[LEFT_AIM], n[LEFT_AIM] == 1 ? "" : "s");
}

static void
say_rechecks(const struct cli *c, const struct job_sheet *s)
{
	g_autoptr(GString) names = g_string_new(NULL);

	for (guint i = 0; i < s->rechecks->len; i++)
		g_string_append_printf(names, "%s%s", i ? ", " : "", (const char *)s->rechecks->pdata[i]);
	if (names->len)
		cli_say(c, 2, "After the first run, due by themselves: %s.", names->str);
}

void
job_say_state(const struct cli *c, const struct job_sheet *s)
{
	const struct step *next = job_next_step(s);

	say_job(c, &s->job, s);
	if (s->job.closed == NONE && next)
		cli_say(c, 2, "Next: step %d, %s", (int)next->no, next->text);
	say_aims(c, s);
	if (s->job.closed == NONE)
		say_left(c, s);
	say_rechecks(c, s);
}

void
job_say_numbers(const struct job_sheet *s, gboolean lines)
{
	for (guint i = 0; i < s->open->len; i++) {
		const struct job_open *o = &((const struct job_open *)(const void *)s->open->data)[i];

		if (o->no != NONE && (o->what == LEFT_REMOVAL) == (lines != FALSE))
			printf("%d\n", (int)o->no);
	}
}

static const struct removal *
line_of(const struct job_sheet *s, gint64 no)
{
	for (guint i = 0; no != NONE && i < s->removals->len; i++)
		if (((const struct removal *)(const void *)s->removals->data)[i].no == no)
			return &((const struct removal *)(const void *)s->removals->data)[i];
	return NULL;
}

/* By which line it is taken, where that has words or a count of its own. */
static void
say_offer(const struct cli *c, const struct job_sheet *s, const struct job_offer *o)
{
	const struct removal *r = line_of(s, o->line);
	g_autofree char *count = o->count == NONE || o->count == 1 ? g_strdup("") : g_strdup_printf("%d x ", (int)o->count);
	g_autofree char *words = r ? removal_words(r) : NULL;
	gboolean told = r && (!o->sure || (o->count != NONE && r->count != NONE && o->count != r->count));

	cli_say(c, 8, "%4d [%c] %s%s%s%s", o->n, o->taken ? 'x' : ' ', count, o->what, o->size ? ", " : "", o->size ? o->size : "");
	if (told)
		cli_say(c, 11, "         line %d: %s", (int)o->line, words);
}

void
job_say_offers(const struct cli *c, const struct job_sheet *s)
{
	for (guint i = 0; i < s->offers->len; i++)
		say_offer(c, s, &((const struct job_offer *)(const void *)s->offers->data)[i]);
	if (!s->offers->len)
		cli_say(c, 2, "No template of this job says what comes off: --off writes it down.");
	else
		cli_say(c, 2,
			"Usual, not promised. What came off: splitpin job %s --take N, with --as \"5 tray 2\" where it differs.",
			s->job.name);
}

void
job_say_taken(const struct cli *c, const struct job_sheet *s, const struct removal *r)
{
	for (guint i = 0; i < s->offers->len; i++) {
		const struct job_offer *o = &((const struct job_offer *)(const void *)s->offers->data)[i];

		if (o->line != r->no)
			continue;
		if (!o->sure)
			cli_say(c, 4, "  taken for what is offered as %d: %s. If it is something else, that one can still be taken",
				o->n, o->what);
		if (o->count != NONE && r->count != NONE && o->count != r->count)
			cli_say(c, 4, "  usual are %d, and here are %d", (int)o->count, (int)r->count);
	}
}
