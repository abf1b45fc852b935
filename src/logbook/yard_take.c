/* What a yard's answer becomes in the log. */
#include "logbook/yard_read.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "logbook/finding.h"
#include "logbook/service.h"
#include "logbook/transfer.h"
#include "logbook/variant.h"

static gboolean
was_done(const struct yard_row *r)
{
	return r->answer.verdict != SAYS_NOT_DONE && r->answer.verdict != SAYS_BAD;
}

/* What is only claimed never mends what holds the launch. */
static gboolean
mends(const struct yard_row *r)
{
	return was_done(r) && (r->finding.level != LEVEL_HOLD || r->answer.seen);
}

static enum outcome
outcome(const struct yard_row *r)
{
	static const enum outcome of[] = { OUTCOME_DONE, OUTCOME_RENEWED, OUTCOME_GOOD, OUTCOME_BAD, OUTCOME_TOPPED_UP };

	if (r->answer.verdict == SAYS_BAD || r->answer.verdict == SAYS_TOPPED_UP)
		return of[r->answer.verdict];
	return r->answer.seen ? of[r->answer.verdict] : OUTCOME_CLAIMED;
}

static gboolean
may_fit(struct yard_row *r, GError **err)
{
	struct fitting f;
	gint64 fitting = r->task.id == NONE ? r->finding.fitting : r->task.fitting;
	gboolean ok;

	if (!r->variant)
		return TRUE;
	if (!was_done(r))
		return err_set(err, ERR_CONFLICT, "--variant is of a line that was done");
	if (fitting == NONE)
		return err_set(err, ERR_CONFLICT, "--variant is of a line with a fitting");
	record_init(RECORD_FITTING, &f);
	ok = row_get(r->b->db, RECORD_FITTING, fitting, &f, err);
	if (ok && !f.variants)
		ok = err_set(err, ERR_CONFLICT, "--variant: %s comes in one design only, by the log", f.path);
	ok = ok && book_check_variant(&f, r->variant, err);
	record_clear(RECORD_FITTING, &f);
	return ok;
}

/* What is found bad is found on something that the boat has. */
static gboolean
may_find(struct yard_row *r, GError **err)
{
	struct fitting f;
	gboolean ok;

	if (r->task.id == NONE || r->answer.verdict != SAYS_BAD)
		return TRUE;
	record_init(RECORD_FITTING, &f);
	ok = row_get(r->b->db, RECORD_FITTING, r->task.fitting, &f, err);
	if (ok && f.retired == 1)
		ok = err_set(err, ERR_CONFLICT,
			     "%s is not on this boat, by the log: splitpin fitting %s --fitted takes it on again", f.path, f.path);
	record_clear(RECORD_FITTING, &f);
	return ok;
}

gboolean
yard_may_take(struct yard_row *r, GError **err)
{
	char d[DAY_TEXT], found[DAY_TEXT];
	gint64 built;

	if (r->date == NONE)
		return err_set(err, ERR_INPUT, "yard_date: empty, and no day was said for such answers (--date DAY)");
	if (r->also->len && !was_done(r))
		return err_set(err, ERR_CONFLICT, "--also is of a line that was done");
	if (r->line.finding != NONE && r->finding.mended != NONE)
		return err_set(err, ERR_CONFLICT, "that was mended on %s already", day_iso(r->finding.mended, d));
	if (r->line.finding != NONE && r->date < r->finding.date)
		return err_set(err, ERR_INPUT, "yard_date: %s comes before the day on which it was found, %s", day_iso(r->date, d),
			       day_iso(r->finding.date, found));
	return may_fit(r, err) && may_find(r, err) && book_built(r->b, r->boat->id, &built, err) && built_by(built, r->date, err);
}

/* "yard sheet of 2026-11-25, line 3 (KEY): replaced; 2.5 h"; the caller's. */
static char *
remark(const struct yard_row *r, unsigned with)
{
	g_autofree char *said = yard_answer_words(&r->answer, with), *mark = yard_mark(&r->sheet, &r->line);

	return g_strconcat(mark, said, NULL);
}

static const char *
who(const struct yard_row *r)
{
	return r->answer.initials ? r->answer.initials : r->b->who.name;
}

