/* What the options of a job record. */
#include "cli/job_text.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/caution.h"
#include "logbook/heed.h"
#include "logbook/removal.h"
#include "logbook/removal_parse.h"

#include <stdio.h>

/* What can hurt at it, once a day where somebody says that it was read. */
static gboolean
say_cautions(const struct cli *c, struct book *b, const struct job *job, const char *words, GError **err)
{
	g_autofree char *unread = book_unheeded(b, job->boat, job->name, words, err),
			*caution = unread ? caution_words(b, unread) : NULL;
	char answer[8];

	if (caution)
		cli_say(c, 2, "%s", caution);
	if (!caution || !c->ask || !cli_ask("Enter: they were read", "", answer, sizeof answer))
		return unread != NULL;
	return book_heed(b, job->boat, job->name, unread, err);
}

/* Where the job stands, and what can hurt at it. */
static gboolean
say_begin(const struct cli *c, struct book *b, const struct job *job, GError **err)
{
	struct job_sheet *s = book_job_sheet(b, job, err);
	gboolean ok = s != NULL;

	if (s) {
		job_say_state(c, s);
		ok = say_cautions(c, b, job, s->cautions, err);
	}
	job_sheet_free(s);
	return ok;
}

gboolean
job_start(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	g_auto(GStrv) templates = args_all(a, "template"), tasks = args_all(a, "task"), findings = args_all(a, "finding");
	struct job_form f = { .templates = (const char *const *)templates,
			      .tasks = (const char *const *)tasks,
			      .findings = (const char *const *)findings,
			      .engine = args_value(a, "engine") };
	g_autofree char *title = args_join(a, 1);
	gboolean ok;

	record_init(RECORD_JOB, &f.what);
	f.what.boat = boat->id;
	f.what.name = g_strdup(args_value(a, "name"));
	f.what.remark = g_strdup(args_value(a, "remark"));
	f.what.who = g_strdup(args_value(a, "by"));
	if (*title)
		f.what.title = g_steal_pointer(&title);
	ok = opt_date(c, a, "date", &f.what.opened, err) && book_job_start(b, &f, err) && say_begin(c, b, &f.what, err);
	if (ok)
		cli_say(c, 2, "What to carry: splitpin job %s --carry", f.what.name);
	record_clear(RECORD_JOB, &f.what);
	return ok;
}

static void
say_written(const struct cli *c, const struct job *job, const struct removal_form *f)
{
	g_autofree char *words = removal_understood(&f->what), *key = NULL;

	cli_say(c, 4, "line %d: %s", (int)f->what.no, words);
	if (f->what.count == NONE && (f->what.kind == REMOVAL_RETAINER || f->what.kind == REMOVAL_PLUG))
		cli_say(c, 4, "  how many? It is counted out and in: splitpin job %s --correct %d --as \"2x\"", job->name,
			(int)f->what.no);
	if (f->what.kind == REMOVAL_RETAINER && f->what.state == REMOVAL_REUSE)
		cli_say(c, 4, "  retainers are renewed, not used again");
	if (f->finding != NONE) {
		key = book_key_text(f->finding);
		cli_say(c, 4, "  it holds the launch until it is put right: splitpin job %s --done %s --seen \"as left\"",
			job->name, key);
	}
	if (f->drive_off)
		cli_say(c, 4, "  the drive is off: what that disturbs is due now; splitpin due lists it");
}

static void
read_form(const struct args *a, struct removal_form *f, char ***files)
{
	*files = args_all(a, "photo");
	f->fitting = args_value(a, "fitting");
	f->remark = args_value(a, "remark");
	f->who = args_value(a, "by");
	f->files = (const char *const *)*files;
}

static gboolean
write_line(struct cli *c, struct book *b, struct job *job, const struct args *a, struct removal_form *f, GError **err)
{
	g_auto(GStrv) files = NULL;
	gboolean ok;

	read_form(a, f, &files);
	ok = book_job_off(b, job, f, err);
	if (ok)
		say_written(c, job, f);
	removal_form_clear(f);
	return ok;
}

static gboolean
off(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	return write_line(c, b, job, a, &(struct removal_form){ .line = args_value(a, "off") }, err);
}

