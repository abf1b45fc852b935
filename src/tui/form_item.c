/* A kind of part: what it is, its number, how it ages, how long it takes to come; and one more number of it. */
#include "base/amount.h"
#include "base/err.h"
#include "logbook/page.h"
#include "logbook/stores_check.h"
#include "tui/stores_view.h"

#include <math.h>

static const char *const yes_list[] = { "no", "yes" };
static const struct words words_yes = { "yes or no", yes_list, G_N_ELEMENTS(yes_list) };

struct stores *
stores_of_form(struct app *a, const struct form *f, const struct item **i, GError **err)
{
	struct stores *s = book_stores(a->book, err);

	*i = s ? stores_item(s, f->subject) : NULL;
	if (*i)
		return s;
	if (s)
		err_set(err, ERR_NOT_FOUND, "that item is not in the stores any more");
	stores_free(s);
	return NULL;
}

static void
add_count(struct form *f, const char *name, const char *label, const char *hint, gint64 value)
{
	g_autofree char *text = value == NONE ? NULL : g_strdup_printf("%d", (int)value);

	form_add(f, name, label, hint, text);
}

static void
add_number(struct form *f, const char *label)
{
	form_add(f, "number", label, "as it is printed: RB-204", NULL);
	form_add(f, "supplier", "Supplier", "whose number it is", NULL);
}

static void
add_fields(struct form *f, const struct item *i)
{
	char keep[STOCK_TEXT];

	form_add(f, "what", "What", "a kind of part: bellows, U-joint", i->what);
	add_number(f, i->id == NONE ? "Number" : "One more number");
	form_add(f, "unit", "Counted in", "L, m; empty: pieces", i->unit);
	form_add_choice(f, "rubber", "Rubber", &words_yes, i->rubber, TRUE)->hint =
		"rubber ages on the shelf; Left and Right choose";
	add_count(f, "shelf", "May lie, months", "how many months on the shelf; empty: not known", i->shelf_months);
	add_count(f, "lead", "Takes, days", "from ordering to having it; empty: not known", i->lead_days);
	form_add(f, "keep", "Always keep", "so many are wanted on hand at all times; empty: none",
		 isnan(i->keep) ? NULL : stock_text(stock_of(i->keep), keep));
	form_add_remark(f, NULL, i->remark);
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	struct item blank;

	(void)a, (void)err;
	record_init(RECORD_ITEM, &blank);
	add_fields(f, &blank);
	return TRUE;
}

static gboolean
begin_again(struct app *a, struct form *f, GError **err)
{
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, err);
	g_autofree char *numbers = s ? stores_numbers(s, i->id) : NULL;

	if (!s)
		return FALSE;
	f->heading = numbers ? g_strdup_printf("Numbers: %s", numbers) : g_strdup("No number of it is known.");
	add_fields(f, i);
	stores_free(s);
	return TRUE;
}

/* One field of a kind of part, held to what it may be. */
static void
check_alone(struct form *f, const char *field, const struct item *one)
{
	GError *err = NULL;

	item_check(one, &err);
	form_wrong(f, field, &err);
}

static void
read_counts(struct form *f, struct item *i)
{
	struct item months, days;
	GError *err = NULL;

	record_init(RECORD_ITEM, &months);
	record_init(RECORD_ITEM, &days);
	if (*form_text(f, "shelf"))
		count_parse(form_text(f, "shelf"), &months.shelf_months, &err);
	form_wrong(f, "shelf", &err);
	if (*form_text(f, "lead"))
		count_parse(form_text(f, "lead"), &days.lead_days, &err);
	form_wrong(f, "lead", &err);
	check_alone(f, "shelf", &months);
	check_alone(f, "lead", &days);
	i->shelf_months = months.shelf_months;
	i->lead_days = days.lead_days;
}

static void
read_keep(struct form *f, struct item *i)
{
	gint64 keep = 0;
	GError *err = NULL;

	if (*form_text(f, "keep"))
		stock_parse(form_text(f, "keep"), &keep, &err);
	form_wrong(f, "keep", &err);
	i->keep = keep ? stock_real(keep) : (double)NAN;
}