static void
say(struct yard_took *t, const char *format, ...) G_GNUC_PRINTF(2, 3);
static void
say(struct yard_took *t, const char *format, ...)
{
	g_autofree char *before = t->words, *more = NULL;
	va_list ap;

	va_start(ap, format);
	more = g_strdup_vprintf(format, ap);
	va_end(ap);
	t->words = g_strconcat(before ? before : "", more, NULL);
}

static void
count_cost(const struct yard_row *r, struct yard_took *t)
{
	char money[MONEY_TEXT];

	if (r->answer.cost == NONE)
		return;
	t->cost = r->answer.cost;
	g_strlcpy(t->currency, r->answer.currency, sizeof t->currency);
	say(t, ", %s%s%s", money_exact(t->cost, money), *t->currency ? " " : "", t->currency);
}

/* The meter's reading into the service when it can be so; else it is said why not, and stands in the remark. */
static gboolean
take_meter(const struct yard_row *r, const struct task *t, struct service *s, struct yard_took *said)
{
	g_autoptr(GError) why = NULL;
	char hours[HOURS_TEXT];

	if (r->answer.meter == NONE)
		return TRUE;
	s->reading = r->answer.meter;
	if (book_reading_fits(r->b, t, s, &why))
		return TRUE;
	s->reading = NONE;
	say(said, "; the meter's %s h stands in the remark alone: %s", hours_exact(r->answer.meter, hours), why->message);
	return FALSE;
}

/* What was found bad at the work is a finding on its fitting, of the level that the rules propose. */
static gboolean
open_finding(struct yard_row *r, const struct service *s, struct yard_took *t, GError **err)
{
	struct finding_form f = { .sure = FALSE };
	struct finding_proposal p = { .level = LEVEL_MEND };
	const char *words = r->answer.seen ? r->answer.seen : r->answer.notes ? r->answer.notes : r->answer.result;
	gboolean ok;

	record_init(RECORD_FINDING, &f.what);
	f.what.boat = r->boat->id;
	f.what.task = s->task;
	f.what.date = s->date;
	f.what.words = g_strdup(words);
	f.what.who = g_strdup(s->who);
	f.what.remark = remark(r, WITH_METER);
	ok = book_put_finding(r->b, &f, &p, err);
	if (ok)
		say(t, "; found: %s (%s)%s%s", words, word_of(&words_level, f.what.level),
		    f.what.makes_due ? ", due at once: " : "", f.what.makes_due ? f.what.makes_due : "");
	finding_proposal_clear(&p);
	record_clear(RECORD_FINDING, &f.what);
	return ok;
}

/* What was put on record of a service, and what follows from it. */
static void
say_service(const struct yard_row *r, const struct service *s, const struct service_said *said, struct yard_took *t)
{
	g_autofree char *repeated = book_repeated(r->b, s, NULL);

	if (s->outcome == OUTCOME_CLAIMED)
		say(t, "; %s, says the yard, and not what was seen", yard_verdict_words(r->answer.verdict));
	if (!said->counts)
		say(t, "; it stays open: %s", said->why_not);
	if (repeated)
		say(t, "; %s", repeated);
}

/* A service on a task; the first of a line has its cost. */
static gboolean
take_service(struct yard_row *r, const struct task *task, struct yard_took *t, GError **err)
{
	struct service_form f = { .dated = TRUE };
	struct service_said said = { 0 };
	gboolean first = r->line.service == NONE, ok;
	char d[16];

	say(t, "%s%s", first ? "" : "; ", task->name);
	record_init(RECORD_SERVICE, &f.what);
	record_init(RECORD_PART, &f.part);
	f.what.task = task->id;
	f.what.date = r->date;
	f.what.outcome = outcome(r);
	f.what.seen = g_strdup(r->answer.seen);
	f.what.who = g_strdup(who(r));
	say(t, ": %s on %s by %s", word_of(&words_outcome, f.what.outcome), day_words(r->date, d), who(r));
	f.what.cost = first ? r->answer.cost : NONE;
	if (first)
		count_cost(r, t);
	f.what.remark = remark(r, take_meter(r, task, &f.what, t) ? 0 : WITH_METER);
	if (first && r->answer.cost != NONE && *r->answer.currency)
		f.what.currency = g_strdup(r->answer.currency);
	f.variant = first && r->task.id != NONE ? r->variant : NULL;
	ok = book_put_did(r->b, &f, &said, err);
	if (ok && first)
		r->line.service = f.what.id;
	if (ok)
		say_service(r, &f.what, &said, t);
	ok = ok && (f.what.outcome != OUTCOME_BAD || open_finding(r, &f.what, t, err));
	service_said_clear(&said);
	record_clear(RECORD_SERVICE, &f.what);
	record_clear(RECORD_PART, &f.part);
	return ok;
}