static gboolean
again(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	return write_line(c, b, job, a, &(struct removal_form){ .line = args_value(a, "again"), .again = TRUE }, err);
}

static gboolean
left_over(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	return write_line(c, b, job, a, &(struct removal_form){ .line = args_value(a, "left-over"), .left_over = TRUE }, err);
}

static gboolean
take(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	struct removal_form f = { .line = args_value(a, "as") };
	g_auto(GStrv) files = NULL;
	gint64 n = NONE;
	gboolean ok;

	if (!opt_count(a, "take", &n, err))
		return FALSE;
	read_form(a, &f, &files);
	ok = book_job_take(b, job, (int)CLAMP(n, 0, 99999), &f, err);
	if (ok)
		say_written(c, job, &f);
	removal_form_clear(&f);
	return ok;
}

static gboolean
correct(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	struct removal_form f = { .line = args_value(a, "as"), .finding = NONE };
	g_auto(GStrv) files = NULL;
	gboolean ok;

	if (!f.line && !args_flag(a, "photo") && !args_flag(a, "remark"))
		return err_set(err, ERR_USE, "--correct wants what is right: --as \"2x tray 3\", --photo or --remark");
	read_form(a, &f, &files);
	ok = book_find_removal(b, job, args_value(a, "correct"), &f.what, err) && book_job_correct(b, job, &f, err);
	if (ok)
		say_written(c, job, &f);
	removal_form_clear(&f);
	return ok;
}

static gboolean
drop(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	const char *v;
	gboolean ok = TRUE;

	for (int k = 0; ok && (v = args_nth(a, "drop", k)); k++) {
		struct removal r;

		ok = book_find_removal(b, job, v, &r, err) && book_job_drop(b, job, &r, err);
		if (ok)
			cli_say(c, 4, "line %d taken out: %s; splitpin undo brings it back", (int)r.no, r.what);
		record_clear(RECORD_REMOVAL, &r);
	}
	return ok;
}

static gboolean
back(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	struct removal_back k = { .count = NONE,
				  .left = args_value(a, "left"),
				  .why = args_value(a, "why"),
				  .who = args_value(a, "by"),
				  .renewed = args_flag(a, "renewed") };
	struct removal r;
	g_autofree char *words = NULL;
	gboolean ok;

	record_init(RECORD_REMOVAL, &r);
	ok = opt_count(a, "count", &k.count, err) && book_find_removal(b, job, args_value(a, "back"), &r, err)
	  && book_job_back(b, job, &r, &k, err);
	if (ok) {
		words = removal_words(&r);
		cli_say(c, 4, "line %d back: %s%s%s", (int)r.no, words, r.as_left ? ", left " : "", r.as_left ? r.as_left : "");
		if (r.back_count != NONE)
			cli_say(c, 4, "  counted in: %d%s%s", (int)r.back_count, r.why ? "; " : "", r.why ? r.why : "");
		if (k.note)
			cli_say(c, 4, "  %s", k.note);
	}
	g_free(k.note);
	record_clear(RECORD_REMOVAL, &r);
	return ok;
}

/* What to do next, after each step and thing done. */
static gboolean
say_next(const struct cli *c, struct book *b, const struct job *job, GError **err)
{
	struct job_sheet *s = book_job_sheet(b, job, err);
	const struct step *next = s ? job_next_step(s) : NULL;
	gboolean ok = s != NULL;

	if (next)
		cli_say(c, 2, "next: step %d, %s", (int)next->no, next->text);
	job_sheet_free(s);
	return ok;
}

static gboolean
step(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	gint64 no = NONE;

	if (!opt_count(a, "step", &no, err) || !book_job_step(b, job, no, args_value(a, "seen"), err))
		return FALSE;
	cli_say(c, 2, "step %d is done", (int)no);
	return say_next(c, b, job, err);
}

static gboolean
skip_step(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	gint64 no = NONE;

	if (!opt_count(a, "skip-step", &no, err) || !book_job_skip_step(b, job, no, args_value(a, "reason"), err))
		return FALSE;
	cli_say(c, 2, "step %d is left undone: %s", (int)no, args_value(a, "reason"));
	return say_next(c, b, job, err);
}

