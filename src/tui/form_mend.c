/* A finding is put right: how it was left. */
#include "base/date.h"
#include "base/err.h"
#include "logbook/finding.h"
#include "logbook/page.h"
#include "tui/app.h"
#include "tui/form.h"
#include "tui/job_view.h"

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	struct finding was;
	char day[DAY_TEXT], found[16];
	gboolean ok = book_record(a->book, RECORD_FINDING, f->subject, &was, err);

	if (ok)
		f->heading = g_strdup_printf("Found on %s: %s", day_words(was.date, found), was.words);
	record_clear(RECORD_FINDING, &was);
	form_add(f, "left", "Left as", "what was done and how it was left: new bearing, turns smooth", NULL)->long_text = TRUE;
	form_add(f, "date", "Date", form_date_hint, day_iso(app_today(a), day));
	return ok;
}

static gint64
read_day(struct app *a, struct form *f)
{
	gint64 day = NONE;
	GError *err = NULL;

	if (day_parse(form_text(f, "date"), app_today(a), &day, &err) && day > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead");
	form_wrong(f, "date", &err);
	return day;
}

static char *
check(struct app *a, struct form *f)
{
	char day[16];
	gint64 date = read_day(a, f);

	if (!*form_text(f, "left"))
		form_refuse(f, "left", "wanted: nothing said is never good");
	return g_strdup_printf("Mended on %s.", date == NONE ? "?" : day_words(date, day));
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	struct finding was;
	gboolean ok = book_record(a->book, RECORD_FINDING, f->subject, &was, err)
		   && book_mend(a->book, &was, read_day(a, f), form_text(f, "left"), err);

	if (ok)
		app_say(a, STYLE_STRONG, "mended: %s; u opens it again", was.words);
	record_clear(RECORD_FINDING, &was);
	return ok;
}

const struct form_kind form_mend = {
	.name = "mend", .title = "Mended", .button = "Enter records it", .begin = begin, .check = check, .save = save,
	.then = job_go_on,
};
