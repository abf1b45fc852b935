/* What the options of a job record. */
#include "cli/job_text.h"
#include "cli/stores_text.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/caution.h"
#include "logbook/heed.h"
#include "logbook/removal.h"
#include "logbook/removal_parse.h"

#include <stdio.h>
#include <string.h>

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

/* Two jobs behind one opening are better one: at a terminal that is asked, *joined; else it is told. */
static gboolean
join(struct cli *c, struct book *b, const struct boat *boat, const struct job_form *f, gboolean *joined, GError **err)
{
	g_autofree char *names = NULL, *what = NULL;
	char answer[8] = "no";
	struct job other;
	gboolean ok;

	*joined = FALSE;
	if (!book_job_beside(b, f, &names, &what, err))
		return FALSE;
	if (!names)
		return TRUE;
	cli_say(c, 2, "Already off or open, or to be: %s, in the job %s. In one job that counts once.", what, names);
	if (!c->ask || strchr(names, ','))
		cli_say(c, 2,
			"This is a job of its own. To join them: splitpin undo, then splitpin job %.*s --add-template NAME, or "
			"--add-task.",
			(int)strcspn(names, ","), names);
	else if (!cli_ask("Join them", "yes", answer, sizeof answer))
		return err_set(err, ERR_CONFLICT, "broken off; no job was opened");
	if (g_ascii_tolower(*answer) != 'y')
		return TRUE;
	*joined = TRUE;
	ok = book_find_job(b, boat->id, names, &other, err) && book_job_add(b, &other, f, err) && say_begin(c, b, &other, err);
	record_clear(RECORD_JOB, &other);
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
	gboolean ok, joined = FALSE;

	record_init(RECORD_JOB, &f.what);
	f.what.boat = boat->id;
	f.what.name = g_strdup(args_value(a, "name"));
	f.what.remark = g_strdup(args_value(a, "remark"));
	f.what.who = g_strdup(args_value(a, "by"));
	if (*title)
		f.what.title = g_steal_pointer(&title);
	ok = opt_date(c, a, "date", &f.what.opened, err) && join(c, b, boat, &f, &joined, err)
	  && (joined || (book_job_start(b, &f, err) && say_begin(c, b, &f.what, err)));
	if (ok && !joined)
		cli_say(c, 2, "What to carry: splitpin job %s --carry", f.what.name);
	record_clear(RECORD_JOB, &f.what);
	return ok;
}

/* It is written, whatever becomes of telling more about it. */
static void
say_taken(const struct cli *c, struct book *b, const struct job *job, const struct removal *r)
{
	struct job_sheet *s = book_job_sheet(b, job, NULL);

	if (s)
		job_say_taken(c, s, r);
	job_sheet_free(s);
}

/* What is no retainer by its spelling is not counted, and can stay behind. */
static void
say_doubt(const struct cli *c, const struct job *job, const struct removal *r)
{
	g_autofree char *word = NULL;
	const char *meant;

	if (removal_doubt(r, &word, &meant))
		cli_say(c, 4,
			"  %s: is %s meant? Like this it is only a part of the name. splitpin job %s --correct %d --as "
			"\"...\"",
			word, meant, job->name, (int)r->no);
}

static void
say_written(const struct cli *c, struct book *b, const struct job *job, const struct removal_form *f)
{
	g_autofree char *words = removal_understood(&f->what), *key = NULL;

	cli_say(c, 4, "line %d: %s", (int)f->what.no, words);
	say_taken(c, b, job, &f->what);
	say_doubt(c, job, &f->what);
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
		cli_say(c, 4, "  the %s%sdrive is off: what that disturbs is due now; splitpin due lists it",
			f->side ? f->side : "", f->side ? " " : "");
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
		say_written(c, b, job, f);
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
		say_written(c, b, job, &f);
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
		say_written(c, b, job, &f);
	removal_form_clear(&f);
	return ok;
}

static void
clear_removal(gpointer removal)
{
	record_clear(RECORD_REMOVAL, removal);
}