static void
read_number(struct form *f, struct number *n)
{
	record_init(RECORD_NUMBER, n);
	n->number = form_said(f, "number");
	n->supplier = form_said(f, "supplier");
	if (n->supplier && !n->number)
		form_refuse(f, "number", "wanted: the number that the supplier has for it");
}

static void
read_form(struct form *f, struct item *i, struct number *n)
{
	record_init(RECORD_ITEM, i);
	i->id = f->subject;
	i->what = form_said(f, "what");
	if (!i->what)
		form_refuse(f, "what", "wanted: what is it?");
	i->unit = form_said(f, "unit");
	i->rubber = form_word(f, "rubber");
	i->remark = form_said(f, "remark");
	read_counts(f, i);
	read_keep(f, i);
	read_number(f, n);
}

static void
clear(struct item *i, struct number *n)
{
	record_clear(RECORD_ITEM, i);
	record_clear(RECORD_NUMBER, n);
}

static char *
check(struct app *a, struct form *f)
{
	GString *sum = g_string_new(NULL);
	struct item i;
	struct number n;

	(void)a;
	read_form(f, &i, &n);
	g_string_append(sum, i.what ? i.what : "?");
	if (i.shelf_months != NONE)
		g_string_append_printf(sum, ", may lie %d months", (int)i.shelf_months);
	else if (i.rubber == 1)
		g_string_append(sum, ", rubber: how long it may lie is not known");
	if (i.lead_days == NONE)
		g_string_append(sum, ". How long it takes to come is not known, so no day to order by can be said.");
	else
		g_string_append_printf(sum, ", takes %d %s to come.", (int)i.lead_days, i.lead_days == 1 ? "day" : "days");
	clear(&i, &n);
	return g_string_free(sum, FALSE);
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	struct item i;
	struct number n;
	gboolean ok;

	read_form(f, &i, &n);
	ok = book_put_item(a->book, &i, &n, n.number ? 1 : 0, err);
	if (ok)
		app_say(a, STYLE_STRONG, "%s is %s", i.what,
			f->subject == NONE ? "on the list; b says what came of it" : "corrected");
	clear(&i, &n);
	return ok;
}

const struct form_kind form_item = {
	.name = "item", .title = "A kind of part", .button = "Enter puts it on the list", .begin = begin, .check = check,
	.save = save,
};

const struct form_kind form_item_again = {
	.name = "item-again", .title = "A kind of part, corrected", .button = "Enter records it", .begin = begin_again,
	.check = check, .save = save,
};

/* ---- one more number ---- */

static gboolean
begin_number(struct app *a, struct form *f, GError **err)
{
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, err);
	g_autofree char *numbers = s ? stores_numbers(s, i->id) : NULL;

	if (!s)
		return FALSE;
	f->heading = g_strdup_printf("%s. Numbers: %s", i->what, numbers ? numbers : "none is known");
	add_number(f, "Number");
	form_add(f, "replaces", "Takes place of", "the old number, when this one supersedes it: RB-103, or RB-103@Quay", NULL);
	stores_free(s);
	return TRUE;
}

static char *
check_number(struct app *a, struct form *f)
{
	const char *old = form_text(f, "replaces");
	struct number n;
	char *sum;

	(void)a;
	read_number(f, &n);
	if (!n.number && !n.supplier)
		form_refuse(f, "number", "wanted: which number?");
	sum = g_strdup_printf("%s%s%s.", n.number ? n.number : "?", *old ? " takes the place of " : " is one of its numbers", old);
	record_clear(RECORD_NUMBER, &n);
	return sum;
}

static gboolean
save_number(struct app *a, struct form *f, GError **err)
{
	const char *old = form_text(f, "replaces");
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, err);
	struct number n;
	gboolean ok = FALSE;

	read_number(f, &n);
	if (s) {
		struct item same = *i;

		ok = *old ? book_replace_number(a->book, i, &n, old, err) : book_put_item(a->book, &same, &n, 1, err);
	}
	if (ok)
		app_say(a, STYLE_STRONG, "%s: %s; u takes it back", i->what, n.number);
	record_clear(RECORD_NUMBER, &n);
	stores_free(s);
	return ok;
}

const struct form_kind form_number = {
	.name = "item-number", .title = "One more number", .button = "Enter records it", .begin = begin_number,
	.check = check_number, .save = save_number,
};