static gboolean
do_aim(struct cli *c, struct book *b, const struct job *job, const char *aim, const struct args *a, GError **err)
{
	struct service_form f = { .dated = TRUE, .sure = args_flag(a, "yes"), .engine = args_value(a, "engine") };
	struct service_said said = { .hours = NONE };
	gboolean ok;

	record_init(RECORD_SERVICE, &f.what);
	record_init(RECORD_PART, &f.part);
	f.what.seen = g_strdup(args_value(a, "seen"));
	f.what.who = g_strdup(args_value(a, "by"));
	f.part.number = g_strdup(args_value(a, "number"));
	ok = opt_date(c, a, "date", &f.what.date, err) && opt_date(c, a, "made", &f.what.made, err)
	  && opt_hours(a, "meter", &f.what.reading, err) && opt_word(a, "outcome", &words_outcome, &f.what.outcome, err)
	  && book_job_done(b, job, aim, &f, &said, err);
	if (ok) {
		cli_say(c, 2, "%s: %s", aim, f.what.task == NONE ? "put right" : word_of(&words_outcome, f.what.outcome));
		if (f.what.task != NONE && !said.counts)
			cli_say(c, 2, "  it stays due: %s", said.why_not);
		if (said.repeated)
			cli_say(c, 2, "  %s", said.repeated);
	}
	service_said_clear(&said);
	record_clear(RECORD_SERVICE, &f.what);
	record_clear(RECORD_PART, &f.part);
	return ok;
}

static gboolean
done(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	const char *v;
	gboolean ok = TRUE;

	for (int k = 0; ok && (v = args_nth(a, "done", k)); k++)
		ok = do_aim(c, b, job, v, a, err);
	return ok && say_next(c, b, job, err);
}

static gboolean
undone(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	const char *v;
	gboolean ok = TRUE;

	for (int k = 0; ok && (v = args_nth(a, "undone", k)); k++) {
		ok = book_job_undone(b, job, v, args_value(a, "reason"), err);
		if (ok)
			cli_say(c, 2, "%s is left undone: %s. It stays as due as it was.", v, args_value(a, "reason"));
	}
	return ok;
}

static gboolean
add(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	g_auto(GStrv) templates = args_all(a, "add-template"), tasks = args_all(a, "add-task"),
		      findings = args_all(a, "add-finding");
	const struct job_form f = { .templates = (const char *const *)templates,
				    .tasks = (const char *const *)tasks,
				    .findings = (const char *const *)findings };

	return book_job_add(b, job, &f, err) && say_begin(c, b, job, err);
}

static gboolean
pause_job(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	if (!book_job_pause(b, job, args_value(a, "pause"), err))
		return FALSE;
	cli_say(c, 2, "%s rests; things lie: %s. splitpin job %s --resume goes on with it.", job->name, job->place, job->name);
	return TRUE;
}

static gboolean
resume(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	(void)a;
	return book_job_resume(b, job, err) && say_begin(c, b, job, err);
}

static gboolean
close_job(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	struct job_sheet *s;

	(void)a;
	if (!book_job_close(b, job, err))
		return FALSE;
	cli_say(c, 2, "%s is closed: everything is back, counted and proved, or told why not.", job->name);
	s = book_job_sheet(b, job, err);
	for (guint i = 0; s && i < s->rechecks->len; i++)
		cli_say(c, 4, "  after the first run: %s", (const char *)s->rechecks->pdata[i]);
	job_sheet_free(s);
	return s != NULL;
}

const struct job_deed job_records[] = {
	{ "off", BOOK_WRITE, off },         { "again", BOOK_WRITE, again },      { "left-over", BOOK_WRITE, left_over },
	{ "take", BOOK_WRITE, take },       { "correct", BOOK_WRITE, correct },  { "drop", BOOK_WRITE, drop },
	{ "back", BOOK_WRITE, back },       { "step", BOOK_WRITE, step },        { "skip-step", BOOK_WRITE, skip_step },
	{ "done", BOOK_WRITE, done },       { "undone", BOOK_WRITE, undone },    { "add-task", BOOK_WRITE, add },
	{ "add-finding", BOOK_WRITE, add }, { "add-template", BOOK_WRITE, add }, { "pause", BOOK_WRITE, pause_job },
	{ "resume", BOOK_WRITE, resume },   { "close", BOOK_WRITE, close_job },  { NULL, BOOK_READ, NULL },
};