static gboolean
drop(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	g_autoptr(GArray) lines = g_array_new(FALSE, FALSE, sizeof(struct removal));
	const char *v;
	gboolean ok = TRUE;

	g_array_set_clear_func(lines, clear_removal);
	for (int k = 0; ok && (v = args_nth(a, "drop", k)); k++) {
		struct removal r;

		ok = book_find_removal(b, job, v, &r, err);
		g_array_append_val(lines, r);
	}
	ok = ok && book_job_drop_each(b, job, lines, err);
	for (guint i = 0; ok && i < lines->len; i++) {
		const struct removal *r = &((const struct removal *)(const void *)lines->data)[i];

		cli_say(c, 4, "line %d taken out: %s", (int)r->no, r->what);
	}
	if (ok)
		cli_say(c, 4, lines->len == 1 ? "splitpin undo brings it back" : "splitpin undo brings them back");
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
		if (k.finding != NONE)
			cli_say(c, 4, "  what did not go back is missing: a finding, which holds the launch until it is put right");
		if (k.note)
			cli_say(c, 4, "  %s", k.note);
	}
	g_free(k.note);
	record_clear(RECORD_REMOVAL, &r);
	return ok;
}

static gboolean
read_service(struct cli *c, const struct args *a, struct service_form *f, GError **err)
{
	*f = (struct service_form){ .dated = TRUE, .sure = args_flag(a, "yes"), .engine = args_value(a, "engine") };
	record_init(RECORD_SERVICE, &f->what);
	record_init(RECORD_PART, &f->part);
	f->what.seen = g_strdup(args_value(a, "seen"));
	f->what.who = g_strdup(args_value(a, "by"));
	f->part.number = g_strdup(args_value(a, "number"));
	return opt_date(c, a, "date", &f->what.date, err) && opt_date(c, a, "made", &f->what.made, err)
	    && opt_hours(a, "meter", &f->what.reading, err) && opt_word(a, "outcome", &words_outcome, &f->what.outcome, err);
}

static void
say_done(const struct cli *c, const struct job_done *d)
{
	const struct service *s = &d->form->what;

	cli_say(c, 2, "%s: %s", d->aim, s->task == NONE ? "put right" : word_of(&words_outcome, s->outcome));
	if (s->task != NONE && !d->said.counts)
		cli_say(c, 2, "  it stays due: %s", d->said.why_not);
	if (d->said.repeated)
		cli_say(c, 2, "  %s", d->said.repeated);
	if (d->said.used)
		cli_say(c, 4, "  %s", d->said.used);
}

/* Nothing is recorded, or all that is named. */
static gboolean
done(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	g_auto(GStrv) aims = args_all(a, "done");
	guint n = g_strv_length(aims);
	g_autofree struct service_form *form = g_new0(struct service_form, n);
	g_autofree struct job_done *each = g_new0(struct job_done, n);
	g_autoptr(GArray) used = g_array_new(FALSE, FALSE, sizeof(struct store_use));
	gboolean ok = TRUE;

	for (guint i = 0; i < n; i++) {
		ok = read_service(c, a, &form[i], ok ? err : NULL) && ok;
		each[i] = (struct job_done){ .aim = aims[i], .form = &form[i] };
	}
	ok = ok && stores_used(c, b, a, &form[0], used, err) && book_job_done_each(b, job, each, n, err);
	for (guint i = 0; i < n; i++) {
		if (ok)
			say_done(c, &each[i]);
		service_said_clear(&each[i].said);
		record_clear(RECORD_SERVICE, &form[i].what);
		record_clear(RECORD_PART, &form[i].part);
	}
	if (!ok && n > 1)
		g_prefix_error_literal(err, "none of them is recorded: ");
	return ok && job_say_next(c, b, job, err);
}

static gboolean
undone(struct cli *c, struct book *b, struct job *job, const struct args *a, GError **err)
{
	g_auto(GStrv) aims = args_all(a, "undone");
	const char *reason = args_value(a, "reason");

	if (!book_job_undone_each(b, job, (const char *const *)aims, reason, err))
		return FALSE;
	for (int i = 0; aims[i]; i++)
		cli_say(c, 2, "%s is left undone: %s. It stays as due as it was.", aims[i], reason);
	return TRUE;
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

const struct job_deed job_records[] = {
	{ "off", BOOK_WRITE, off },         { "again", BOOK_WRITE, again },      { "left-over", BOOK_WRITE, left_over },
	{ "take", BOOK_WRITE, take },       { "correct", BOOK_WRITE, correct },  { "drop", BOOK_WRITE, drop },
	{ "back", BOOK_WRITE, back },       { "step", BOOK_WRITE, job_step },        { "skip-step", BOOK_WRITE, job_skip_step },
	{ "done", BOOK_WRITE, done },       { "undone", BOOK_WRITE, undone },    { "add-task", BOOK_WRITE, add },
	{ "add-finding", BOOK_WRITE, add }, { "add-template", BOOK_WRITE, add }, { "pause", BOOK_WRITE, pause_job },
	{ "resume", BOOK_WRITE, resume },   { "close", BOOK_WRITE, job_close },  { NULL, BOOK_READ, NULL },
};
