#include "logbook/ready_inside.h"

#include "base/date.h"
#include "logbook/happening.h"
#include "logbook/readings.h"
#include "logbook/waiver.h"

#include <stdarg.h>

void
grounds_add(struct grounds *g, enum ready_ground ground, const char *format, ...)
{
	va_list ap;

	if (g->why->len)
		g_string_append(g->why, "; ");
	va_start(ap, format);
	g_string_append_vprintf(g->why, format, ap);
	va_end(ap);
	g->first = MIN(g->first, ground);
}

static void
clear_item(gpointer p)
{
	struct ready_item *i = p;

	g_free(i->words);
	g_free(i->why);
	g_free(i->name);
	g_free(i->who);
	g_free(i->reason);
}

struct ready_item *
ready_add(struct making *m, enum ready_group group, enum ready_ground ground, char *words, char *why)
{
	struct ready_item item = { .group = group, .ground = ground, .consequence = NONE, .words = words, .why = why,
				   .task = NONE, .finding = NONE, .happening = NONE, .until = NONE };

	g_array_append_val(m->r->item, item);
	return &((struct ready_item *)(void *)m->r->item->data)[m->r->item->len - 1];
}

/* Only what holds the launch can be let pass. */
static void
let_pass(struct making *m, struct ready_item *i)
{
	const struct waiver *w = waiver_of(m->waivers, i->finding, i->task, i->happening);

	if (!w || i->group != READY_HOLDS)
		return;
	i->until = w->until;
	i->who = g_strdup(w->who);
	i->reason = g_strdup(w->reason);
}

void
ready_is_task(struct making *m, struct ready_item *i, gint64 task, const char *name, gint64 consequence)
{
	i->task = task;
	i->name = g_strdup(name);
	i->consequence = consequence;
	let_pass(m, i);
}

void
ready_is_key(struct making *m, struct ready_item *i, gint64 *which, gint64 key)
{
	*which = key;
	i->name = book_key_text(key);
	let_pass(m, i);
}

static int
compare_items(gconstpointer x, gconstpointer y)
{
	const struct ready_item *a = x, *b = y;
	int d = (int)a->group - (int)b->group;

	if (!d)
		d = (a->until != NONE) - (b->until != NONE);
	if (!d && a->consequence != b->consequence)
		d = a->consequence == NONE ? -1 : b->consequence == NONE ? 1 : a->consequence < b->consequence ? -1 : 1;
	if (!d)
		d = (int)a->ground - (int)b->ground;
	return d ? d : g_strcmp0(a->words, b->words);
}

static gboolean
read_all(struct making *m, GError **err)
{
	const struct { GArray **to; enum record r; } whole[] = {
		{ &m->happenings, RECORD_HAPPENING }, { &m->fittings, RECORD_FITTING }, { &m->readings, RECORD_MEASUREMENT },
		{ &m->bounds, RECORD_BOUND },
	};
	struct cells *c;

	for (guint i = 0; i < G_N_ELEMENTS(whole); i++)
		if (!(*whole[i].to = book_records(m->b, whole[i].r, m->boat->id, err)))
			return FALSE;
	m->kinds = book_readings(m->b, err);
	m->skips = m->kinds ? book_skips(m->b, m->boat->id, err) : NULL;
	m->waivers = m->skips ? book_waivers_on(m->b, m->boat->id, m->at, err) : NULL;
	if (!m->waivers)
		return FALSE;
	c = cells_open(m->b->db, SQL_FINDINGS_OPEN_ON);
	cells_bind(c, 1, m->boat->id);
	cells_bind(c, 2, m->at);
	m->findings = book_rows(c, RECORD_FINDING, err);
	return m->findings != NULL;
}

static void
let_go(struct making *m)
{
	GArray *const all[] = { m->waivers, m->skips, m->happenings, m->findings, m->fittings, m->readings, m->bounds };

	for (guint i = 0; i < G_N_ELEMENTS(all); i++)
		if (all[i])
			g_array_unref(all[i]);
}

static void
count(struct ready *r)
{
	for (int i = 0; i < ready_count(r); i++) {
		const struct ready_item *item = ready_at(r, i);

		if (item->group == READY_HOLDS)
			++*(item->until == NONE ? &r->holding : &r->passed);
	}
}

struct ready *
book_ready_of(struct book *b, const struct boat *boat, const struct due_list *l, GError **err)
{
	struct making m = { .b = b, .boat = boat, .l = l, .at = due_year(l)->at, .r = g_new0(struct ready, 1) };
	gboolean ok;

	m.r->at = m.at;
	m.r->launch = due_year(l)->launch;
	m.r->item = g_array_new(FALSE, TRUE, sizeof(struct ready_item));
	g_array_set_clear_func(m.r->item, clear_item);
	ok = read_all(&m, err) && ready_tasks(&m, err) && ready_retired(&m, err) && ready_other(&m, err)
	  && ready_jobs(&m, err);
	let_go(&m);
	if (!ok) {
		ready_free(m.r);
		return NULL;
	}
	g_array_sort(m.r->item, compare_items);
	count(m.r);
	return m.r;
}

struct ready *
book_ready(struct book *b, const struct boat *boat, gint64 at, GError **err)
{
	struct due_list *l = due_list_new();
	struct ready *r = book_due(b, boat, &(struct due_ask){ at, NONE }, l, err) ? book_ready_of(b, boat, l, err) : NULL;

	due_list_free(l);
	return r;
}

void
ready_free(struct ready *r)
{
	if (!r)
		return;
	g_array_unref(r->item);
	g_free(r);
}

int
ready_count(const struct ready *r)
{
	return (int)r->item->len;
}

const struct ready_item *
ready_at(const struct ready *r, int i)
{
	return i < 0 || i >= ready_count(r) ? NULL : &((const struct ready_item *)(const void *)r->item->data)[i];
}

int
ready_count_of(const struct ready *r, enum ready_group group, enum ready_ground ground)
{
	int n = 0;

	for (int i = 0; i < ready_count(r); i++)
		n += ready_at(r, i)->group == group && ready_at(r, i)->ground == ground && ready_at(r, i)->until == NONE;
	return n;
}
