/* Out of the stores, for a task, a job or lost, and back; and how many are there. */
#include "base/date.h"
#include "base/err.h"
#include "logbook/stores_story.h"
#include "logbook/stores_take.h"
#include "tui/stores_view.h"

enum way { OUT, BACK };
static const char *const way_list[] = { "taken out", "put back" };
static const struct words words_way = { "out or back", way_list, G_N_ELEMENTS(way_list) };

static gboolean
add_heading(struct app *a, struct form *f, GError **err)
{
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, err);
	g_autofree char *words = s ? stores_item_words(s, i, app_today(a)) : NULL;

	f->heading = g_strdup(words);
	stores_free(s);
	return words != NULL;
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	char day[DAY_TEXT];

	if (!add_heading(a, f, err))
		return FALSE;
	form_add_choice(f, "way", "It is", &words_way, OUT, FALSE);
	form_add(f, "quantity", "How many", "1, 2.5", "1");
	form_add(f, "for", "For", "a task or a job by its name; lost, thrown away, returned: for no boat; or any words", NULL);
	form_add(f, "date", "Date", form_date_hint, day_iso(app_today(a), day));
	f->at = 2;
	return TRUE;
}

/* t->remark borrows the field's text. */
static gboolean
read_form(struct app *a, struct form *f, struct store_take *t)
{
	const char *why = form_text(f, "for");
	gint64 date = stores_typed_day(a, f, "date");
	GError *err = NULL;
	gboolean ok;

	*t = (struct store_take) {
		.item = f->subject, .quantity = stores_typed_quantity(f, "quantity"), .date = date == NONE ? app_today(a) : date,
		.boat = a->boat.id, .job = NONE, .service = NONE, .sure = f->sure,
	};
	if (*form_text(f, "quantity") && !t->quantity && !form_field(f, "quantity")->wrong)
		form_refuse(f, "quantity", "more than nothing is wanted");
	ok = store_take_why(a->book, &a->boat, *why ? why : NULL, t, &err);
	form_wrong(f, "for", &err);
	return ok;
}

static char *
check(struct app *a, struct form *f)
{
	struct store_take t;
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, NULL);
	g_autofree char *n = NULL;
	gboolean back = form_word(f, "way") == BACK, ok = read_form(a, f, &t);
	static const char *const first[] = {
		" The oldest that is fresh comes first.", " What is too old comes first.", " The newest taken goes back first.",
	};
	static const char words_kept[] = "; no job and no service of that day is called so: the words are kept";
	char d[16], *sum = NULL;

	if (i && ok && !form_field(f, "quantity")->wrong) {
		n = item_quantity(i, t.quantity);
		sum = g_strdup_printf("%s %s on %s, for %s%s.%s", n, way_list[back], day_words(t.date, d),
				      t.boat == NONE	  ? "no boat: in no sum of costs"
				      : t.service != NONE ? "that day's service"
				      : t.job != NONE	  ? "that job"
							  : a->boat.name,
				      t.remark && t.boat != NONE && t.service == NONE && t.job == NONE ? words_kept : "",
				      first[back ? 2 : t.boat == NONE]);
	}
	stores_free(s);
	return sum;
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	g_autoptr(GArray) taken = NULL;
	struct store_take t;
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, err);
	gboolean back = form_word(f, "way") == BACK, ok = s && read_form(a, f, &t);
	g_autofree char *words = NULL;

	if (ok)
		ok = back ? book_put_back(a->book, &t, err) : book_took(a->book, &t, &taken, err);
	if (ok) {
		words = taken ? store_taken_words(i, taken, t.date) : item_quantity(i, t.quantity);
		app_say(a, STYLE_STRONG, "%s, %s: %s; u takes it back", i->what, way_list[back], words);
	}
	stores_free(s);
	return ok;
}

const struct form_kind form_take = {
	.name = "take", .title = "Out of the stores", .button = "Enter records it", .begin = begin, .check = check, .save = save,
};

/* ---- counted ---- */

static gboolean
begin_count(struct app *a, struct form *f, GError **err)
{
	char day[DAY_TEXT];

	if (!add_heading(a, f, err))
		return FALSE;
	form_add(f, "quantity", "There are", "so many, counted; 0: none", NULL);
	form_add(f, "date", "Date", form_date_hint, day_iso(app_today(a), day));
	form_add_remark(f, NULL, NULL);
	return TRUE;
}

static void
read_count(struct app *a, struct form *f, struct store_count *c)
{
	gint64 date = stores_typed_day(a, f, "date");

	*c = (struct store_count) { .quantity = stores_typed_quantity(f, "quantity"), .date = date == NONE ? app_today(a) : date };
	c->remark = *form_text(f, "remark") ? form_text(f, "remark") : NULL;
}

/* What a count comes to beside the record; NULL: that of another day is worked out when it is recorded. */
static char *
check_count(struct app *a, struct form *f)
{
	struct store_count c;
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, NULL);
	gint64 more = 0;
	char *sum = NULL;

	read_count(a, f, &c);
	if (i)
		more = c.quantity - stores_on_hand(s, i, NONE);
	if (i && c.date == app_today(a) && *form_text(f, "quantity")) {
		g_autofree char *n = item_quantity(i, ABS(more));

		sum = !more ? g_strdup("As it stands on record: nothing changes.")
		    : more < 0
			    ? g_strdup_printf("%s less than on record: taken by nobody knows whom.", n)
			    : g_strdup_printf("%s more than on record: put down as found, of unknown price.", n);
	}
	stores_free(s);
	return sum;
}

static gboolean
save_count(struct app *a, struct form *f, GError **err)
{
	struct store_count c;
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, err);
	gboolean ok;

	read_count(a, f, &c);
	ok = s && book_counted(a->book, i, &c, err);
	if (ok) {
		g_autofree char *n = item_quantity(i, ABS(c.more));

		if (!c.more)
			app_say(a, STYLE_STRONG, "%s: as it stands on record", i->what);
		else
			app_say(a, STYLE_STRONG, "%s: %s %s than on record; u takes the count back", i->what, n,
				c.more < 0 ? "less" : "more");
	}
	stores_free(s);
	return ok;
}

const struct form_kind form_count = {
	.name = "count", .title = "Counted", .button = "Enter records it", .begin = begin_count, .check = check_count,
	.save = save_count,
};
