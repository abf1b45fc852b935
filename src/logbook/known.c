#include "logbook/known.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/catalogue.h"
#include "logbook/inside.h"
#include "logbook/service.h"
#include "logbook/shipped.h"
#include "logbook/variant.h"

#include <string.h>

enum { TASK, WHAT, ASK };
static const char *const columns[] = { "task", "what", "ask", NULL };

static void
clear_question(gpointer p)
{
	g_free(((struct known_question *)p)->ask);
}

/* Whether the boat has that fitting, and the task goes with its design. */
static gboolean
is_there(const GArray *fittings, const struct task *t)
{
	const struct fitting *f = (const void *)fittings->data;

	for (guint i = 0; i < fittings->len; i++)
		if (f[i].id == t->fitting)
			return f[i].retired != 1 && t->retired != 1 && variant_has_task(t->variants, f[i].variant);
	return FALSE;
}

/* A twin's tasks have its name in front: "port-gear-oil.change". */
static gboolean
is_called(const struct task *t, const char *name)
{
	gsize n = strlen(t->name), m = strlen(name);

	return n >= m && !strcmp(t->name + n - m, name) && (n == m || t->name[n - m - 1] == '-');
}

/* A twin's paths have its name in front: "port/engine/cooling". */
static void
add_designs(GArray *all, const char *path, const char *ask, const GArray *fittings)
{
	g_autofree char *end = g_strconcat("/", path, NULL);

	for (guint i = 0; i < fittings->len; i++) {
		const struct fitting *f = &((const struct fitting *)(const void *)fittings->data)[i];
		gboolean same = !strcmp(f->path, path), side = !same && g_str_has_suffix(f->path, end);
		int n = side ? (int)(strlen(f->path) - strlen(end)) : 0;
		g_autofree char *words = variant_words(f->variants);
		struct known_question q = { NONE, f->id, FALSE, NULL };

		if ((!same && !side) || !f->variants || f->variant || f->retired == 1)
			continue;
		q.ask = g_strdup_printf("%s%s%.*s (%s)", ask, side ? ", " : "", n, f->path, words);
		g_array_append_val(all, q);
	}
}

static gboolean
add_row(GArray *all, const struct table *file, guint i, GArray *tasks, const GArray *fittings)
{
	static const char *const wanted[] = { "done", "made" };
	const char *name = table_cell(file, i, TASK), *what = table_cell(file, i, WHAT), *ask = table_cell(file, i, ASK);
	const struct task *t = (const void *)tasks->data;

	if (name && ask && what && !strcmp(what, QUESTION_WITH))
		return TRUE; /* asked before there was a boat */
	if (name && ask && what && !strcmp(what, "design")) {
		add_designs(all, name, ask, fittings);
		return TRUE;
	}
	if (!name || !ask || !what || (strcmp(what, wanted[0]) && strcmp(what, wanted[1])))
		return FALSE;
	for (guint k = 0; k < tasks->len; k++)
		if (is_called(&t[k], name) && is_there(fittings, &t[k])) {
			gsize side = strlen(t[k].name) - strlen(name);
			char *asked = side ? g_strdup_printf("%s (%.*s)", ask, (int)side - 1, t[k].name) : g_strdup(ask);
			struct known_question q = { t[k].id, NONE, !strcmp(what, wanted[1]), asked };

			g_array_append_val(all, q);
		}
	return TRUE;
}

GArray *
book_questions(struct book *b, const struct boat *boat, GError **err)
{
	g_autofree char *folder = book_catalogue(b);
	g_autoptr(GArray) tasks = book_records(b, RECORD_TASK, boat->id, err),
			  fittings = tasks ? book_records(b, RECORD_FITTING, boat->id, err) : NULL;
	struct table *file = fittings ? shipped_table(folder, "questions.csv", columns, err) : NULL;
	g_autoptr(GArray) all = g_array_new(FALSE, FALSE, sizeof(struct known_question));
	gboolean ok = file != NULL;

	g_array_set_clear_func(all, clear_question);
	for (guint i = 0; ok && i < table_rows(file); i++)
		if (!add_row(all, file, i, tasks, fittings)) {
			err_set(err, ERR_INPUT, "task, ask, and done, made, design or with are wanted");
			ok = table_prefix(file, i, err);
		}
	table_free(file);
	return ok ? g_steal_pointer(&all) : NULL;
}

static gboolean
know_design(struct book *b, gint64 fitting, const char *design, GError **err)
{
	struct fitting f;
	gboolean ok;

	record_init(RECORD_FITTING, &f);
	ok = row_get(b->db, RECORD_FITTING, fitting, &f, err) && book_set_variant(b, &f, design, err);
	record_clear(RECORD_FITTING, &f);
	return ok;
}

gboolean
book_known(struct book *b, const struct known_question *q, const char *when, GError **err)
{
	struct service_form f = { .dated = TRUE };
	struct service_said said = { .hours = NONE };
	struct service *s = &f.what;
	struct task t;
	gboolean ok;

	if (q->fitting != NONE)
		return know_design(b, q->fitting, when, err);
	record_init(RECORD_TASK, &t);
	record_init(RECORD_SERVICE, s);
	record_init(RECORD_PART, &f.part);
	s->task = q->task;
	s->estimated = 1;
	s->outcome = q->made ? OUTCOME_RENEWED : NONE;
	ok = day_span_parse(when, b->who.today, &s->earliest, &s->date, err);
	if (ok && s->earliest > b->who.today)
		ok = err_set(err, ERR_INPUT, "that lies ahead of today");
	s->date = MIN(s->date, b->who.today);
	if (ok && q->made)
		ok = row_get(b->db, RECORD_TASK, q->task, &t, err) && book_made(b, &t, when, &s->made, err);
	if (s->earliest == s->date)
		s->earliest = NONE;
	ok = ok && book_did(b, &f, &said, err);
	service_said_clear(&said);
	record_clear(RECORD_SERVICE, s);
	record_clear(RECORD_PART, &f.part);
	record_clear(RECORD_TASK, &t);
	return ok;
}
