#include "logbook/stores_cost.h"

#include "base/amount.h"
#include "base/date.h"
#include "exchange/csv_out.h"
#include "exchange/json.h"
#include "logbook/inside.h"
#include "logbook/transfer.h"

#include <math.h>
#include <string.h>

const char *const cost_words[4] = { "season", "fitting", "hour", "year" };

/* All that the sums are made of. */
struct gathering {
	const struct boat *boat;
	struct costs *out;
	struct stores *stores;
	GArray *tasks, *services, *seasons, *outings;
	gint64 since; /* day; NONE */
};

void
costs_clear(struct costs *c)
{
	g_clear_pointer(&c->lines, g_array_unref);
}

const struct cost_line *
costs_line(const struct costs *c, guint i)
{
	return i < c->lines->len ? &g_array_index(c->lines, struct cost_line, i) : NULL;
}

gint64
cost_an_hour(const struct cost_line *l)
{
	gint64 cents = l->work + l->parts, seconds = l->hours;

	if (seconds <= 0)
		return NONE;
	/* Half up, also of money back. */
	return (cents * 3600 * 2 + seconds - (cents < 0 ? 2 * seconds - 1 : 0)) / (2 * seconds);
}

/* The haul-out of a calendar year: on record, or the usual day. */
static gint64
haul_out_in(const struct gathering *g, int year)
{
	gint64 day = NONE;
	int y, m, d;

	for (guint i = 0; i < g->seasons->len; i++) {
		const struct season *s = &g_array_index(g->seasons, struct season, i);

		if (s->haul_out == NONE)
			continue;
		day_to_ymd(s->haul_out, &y, &m, &d);
		if (y == year)
			day = s->haul_out;
	}
	if (day == NONE && g->boat->haul_out != NONE)
		day = yearday_in(g->boat->haul_out, year);
	return day == NONE ? day_from_ymd(year, 12, 31) : day;
}

static int
year_of(const struct gathering *g, gint64 day)
{
	int y, m, d;

	day_to_ymd(day, &y, &m, &d);
	if (g->out->by == COST_YEAR)
		return y;
	return day > haul_out_in(g, y) ? y + 1 : y;
}

static struct cost_line *
line_of(struct gathering *g, gint64 day, gint64 fitting, const char *currency)
{
	struct cost_line new = { .fitting = NONE };

	if (g->out->by == COST_FITTING)
		new.fitting = fitting;
	else
		new.year = year_of(g, day);
	g_strlcpy(new.currency, currency ? currency : "", sizeof new.currency);
	for (guint i = 0; i < g->out->lines->len; i++) {
		struct cost_line *l = &g_array_index(g->out->lines, struct cost_line, i);

		if (l->year == new.year && l->fitting == new.fitting && !strcmp(l->currency, new.currency))
			return l;
	}
	g_array_append_val(g->out->lines, new);
	return &g_array_index(g->out->lines, struct cost_line, g->out->lines->len - 1);
}

static const struct task *
task_of(const struct gathering *g, gint64 id)
{
	for (guint i = 0; i < g->tasks->len; i++)
		if (g_array_index(g->tasks, struct task, i).id == id)
			return &g_array_index(g->tasks, struct task, i);
	return NULL;
}

static gboolean
wants(const struct gathering *g, gint64 day)
{
	return g->since == NONE || day >= g->since;
}

static void
add_services(struct gathering *g)
{
	for (guint i = 0; i < g->services->len; i++) {
		const struct service *s = &g_array_index(g->services, struct service, i);
		const struct task *t = task_of(g, s->task);

		if (s->cost != NONE && wants(g, s->date))
			line_of(g, s->date, t ? t->fitting : NONE, s->currency)->work += s->cost;
	}
}

/* What a taking was for: its service's task, or the task that it names. */
static gint64
fitting_of(const struct gathering *g, const struct taken *t)
{
	for (guint i = 0; t->service != NONE && i < g->services->len; i++) {
		const struct service *s = &g_array_index(g->services, struct service, i);

		if (s->id == t->service)
			return task_of(g, s->task) ? task_of(g, s->task)->fitting : NONE;
	}
	for (guint i = 0; t->remark && i < g->tasks->len; i++)
		if (!strcmp(g_array_index(g->tasks, struct task, i).name, t->remark))
			return g_array_index(g->tasks, struct task, i).fitting;
	return NONE;
}

static void
add_taken(struct gathering *g)
{
	g_autoptr(GArray) shares = stores_shares(g->stores);

	for (guint i = 0; i < g->stores->taken->len; i++) {
		const struct taken *t = &g_array_index(g->stores->taken, struct taken, i);
		const struct lot *l = stores_lot_of(g->stores, t->lot);
		gint64 cents = g_array_index(shares, gint64, i);
		struct cost_line *line;

		if ((t->boat != NONE && t->boat != g->boat->id) || !wants(g, t->date))
			continue;
		if (cents == NONE) {
			g->out->unknown++;
			continue;
		}
		line = line_of(g, t->date, fitting_of(g, t), l->currency);
		*(t->boat == NONE ? &line->lost : &line->parts) += cents;
	}
}

/* By receipts: what was paid for, used or not. */
static void
add_lots(struct gathering *g)
{
	for (guint i = 0; i < g->stores->lots->len; i++) {
		const struct lot *l = stores_lot(g->stores, i);
		gint64 day = l->arrived == NONE ? l->ordered : l->arrived;

		if (day != NONE && !wants(g, day))
			continue;
		if (l->price == NONE)
			g->out->unknown++;
		else if (day != NONE)
			line_of(g, day, NONE, l->currency)->parts += l->price;
	}
}

