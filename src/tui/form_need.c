/* What a task needs of an item: asked of an item, or of a task that wants something no item is linked to. */
#include "base/err.h"
#include "logbook/page.h"
#include "tui/stores_view.h"

enum when { ALWAYS, WHEN_BAD };
static const char *const when_list[] = { "always", "when found bad" };
static const struct words words_when = { "when", when_list, G_N_ELEMENTS(when_list) };

static void
add_fields(struct form *f)
{
	form_add(f, "quantity", "How many", "each time it is done; 0: it no longer needs any", "1");
	form_add_choice(f, "when", "Needed", &words_when, ALWAYS, FALSE);
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	const struct item *i;
	struct stores *s = stores_of_form(a, f, &i, err);

	if (!s)
		return FALSE;
	f->heading = g_strdup_printf("%s is needed for:", i->what);
	form_add(f, "task", "Task", "its name, or words that only one has: bellows-ujoint.renew", NULL);
	add_fields(f);
	stores_free(s);
	return TRUE;
}

static gboolean
begin_of_task(struct app *a, struct form *f, GError **err)
{
	struct task t;
	gboolean ok = book_record(a->book, RECORD_TASK, f->subject, &t, err);

	if (ok) {
		f->heading = g_strdup_printf("%s needs:", t.name);
		form_add(f, "item", "Item", "one of the stores: its number, or words that only one has", NULL);
		add_fields(f);
	}
	record_clear(RECORD_TASK, &t);
	return ok;
}

/* What the fields mean; item points into the stores, task is to be cleared. */
struct typed {
	struct stores *stores;
	const struct item *item;
	struct task task;
	gint64 quantity;
	gboolean when_bad;
};

static gboolean
read_form(struct app *a, struct form *f, struct typed *t)
{
	gboolean of_task = f->kind == &form_need_of_task, ok;
	const struct number *by;
	GError *err = NULL;

	*t = (struct typed) { .quantity = stores_typed_quantity(f, "quantity"), .when_bad = form_word(f, "when") == WHEN_BAD };
	record_init(RECORD_TASK, &t->task);
	t->stores = book_stores(a->book, &err);
	if (of_task && !*form_text(f, "item"))
		err_set(&err, ERR_INPUT, "wanted: which item of the stores?");
	else if (t->stores)
		t->item = of_task ? stores_find(t->stores, form_text(f, "item"), &by, &err) : stores_item(t->stores, f->subject);
	form_wrong(f, "item", &err);
	if (!of_task && !*form_text(f, "task"))
		ok = err_set(&err, ERR_INPUT, "wanted: which task needs it?");
	else
		ok = of_task ? book_record(a->book, RECORD_TASK, f->subject, &t->task, &err)
			     : book_find_task(a->book, a->boat.id, form_text(f, "task"), &t->task, &err);
	form_wrong(f, "task", &err);
	return ok && t->item;
}

static void
typed_clear(struct typed *t)
{
	record_clear(RECORD_TASK, &t->task);
	stores_free(t->stores);
}

static char *
check(struct app *a, struct form *f)
{
	struct typed t;
	char *sum = NULL;

	if (read_form(a, f, &t)) {
		g_autofree char *n = item_quantity(t.item, t.quantity);

		sum = t.quantity ? g_strdup_printf("%s needs %s %s%s.", t.task.name, n, t.item->what,
						   t.when_bad ? ", when it is found bad" : "")
				 : g_strdup_printf("%s no longer needs %s.", t.task.name, t.item->what);
	}
	typed_clear(&t);
	return sum;
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	struct typed t;
	gboolean ok = read_form(a, f, &t) || err_set(err, ERR_NOT_FOUND, "the task or the item is not there any more");

	ok = ok && book_put_need(a->book, &t.task, t.item, t.quantity, t.when_bad, err);
	if (ok) {
		g_autofree char *n = item_quantity(t.item, t.quantity);

		app_say(a, STYLE_STRONG, "%s needs %s %s; u takes it back", t.task.name, t.quantity ? n : "no", t.item->what);
	}
	typed_clear(&t);
	return ok;
}

const struct form_kind form_need = {
	.name = "need", .title = "A task needs it", .button = "Enter records it", .begin = begin, .check = check, .save = save,
};

const struct form_kind form_need_of_task = {
	.name = "need-of-task", .title = "What a task needs", .button = "Enter records it", .begin = begin_of_task, .check = check,
	.save = save,
};
