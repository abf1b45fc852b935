#include "logbook/corrections.h"

#include "logbook/inside.h"

#include <math.h>
#include <string.h>

enum { SECONDS_A_DAY = 86400 };

struct telling {
	const struct book_entry *entry;
	book_change *each;
	void *user;
};

static void
tell(void *context, const struct change *c)
{
	struct telling *t = context;

	t->each(t->user, t->entry, c);
}

gboolean
book_each_change(struct book *b, book_change *each, void *user, GError **err)
{
	g_autoptr(GArray) all = book_history(b, 0, err);
	gboolean ok = all != NULL;

	for (guint i = ok ? all->len : 0; ok && i-- > 0;) {
		const struct book_entry *e = &((const struct book_entry *)(const void *)all->data)[i];
		struct telling t = { e, each, user };

		if (e->undone_by == NONE && e->undoes == NONE && e->redoes == NONE)
			ok = journal_changes(b->db, e->seq, tell, &t, err);
	}
	return ok;
}

gboolean
corrections_count(enum record r)
{
	static const enum record counted[] = {
		RECORD_ENGINE,	RECORD_METER,	RECORD_PART,	RECORD_STAY,	    RECORD_SEASON,
		RECORD_OUTING,	RECORD_SERVICE, RECORD_FINDING, RECORD_MEASUREMENT, RECORD_HAPPENING,
		RECORD_WAIVER,	RECORD_SKIP,	RECORD_PHOTO,	RECORD_REMOVAL,
	};

	for (guint i = 0; i < G_N_ELEMENTS(counted); i++)
		if (counted[i] == r)
			return TRUE;
	return FALSE;
}

static gboolean
is_known(const struct field *f, const void *of)
{
	void *record = (void *)(guintptr)of;

	if (f->kind == FIELD_TEXT)
		return *field_text(f, record) != NULL;
	if (f->kind == FIELD_REAL)
		return !isnan(*field_real(f, record));
	return *field_int(f, record) != NONE;
}

/* Hours that follow from a meter's reading are worked out anew whenever a row before them comes in. */
static gboolean
is_worked_out(enum record r, const struct field *f)
{
	return (r == RECORD_OUTING && (!strcmp(f->name, "hours") || !strcmp(f->name, "meter") || !strcmp(f->name, "trip")))
	    || (r == RECORD_SERVICE && (!strcmp(f->name, "after") || !strcmp(f->name, "meter")))
	    || (r == RECORD_FINDING && !strcmp(f->name, "service"));
}

/* Of a season that is or was only intended: it came true, or was put off. */
static gboolean
is_intended(struct book *b, const struct change *c)
{
	struct season s;
	gboolean planned;

	if (c->record != RECORD_SEASON)
		return FALSE;
	record_init(RECORD_SEASON, &s);
	planned = ((const struct season *)c->before)->planned == 1
	       || (row_get(b->db, RECORD_SEASON, c->id, &s, NULL) && s.planned == 1);
	record_clear(RECORD_SEASON, &s);
	return planned;
}

/* Hours that were typed are no less a record than a reading. */
static gboolean
hours_typed(struct book *b, const struct change *c, const struct field *f)
{
	struct outing o;
	gboolean typed;

	if (c->record != RECORD_OUTING || strcmp(f->name, "hours"))
		return FALSE;
	record_init(RECORD_OUTING, &o);
	typed = row_get(b->db, RECORD_OUTING, c->id, &o, NULL) && o.reading == NONE;
	record_clear(RECORD_OUTING, &o);
	return typed;
}

static gboolean
is_correction(struct book *b, const struct change *c)
{
	const struct record_type *type = record_type(c->record);

	if (is_intended(b, c))
		return FALSE;
	for (int i = 1; i < type->n_fields; i++)
		if (c->fields >> i & 1 && is_known(&type->field[i], c->before)
		    && (!is_worked_out(c->record, &type->field[i]) || hours_typed(b, c, &type->field[i])))
			return TRUE;
	return FALSE;
}

struct counting {
	struct book *b;
	struct corrections *sum;
};

static void
count_added(struct corrections *sum, const struct book_entry *e, const struct change *c)
{
	const struct field *date = record_field(c->record, "date");
	gint64 day = date ? *field_int(date, (void *)(guintptr)c->after) : NONE;

	if (day == NONE)
		return;
	if (e->at / SECONDS_A_DAY - day <= SOON_DAYS)
		sum->soon[c->record]++;
	else
		sum->late[c->record]++;
}

static void
count(void *user, const struct book_entry *e, const struct change *c)
{
	const struct counting *counting = user;
	struct corrections *sum = counting->sum;

	if (!corrections_count(c->record))
		return;
	switch (c->kind) {
	case CHANGE_ADDED:
		count_added(sum, e, c);
		break;
	case CHANGE_ALTERED:
		sum->altered[c->record] += is_correction(counting->b, c);
		break;
	case CHANGE_REMOVED:
		sum->removed[c->record]++;
		break;
	}
}

gboolean
book_corrections(struct book *b, struct corrections *c, GError **err)
{
	g_autoptr(GArray) all = book_history(b, 0, err);

	struct counting counting = { b, c };

	*c = (struct corrections){ 0 };
	for (guint i = 0; all && i < all->len; i++) {
		const struct book_entry *e = &((const struct book_entry *)(const void *)all->data)[i];

		c->entries++;
		c->undone += e->undone_by != NONE && e->undoes == NONE && e->redoes == NONE;
	}
	return all && book_each_change(b, count, &counting, err);
}