static void
add_hours(struct gathering *g)
{
	for (guint i = 0; i < g->outings->len; i++) {
		const struct outing *o = &g_array_index(g->outings, struct outing, i);
		int year = o->hours == NONE || o->engine == NONE || !wants(g, o->date) ? 0 : year_of(g, o->date);

		for (guint k = 0; year && k < g->out->lines->len; k++) {
			struct cost_line *l = &g_array_index(g->out->lines, struct cost_line, k);

			l->hours += l->year == year ? o->hours : 0;
		}
	}
}

static int
compare(const void *x, const void *y)
{
	const struct cost_line *a = x, *b = y;
	gint64 m = a->work + a->parts, n = b->work + b->parts;
	int currency = strcmp(a->currency, b->currency);

	if (a->year != b->year)
		return a->year - b->year;
	if (currency)
		return currency;
	if (m != n)
		return m < n ? 1 : -1;
	return (a->fitting > b->fitting) - (a->fitting < b->fitting);
}

gboolean
book_costs(struct book *b, const struct boat *boat, enum cost_by by, gint64 since, struct costs *out, GError **err)
{
	struct gathering g = { .boat = boat, .since = since, .out = out };
	gboolean ok;

	*out = (struct costs){ by, g_array_new(FALSE, FALSE, sizeof(struct cost_line)), 0 };
	g.stores = book_stores(b, err);
	g.tasks = g.stores ? book_records(b, RECORD_TASK, boat->id, err) : NULL;
	g.services = g.tasks ? book_records(b, RECORD_SERVICE, boat->id, err) : NULL;
	g.seasons = g.services ? book_records(b, RECORD_SEASON, boat->id, err) : NULL;
	g.outings = g.seasons ? book_records(b, RECORD_OUTING, boat->id, err) : NULL;
	ok = g.outings != NULL;
	if (ok) {
		add_services(&g);
		if (by == COST_YEAR)
			add_lots(&g);
		else
			add_taken(&g);
		add_hours(&g);
		g_array_sort(out->lines, compare);
	} else {
		costs_clear(out);
	}
	stores_free(g.stores);
	g_clear_pointer(&g.tasks, g_array_unref);
	g_clear_pointer(&g.services, g_array_unref);
	g_clear_pointer(&g.seasons, g_array_unref);
	g_clear_pointer(&g.outings, g_array_unref);
	return ok;
}

char *
cost_name(struct book *b, const struct cost_line *l)
{
	const char *path = l->fitting == NONE ? NULL : book_name_of(b, RECORD_FITTING, l->fitting);

	return l->year ? g_strdup_printf("%d", l->year) : g_strdup(path ? path : "no fitting");
}

static void
csv_cents(struct csv_out *csv, gint64 cents)
{
	char m[MONEY_TEXT];

	csvout_number(csv, money_exact(cents, m));
}

char *
costs_csv(struct book *b, const struct costs *c)
{
	static const char *const header[] = { "", "currency", "work", "parts", "total", "lost", "hours", "an-hour" };
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	struct csv_out *csv = csvout_new(&sink, NULL);

	csvout_text(csv, c->by == COST_HOUR ? cost_words[COST_SEASON] : cost_words[c->by]);
	csvout_names(csv, header + 1, G_N_ELEMENTS(header) - 1);
	for (guint i = 0; i < c->lines->len; i++) {
		const struct cost_line *l = costs_line(c, i);
		g_autofree char *name = cost_name(b, l);
		char h[HOURS_TEXT];

		csvout_text(csv, l->year || l->fitting != NONE ? name : NULL);
		csvout_text(csv, *l->currency ? l->currency : NULL);
		csv_cents(csv, l->work);
		csv_cents(csv, l->parts);
		csv_cents(csv, l->work + l->parts);
		csv_cents(csv, l->lost);
		csvout_number(csv, hours_exact(l->year ? l->hours : NONE, h));
		csv_cents(csv, cost_an_hour(l));
		csvout_row(csv);
	}
	csvout_close(csv, NULL);
	return g_string_free(text, FALSE);
}

static void
json_cents(struct json_out *j, const char *name, gint64 cents)
{
	char m[MONEY_TEXT];

	jsonout_text(j, name, cents == NONE ? NULL : money_exact(cents, m));
}

char *
costs_json(struct book *b, const struct costs *c, const char *boat)
{
	struct json_out *j = jsonout_new();
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);

	jsonout_next(j);
	jsonout_text(j, "boat", boat);
	jsonout_text(j, "by", cost_words[c->by]);
	jsonout_int(j, "without-price", c->unknown);
	jsonout_open_array(j, "costs");
	for (guint i = 0; i < c->lines->len; i++) {
		const struct cost_line *l = costs_line(c, i);
		g_autofree char *name = cost_name(b, l);

		jsonout_open_object(j, NULL);
		jsonout_text(j, c->by == COST_HOUR ? "season" : cost_words[c->by], l->year || l->fitting != NONE ? name : NULL);
		jsonout_text(j, "currency", *l->currency ? l->currency : NULL);
		json_cents(j, "work", l->work);
		json_cents(j, "parts", l->parts);
		json_cents(j, "total", l->work + l->parts);
		json_cents(j, "lost", l->lost);
		jsonout_real(j, "hours", l->year ? (double)l->hours / 3600 : (double)NAN);
		json_cents(j, "an-hour", cost_an_hour(l));
		jsonout_close(j);
	}
	jsonout_close(j);
	jsonout_write(j, &sink, TRUE, NULL);
	jsonout_free(j);
	return g_string_free(text, FALSE);
}
