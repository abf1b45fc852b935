/* The journal in words. */
#include "logbook/inside.h"
#include "logbook/transfer.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "exchange/cell.h"
#include "store/journal.h"

#include <math.h>
#include <string.h>

void
book_entry_clear(struct book_entry *e)
{
	g_clear_pointer(&e->who, g_free);
	g_clear_pointer(&e->device, g_free);
	g_clear_pointer(&e->what, g_free);
}

char *
book_entry_time(const struct book_entry *e)
{
	g_autoptr(GDateTime) at = g_date_time_new_from_unix_utc(e->at);

	return at ? g_date_time_format(at, "%Y-%m-%d %H:%M") : g_strdup("?");
}

static void
clear_entry(gpointer e)
{
	book_entry_clear(e);
}

static struct book_entry
entry_of(const struct entry *e)
{
	return (struct book_entry){ e->seq,    e->at,     g_strdup(e->who), g_strdup(e->device), g_strdup(e->what),
				    e->undoes, e->redoes, e->undone_by };
}

GArray *
book_history(struct book *b, int limit, GError **err)
{
	g_autoptr(GPtrArray) list = journal_list(b->db, limit, err);
	GArray *all;

	if (!list)
		return NULL;
	all = g_array_new(FALSE, FALSE, sizeof(struct book_entry));
	g_array_set_clear_func(all, clear_entry);
	for (guint i = 0; i < list->len; i++) {
		struct book_entry e = entry_of(list->pdata[i]);

		g_array_append_val(all, e);
	}
	return all;
}

gboolean
book_entry_hash(struct book *b, gint64 *seq, gint64 *at, char **hash, GError **err)
{
	g_autoptr(GPtrArray) list = journal_list(b->db, *seq == NONE ? 1 : 0, err);
	const struct entry *e = NULL;
	g_autoptr(GString) text = g_string_new(NULL);

	*at = 0;
	*hash = NULL;
	for (guint i = 0; list && i < list->len && !e; i++)
		if (*seq == NONE || ((const struct entry *)list->pdata[i])->seq == *seq)
			e = list->pdata[i];
	if (!list)
		return FALSE;
	if (!e)
		return *seq == NONE ? (*seq = 0, TRUE) : err_set(err, ERR_NOT_FOUND, "there is no entry %" G_GINT64_FORMAT, *seq);
	for (guint i = 0; i < sizeof e->hash; i++)
		g_string_append_printf(text, "%02x", e->hash[i]);
	*seq = e->seq;
	*at = e->at;
	*hash = g_strdup(text->str);
	return TRUE;
}

/* A field of a change, as CSV would have it. */
static char *
value_text(struct book *b, const struct field *f, const void *of)
{
	void *record = (void *)(guintptr)of;
	char buf[HOURS_TEXT];
	gint64 v;
	const char *name;

	if (f->kind == FIELD_TEXT)
		return *field_text(f, record) ? g_strdup_printf("\"%s\"", *field_text(f, record)) : g_strdup("nothing");
	if (f->kind == FIELD_REAL)
		return isnan(*field_real(f, record))
			     ? g_strdup("nothing")
			     : g_strdup(g_ascii_dtostr(buf, sizeof buf, *field_real(f, record)));
	v = *field_int(f, record);
	if (v == NONE)
		return g_strdup("nothing");
	switch (f->kind) {
	case FIELD_REF:
		name = book_name_of(b, f->ref, v);
		return name ? g_strdup(name) : book_key_text(v);
	case FIELD_KEY:
		return book_key_text(v);
	case FIELD_DATE:
		return g_strdup(day_iso(v, buf));
	case FIELD_HOURS:
		return g_strdup_printf("%s h", hours_exact(v, buf));
	case FIELD_CENTS:
		return g_strdup(money_exact(v, buf));
	case FIELD_YES:
		return g_strdup(v ? "yes" : "no");
	case FIELD_WORD:
		return g_strdup(word_of(f->words, v));
	case FIELD_YEARDAY:
	case FIELD_COUNT:
	case FIELD_REAL:
	case FIELD_TEXT:
		break;
	}
	return g_strdup_printf("%" G_GINT64_FORMAT, v);
}

struct telling {
	struct book *b;
	void (*say)(void *, const char *);
	void *user;
};

static void
tell_change(void *context, const struct change *c)
{
	struct telling *t = context;
	const struct record_type *type = record_type(c->record);
	g_autofree char *key = book_key_text(c->id);
	g_autoptr(GString) line = g_string_new(NULL);

	g_string_printf(line, "%s %s %s:", type->name, key,
			c->kind == CHANGE_ADDED     ? "added"
			: c->kind == CHANGE_REMOVED ? "taken out"
						    : "altered");
	for (int i = 1; i < type->n_fields; i++) {
		const struct field *f = &type->field[i];
		g_autofree char *was = NULL, *now = NULL;

		if (!(c->fields >> i & 1))
			continue;
		was = c->before ? value_text(t->b, f, c->before) : NULL;
		now = c->after ? value_text(t->b, f, c->after) : NULL;
		if (was && now)
			g_string_append_printf(line, " %s %s, was %s;", f->name, now, was);
		else if (strcmp(was ? was : now, "nothing"))
			g_string_append_printf(line, " %s %s;", f->name, was ? was : now);
	}
	g_string_truncate(line, line->len - 1);
	t->say(t->user, line->str);
}

gboolean
book_history_entry(struct book *b, gint64 seq, void (*say)(void *user, const char *line), void *user, GError **err)
{
	struct telling t = { b, say, user };

	return journal_changes(b->db, seq, tell_change, &t, err);
}

static gboolean
fill_entry(struct book *b, gint64 seq, struct book_entry *out, GError **err)
{
	g_autoptr(GArray) all = book_history(b, 0, err);

	for (guint i = 0; all && i < all->len; i++) {
		struct book_entry *e = &((struct book_entry *)(void *)all->data)[i];

		if (e->seq != seq)
			continue;
		*out = *e;
		memset(e, 0, sizeof *e); /* its texts are *out's now */
		return TRUE;
	}
	return all != NULL;
}

/* The command behind a chain of undo and redo, which is what people remember. */
static gboolean
fill_command(struct book *b, gint64 seq, struct book_entry *e, GError **err)
{
	while (fill_entry(b, seq, e, err)) {
		seq = e->redoes != NONE ? e->redoes : e->undoes;
		if (seq == NONE)
			return TRUE;
		book_entry_clear(e);
	}
	return FALSE;
}

gboolean
book_undo(struct book *b, struct book_entry *e, GError **err)
{
	struct entry_head head = { NULL, b->who.name, b->who.device, b->who.now };
	gint64 seq;

	return journal_undo(b->db, &head, &seq, err) && fill_command(b, seq, e, err);
}

gboolean
book_redo(struct book *b, struct book_entry *e, GError **err)
{
	struct entry_head head = { NULL, b->who.name, b->who.device, b->who.now };
	gint64 seq;

	return journal_redo(b->db, &head, &seq, err) && fill_command(b, seq, e, err);
}
