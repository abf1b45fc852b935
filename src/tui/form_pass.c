/* Why a line of a season's list is passed over. */
#include "base/date.h"
#include "base/err.h"
#include "tui/app.h"
#include "tui/form.h"
#include "tui/season_story.h"

static const struct due_line *
line_of(const struct app *a, const struct form *f)
{
	return due_find(a->due, f->subject);
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	const struct due_line *line = line_of(a, f);
	char day[DAY_TEXT];

	if (!line || !season_shown(a))
		return err_set(err, ERR_NOT_FOUND, "that task is not on this list");
	f->heading = g_strdup_printf("%s. It stays open, and due.", line->title);
	form_add(f, "reason", "Why", "why it is not done now: no grease gun on board, waits for the yard", NULL);
	form_add(f, "date", "Date", form_date_hint, day_iso(app_today(a), day));
	form_add(f, "who", "Said by", "a name", a->start.who.name);
	return TRUE;
}

static void
read_form(struct app *a, struct form *f, struct skip *s)
{
	GError *err = NULL;

	record_init(RECORD_SKIP, s);
	s->task = f->subject;
	s->reason = form_said(f, "reason");
	if (!s->reason)
		err_set(&err, ERR_INPUT, "a reason is wanted");
	form_wrong(f, "reason", &err);
	if (day_parse(form_text(f, "date"), app_today(a), &s->date, &err) && s->date > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead");
	form_wrong(f, "date", &err);
	s->who = form_said(f, "who");
}

static char *
check(struct app *a, struct form *f)
{
	const struct due_line *line = line_of(a, f);
	struct skip s;
	char day[16], *sum;

	read_form(a, f, &s);
	sum = g_strdup_printf("%s: passed over on %s. It stays due.", line ? line->label : "This task",
			      s.date == NONE ? "?" : day_words(s.date, day));
	record_clear(RECORD_SKIP, &s);
	return sum;
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	const struct due_line *line = line_of(a, f);
	const struct season_work *w = season_shown(a);
	struct skip s;
	gboolean ok;

	read_form(a, f, &s);
	ok = w ? book_season_pass(a->book, w, &s, err) : err_set(err, ERR_NOT_FOUND, "the list is not open any more");
	if (ok)
		app_say(a, STYLE_STRONG, "%s: passed over, and still due; u takes it back", line ? line->label : "recorded");
	record_clear(RECORD_SKIP, &s);
	return ok;
}

const struct form_kind form_pass = {
	.name = "pass", .title = "Passed over", .button = "Enter records it", .begin = begin, .check = check, .save = save,
};