/* The same for a task that --also named. */
static gboolean
take_also(struct yard_row *r, gint64 id, struct yard_took *t, GError **err)
{
	struct task task;
	gboolean ok;

	record_init(RECORD_TASK, &task);
	ok = row_get(r->b->db, RECORD_TASK, id, &task, err) && take_service(r, &task, t, err);
	record_clear(RECORD_TASK, &task);
	return ok;
}

/* Passed over: it stays due, and why stands beside it. */
static gboolean
pass_over(struct yard_row *r, struct yard_took *t, GError **err)
{
	g_autofree char *said = yard_answer_words(&r->answer, WITH_COST | WITH_METER);
	struct skip s;
	gboolean ok;

	record_init(RECORD_SKIP, &s);
	s.boat = r->boat->id;
	s.task = r->task.id;
	s.date = r->date;
	s.reason = remark(r, WITH_COST | WITH_METER);
	s.who = g_strdup(who(r));
	ok = book_put(r->b, RECORD_SKIP, &s, err);
	if (ok)
		say(t, "%s: not done, and still due; in the log stands: %s", r->task.name, said);
	record_clear(RECORD_SKIP, &s);
	return ok;
}

static gboolean
fit_variant(struct yard_row *r, GError **err)
{
	struct fitting f;
	gboolean ok;

	if (!r->variant)
		return TRUE;
	record_init(RECORD_FITTING, &f);
	ok = row_get(r->b->db, RECORD_FITTING, r->finding.fitting, &f, err) && book_put_variant(r->b, &f, r->variant, err);
	record_clear(RECORD_FITTING, &f);
	return ok;
}

static void
add_remark(struct finding *f, const char *more)
{
	char *all = f->remark ? g_strjoin("; ", f->remark, more, NULL) : g_strdup(more);

	g_free(f->remark);
	f->remark = all;
}

/* What mended it is the work taken with the line, else the latest that it asked for, as book_mend() has it. */
static gboolean
take_finding(struct yard_row *r, struct yard_took *t, GError **err)
{
	struct finding *f = &r->finding;
	unsigned with = r->line.service == NONE ? WITH_COST | WITH_METER : 0;
	g_autofree char *more = remark(r, with), *said = yard_answer_words(&r->answer, with);
	char d[16];

	say(t, "%s%s: ", t->words ? "; " : "", f->words);
	add_remark(f, more);
	if (!mends(r)) {
		say(t, "stays open%s; in the log stands: %s",
		    was_done(r) ? ": it holds the launch, and the yard does not say what was seen" : "", said);
		return book_put(r->b, RECORD_FINDING, f, err);
	}
	if (!fit_variant(r, err)
	    || !book_put_mend(r->b, f, r->date, r->answer.seen ? r->answer.seen : r->answer.result, err))
		return FALSE;
	if (r->line.service != NONE)
		f->service = r->line.service;
	say(t, "mended on %s by %s, left as %s", day_words(r->date, d), who(r), f->left_as);
	if (r->line.service == NONE && r->answer.cost != NONE)
		say(t, "; in the log stands: %s", said);
	return book_put(r->b, RECORD_FINDING, f, err);
}

gboolean
yard_take(struct yard_row *r, struct yard_took *t, GError **err)
{
	g_autofree char *what = NULL;
	gboolean ok = TRUE;

	if (r->task.id != NONE)
		ok = r->answer.verdict == SAYS_NOT_DONE ? pass_over(r, t, err) : take_service(r, &r->task, t, err);
	for (guint i = 0; ok && i < r->also->len; i++)
		ok = take_also(r, g_array_index(r->also, gint64, i), t, err);
	if (ok && r->task.id == NONE)
		ok = take_finding(r, t, err);
	if (!ok)
		return FALSE;
	what = t->words;
	t->words = g_strdup_printf("line %d, %s", (int)r->line.no, what);
	g_free(r->line.answer);
	r->line.answer = yard_answer_digest(&r->answer);
	r->line.answered = r->b->who.today;
	return book_put(r->b, RECORD_SHEETLINE, &r->line, err);
}
