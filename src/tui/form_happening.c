/* What happened to the boat, and what that makes due. */
#include "base/date.h"
#include "base/err.h"
#include "logbook/happening.h"
#include "logbook/year.h"
#include "tui/app.h"
#include "tui/form.h"
#include "tui/happening_words.h"

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	char day[DAY_TEXT];

	(void)err;
	form_add_choice(f, "kind", "What", &words_happening, HAPPENED_GROUNDING, FALSE);
	form_add(f, "date", "Date", form_date_hint, day_iso(app_today(a), day));
	form_add_remark(f, "how, where; ^X writes it in your editor", NULL);
	return TRUE;
}

static void
read_form(struct app *a, struct form *f, struct happening *h)
{
	GError *err = NULL;

	record_init(RECORD_HAPPENING, h);
	h->boat = a->boat.id;
	h->kind = form_word(f, "kind");
	if (day_parse(form_text(f, "date"), app_today(a), &h->date, &err) && h->date > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead");
	form_wrong(f, "date", &err);
	h->remark = form_said(f, "remark");
}

/* The caution stands above the fields: it comes before the work. */
static char *
check(struct app *a, struct form *f)
{
	struct happening h;
	char day[16], *sum;
	int n;

	read_form(a, f, &h);
	n = h.date == NONE ? 0 : happening_count(a->due, h.kind, h.date);
	g_free(f->heading);
	f->heading = happening_caution(a->book, h.kind);
	sum = g_strdup_printf("%s on %s: %d %s for it at once.", word_of(&words_happening, h.kind),
			      h.date == NONE ? "?" : day_words(h.date, day), n, n == 1 ? "task is due" : "tasks are due");
	record_clear(RECORD_HAPPENING, &h);
	return sum;
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	struct happening h;
	char day[16];
	gboolean ok;

	read_form(a, f, &h);
	ok = book_happening(a->book, &h, err);
	if (ok)
		app_say(a, STYLE_STRONG, "%s on %s; u takes it back", word_of(&words_happening, h.kind), day_words(h.date, day));
	record_clear(RECORD_HAPPENING, &h);
	return ok;
}

const struct form_kind form_happening = {
	.name = "happening", .title = "Something happened", .button = "Enter records it",
	.begin = begin, .check = check, .save = save,
};
