/* What was seen wrong: the level that the rules propose stands there while one types, with what it makes due. */
#include "base/date.h"
#include "base/err.h"
#include "logbook/finding.h"
#include "logbook/page.h"
#include "tui/app.h"
#include "tui/form.h"

/* Fields, with what stands in them. */
static gboolean
add_fields(struct app *a, struct form *f, const struct finding *was, GError **err)
{
	struct fitting on;
	char day[DAY_TEXT], until[DAY_TEXT];

	record_init(RECORD_FITTING, &on);
	if (was->fitting != NONE && !book_record(a->book, RECORD_FITTING, was->fitting, &on, err)) {
		record_clear(RECORD_FITTING, &on);
		return FALSE;
	}
	form_add(f, "on", "On", "a fitting: its path, or words that only one has; empty: as the words name it", on.path);
	form_add(f, "words", "Found", "in plain words: rough, growls in turns; ^X writes it in your editor", was->words)->long_text
		= TRUE;
	form_add_choice(f, "level", "Level", &words_level, was->level, TRUE)->hint =
		"hold, mend, watch; Left and Right choose, Backspace: as proposed";
	form_add(f, "measured", "Measured", "a reading that shows it: bearing-roughness 2", NULL);
	form_add(f, "date", "Date", form_date_hint, day_iso(was->date, day));
	form_add(f, "until", "Mend by", "the day by which it is to be put right",
		 was->until == NONE ? NULL : day_iso(was->until, until));
	form_add(f, "allowed", "Until then", "what may be done with it: 5 h, then look again", was->allowed);
	form_add(f, "due", "Makes due", "names of tasks, besides those of the rule", was->makes_due);
	form_add(f, "photo", "Photo", "the path of a file that shows it", NULL);
	form_add_remark(f, NULL, was->remark);
	f->at = on.path ? 1 : 0;
	record_clear(RECORD_FITTING, &on);
	return TRUE;
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	struct finding blank;

	record_init(RECORD_FINDING, &blank);
	blank.fitting = f->subject;
	blank.date = app_today(a);
	return add_fields(a, f, &blank, err);
}

static gboolean
begin_on_outing(struct app *a, struct form *f, GError **err)
{
	struct finding blank;
	struct outing o;
	char day[16];
	gboolean ok = book_record(a->book, RECORD_OUTING, f->subject, &o, err);

	record_init(RECORD_FINDING, &blank);
	if (ok) {
		blank.date = o.date;
		f->heading = g_strdup_printf("On the outing of %s", day_words(o.date, day));
		ok = add_fields(a, f, &blank, err);
	}
	record_clear(RECORD_OUTING, &o);
	return ok;
}

static gboolean
begin_again(struct app *a, struct form *f, GError **err)
{
	struct finding was;
	gboolean ok = book_record(a->book, RECORD_FINDING, f->subject, &was, err) && add_fields(a, f, &was, err);

	record_clear(RECORD_FINDING, &was);
	return ok;
}

/* The fitting that is said, or that the words name. */
static void
read_place(struct app *a, struct form *f, struct finding *what)
{
	g_autoptr(GPtrArray) near = g_ptr_array_new_with_free_func(g_free);
	const char *on = form_text(f, "on");
	struct fitting place;
	GError *err = NULL;
	gboolean ok = *on ? book_find_fitting(a->book, a->boat.id, on, &place, &err)
			  : book_fitting_meant(a->book, a->boat.id, form_text(f, "words"), near, &place, &err);

	what->fitting = ok ? place.id : NONE;
	form_wrong(f, "on", &err);
	record_clear(RECORD_FITTING, &place);
}

static void
read_days(struct app *a, struct form *f, struct finding *what)
{
	GError *err = NULL;

	if (day_parse(form_text(f, "date"), app_today(a), &what->date, &err) && what->date > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead");
	form_wrong(f, "date", &err);
	if (*form_text(f, "until"))
		day_parse(form_text(f, "until"), app_today(a), &what->until, &err);
	form_wrong(f, "until", &err);
}

/* A correction begins with what is on record. */
static gboolean
read_form(struct app *a, struct form *f, struct finding_form *form, GError **err)
{
	struct finding *what = &form->what;

	*form = (struct finding_form) { .sure = f->sure };
	record_init(RECORD_FINDING, what);
	if (f->kind == &form_found_again && !book_record(a->book, RECORD_FINDING, f->subject, what, err))
		return FALSE;
	if (f->kind == &form_found_on_outing)
		what->outing = f->subject;
	what->boat = a->boat.id;
	read_place(a, f, what);
	read_days(a, f, what);
	if (!*form_text(f, "words"))
		form_refuse(f, "words", "wanted: what was seen?");
	g_free(what->words);
	what->words = form_said(f, "words");
	what->level = form_word(f, "level");
	g_free(what->allowed);
	what->allowed = form_said(f, "allowed");
	g_free(what->makes_due);
	what->makes_due = form_said(f, "due");
	g_free(what->remark);
	what->remark = form_said(f, "remark");
	form->measured = form_text(f, "measured");
	return TRUE;
}

static char *
sum_of(const struct finding *what, const struct finding_proposal *p)
{
	gint64 level = what->level == NONE ? p->level : what->level;

	return g_strdup_printf("%s%s%s: %s%s%s%s%s%s", word_of(&words_level, level), level == p->level ? "" : ", proposed is ",
			       level == p->level ? "" : word_of(&words_level, p->level), p->why, p->raised ? ". Raised: " : "",
			       p->raised ? p->raised : "", p->makes_due ? ". Makes due: " : "", p->makes_due ? p->makes_due : "",
			       ".");
}

static char *
check(struct app *a, struct form *f)
{
	struct finding_form form;
	struct finding_proposal p = { .level = LEVEL_MEND };
	char *sum = NULL;

	if (read_form(a, f, &form, NULL) && form.what.words && form.what.fitting != NONE
	    && book_propose(a->book, &form, &p, NULL))
		sum = sum_of(&form.what, &p);
	finding_proposal_clear(&p);
	record_clear(RECORD_FINDING, &form.what);
	return sum;
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	const char *photo[] = { form_text(f, "photo"), NULL };
	struct finding_form form;
	struct finding_proposal p = { .level = LEVEL_MEND };
	gboolean ok = read_form(a, f, &form, err);

	form.photos = *photo[0] ? photo : NULL;
	ok = ok && book_finding(a->book, &form, &p, err);
	if (ok)
		app_say(a, form.what.level == LEVEL_HOLD ? STYLE_PAST : STYLE_STRONG, "%s: %s%s%s; u takes it back",
			word_of(&words_level, form.what.level), form.what.words, form.what.makes_due ? "; due at once: " : "",
			form.what.makes_due ? form.what.makes_due : "");
	finding_proposal_clear(&p);
	record_clear(RECORD_FINDING, &form.what);
	return ok;
}

const struct form_kind form_found = {
	.name = "found", .title = "Found", .button = "Enter records it", .begin = begin, .check = check, .save = save,
};

const struct form_kind form_found_on_outing = {
	.name = "found-on-outing", .title = "Found", .button = "Enter records it", .begin = begin_on_outing, .check = check,
	.save = save,
};

const struct form_kind form_found_again = {
	.name = "found-again", .title = "A finding corrected", .button = "Enter records it", .begin = begin_again, .check = check,
	.save = save,
};
