/* What the due list makes of findings: one that is open asks for its tasks at once, until they were done. */
#include "logbook/due_list.h"

#include "logbook/inside.h"

#include "base/date.h"
#include "exchange/json.h"

#include <string.h>

static struct due_line *
line_named(struct due_list *l, const char *name)
{
	struct due_line *line = (void *)l->lines->data;

	for (guint i = 0; i < l->lines->len; i++)
		if (!strcmp(line[i].name, name))
			return &line[i];
	return NULL;
}

/* Findings come in the order of their days: the first that still asks is since when. */
static void
ask(struct due_list *l, struct due_finding *f, const char *names)
{
	g_auto(GStrv) name = g_strsplit(names, " ", -1);

	for (int i = 0; name[i]; i++) {
		struct due_line *d = line_named(l, name[i]);

		if (!d || !due_asks(&d->in, f->date))
			continue;
		d->in.asked = d->in.asked == NONE ? f->date : d->in.asked;
		f->task = d->id;
		g_array_append_vals(l->found, f, 1);
	}
}

static gint
by_task(gconstpointer x, gconstpointer y)
{
	const struct due_finding *a = x, *b = y;

	if (a->task != b->task)
		return a->task < b->task ? -1 : 1;
	return (a->date > b->date) - (a->date < b->date);
}

/* The array no longer moves: give each line its part of it. */
static void
share_out(struct due_list *l)
{
	const struct due_finding *f;

	g_array_sort(l->found, by_task);
	f = (const void *)l->found->data;
	for (guint i = 0; i < l->lines->len; i++) {
		struct due_line *d = &((struct due_line *)(void *)l->lines->data)[i];

		for (guint k = 0; k < l->found->len; k++)
			if (f[k].task == d->id) {
				d->found = d->n_found ? d->found : &f[k];
				d->n_found++;
			}
	}
}

gboolean
due_read_found(struct book *b, struct due_list *l, gint64 boat, GError **err)
{
	struct cells *c = cells_open(b->db, SQL_DUE_FOUND);

	cells_bind(c, 1, boat);
	while (cells_next(c)) {
		struct due_finding f = { cells_int(c, 0), NONE, cells_int(c, 1), cells_word(c, 2, &words_level),
					 due_keep(l, c, 3) };
		const char *names = cells_text(c, 4);

		if (names && f.date <= l->year.at)
			ask(l, &f, names);
	}
	if (l->found->len)
		share_out(l);
	return cells_close(c, err);
}

char *
due_finding_words(const struct due_finding *f)
{
	char day[16];

	return g_strdup_printf("found on %s: %s", day_words(f->date, day), f->words);
}

void
due_found_json(struct json_out *j, const struct due_line *d)
{
	jsonout_open_array(j, "asked-by");
	for (int i = 0; i < d->n_found; i++) {
		g_autofree char *key = book_key_text(d->found[i].id);
		char day[DAY_TEXT];

		jsonout_open_object(j, NULL);
		jsonout_text(j, "finding", key);
		jsonout_text(j, "date", day_iso(d->found[i].date, day));
		jsonout_text(j, "level", word_of(&words_level, d->found[i].level));
		jsonout_text(j, "words", d->found[i].words);
		jsonout_close(j);
	}
	jsonout_close(j);
}
