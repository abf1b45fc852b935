/* What holds the launch, let pass: by whom, why, and until when. */
#include "base/date.h"
#include "base/err.h"
#include "logbook/page.h"
#include "logbook/waiver.h"
#include "tui/app.h"
#include "tui/form.h"

/* The thing whose key the form was opened with: a task, a finding or a happening. */
static gboolean
thing_of(struct app *a, const struct form *f, struct waiver *w, GError **err)
{
	const struct due_line *line = due_find(a->due, f->subject);
	g_autofree char *words = line ? g_strdup(line->name) : book_key_text(f->subject);

	return book_waiver_thing(a->book, a->boat.id, words, w, err);
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	g_autofree char *words = NULL;
	struct waiver w;
	gboolean ok;

	record_init(RECORD_WAIVER, &w);
	ok = thing_of(a, f, &w, err);
	if (ok) {
		words = book_waiver_words(a->book, &w);
		f->heading = g_strdup_printf("%s. It stays on record and due; until its last day it does not hold the launch. "
					     "Whoever lets it pass answers for it.", words);
		form_add(f, "who", "By", "a name", a->start.who.name);
		form_add(f, "reason", "Why", "why the boat can go in as it is", NULL);
		form_add(f, "until", "Until", "the last day: 15 may, 2027-05-15", NULL);
	}
	record_clear(RECORD_WAIVER, &w);
	return ok;
}

static void
read_form(struct app *a, struct form *f, struct waiver *w)
{
	GError *err = NULL;

	record_init(RECORD_WAIVER, w);
	thing_of(a, f, w, &err);
	g_clear_error(&err);
	w->boat = a->boat.id;
	w->date = app_today(a);
	w->who = form_said(f, "who");
	if (!w->who)
		err_set(&err, ERR_INPUT, "a name is wanted");
	form_wrong(f, "who", &err);
	w->reason = form_said(f, "reason");
	if (!w->reason)
		err_set(&err, ERR_INPUT, "a reason is wanted");
	form_wrong(f, "reason", &err);
	if (day_parse(form_text(f, "until"), app_today(a), &w->until, &err) && w->until < w->date)
		err_set(&err, ERR_INPUT, "that day is past");
	form_wrong(f, "until", &err);
}

static char *
check(struct app *a, struct form *f)
{
	struct waiver w;
	char day[16], *sum;

	read_form(a, f, &w);
	sum = g_strdup_printf("Let pass until %s by %s.", w.until == NONE ? "?" : day_words(w.until, day), w.who ? w.who : "?");
	record_clear(RECORD_WAIVER, &w);
	return sum;
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	struct waiver w;
	gboolean ok;

	read_form(a, f, &w);
	ok = book_waive(a->book, &w, err);
	if (ok)
		app_say(a, STYLE_STRONG, "let pass by %s; u takes it back", w.who);
	record_clear(RECORD_WAIVER, &w);
	return ok;
}

const struct form_kind form_waive = {
	.name = "waive", .title = "Let pass", .button = "Enter lets it pass", .begin = begin, .check = check, .save = save,
};
