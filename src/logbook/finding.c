#include "logbook/finding_inside.h"

#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/photo.h"
#include "logbook/transfer.h"

#include <string.h>

static gboolean
same_boat(gint64 theirs, const struct finding *f, const char *what, GError **err)
{
	return theirs == f->boat || err_set(err, ERR_CONFLICT, "that %s is another boat's", what);
}

/* What it was found on: a task alone tells the fitting. */
static gboolean
settle_place(struct book *b, struct finding *f, GError **err)
{
	struct task t;
	struct fitting place;
	gboolean ok = TRUE;

	record_init(RECORD_TASK, &t);
	record_init(RECORD_FITTING, &place);
	if (f->task != NONE) {
		ok = row_get(b->db, RECORD_TASK, f->task, &t, err) && same_boat(t.boat, f, "task", err);
		f->fitting = f->fitting == NONE ? t.fitting : f->fitting;
	}
	if (ok && f->fitting == NONE)
		ok = err_set(err, ERR_INPUT, "on what? a finding wants a fitting, or a task at whose work it was found");
	ok = ok && row_get(b->db, RECORD_FITTING, f->fitting, &place, err) && same_boat(place.boat, f, "fitting", err);
	if (ok && place.retired == 1 && f->id == NONE)
		ok = err_set(err, ERR_CONFLICT,
			     "%s is not on this boat, by the log: splitpin fitting %s --fitted takes it on again", place.path,
			     place.path);
	record_clear(RECORD_TASK, &t);
	record_clear(RECORD_FITTING, &place);
	return ok;
}

static gboolean
settle_day(struct book *b, struct finding *f, GError **err)
{
	char d[DAY_TEXT], u[DAY_TEXT];
	struct outing o;
	gint64 built;
	gboolean ok = TRUE;

	record_init(RECORD_OUTING, &o);
	if (f->outing != NONE) {
		ok = row_get(b->db, RECORD_OUTING, f->outing, &o, err) && same_boat(o.boat, f, "outing", err);
		f->date = f->date == NONE ? o.date : f->date;
	}
	record_clear(RECORD_OUTING, &o);
	f->date = f->date == NONE ? b->who.today : f->date;
	if (ok && f->date > b->who.today)
		return err_set(err, ERR_INPUT, "%s lies ahead of today: a finding is recorded when it is seen",
			       day_iso(f->date, d));
	if (ok && f->until != NONE && f->until < f->date)
		return err_set(err, ERR_INPUT, "to be mended by %s, and found on %s: that is the wrong way round",
			       day_iso(f->until, u), day_iso(f->date, d));
	return ok && book_built(b, f->boat, &built, err) && built_by(built, f->date, err);
}

/* "bearing-roughness 2" into a form; *kind stays NULL for none. */
static gboolean
read_reading(struct book *b, const struct finding_form *f, struct measure_form *m, GError **err)
{
	g_autofree char *text = g_strstrip(g_strdup(f->measured ? f->measured : ""));
	char *value = text + strcspn(text, " \t");

	if (!*text)
		return TRUE;
	if (!*value)
		return err_set(err, ERR_INPUT, "measured: what was read, and what it reads: \"bearing-roughness 2\", not \"%.40s\"",
			       text);
	*value++ = '\0';
	m->kind = measure_kind(b, text, err);
	if (!m->kind)
		return FALSE;
	m->sure = f->sure;
	m->what.id = f->what.measurement;
	m->what.boat = f->what.boat;
	m->what.fitting = f->what.fitting;
	m->what.date = f->what.date == NONE ? b->who.today : f->what.date;
	m->what.as_read = g_strdup(g_strchug(value));
	return TRUE;
}

/* What was asked for by name, each once; every name must be a task of the boat that is wanted there. */
static gboolean
settle_makes_due(struct book *b, struct finding *f, const char *rule, GError **err)
{
	g_auto(GStrv) given = g_strsplit_set(f->makes_due ? f->makes_due : "", " ,", -1);
	g_autoptr(GString) all = g_string_new(rule ? rule : "");

	for (int i = 0; given[i]; i++) {
		g_auto(GStrv) there = g_strsplit(all->str, " ", -1);
		struct task t;
		gboolean ok;

		if (!*given[i] || g_strv_contains((const char *const *)there, given[i]))
			continue;
		if (!book_find_task(b, f->boat, given[i], &t, err))
			return err_prefix(err, "makes due: ");
		ok = t.retired != 1 || err_set(err, ERR_CONFLICT, "makes due: %s is not wanted on this boat", t.name);
		if (ok && !g_strv_contains((const char *const *)there, t.name))
			g_string_append_printf(all, "%s%s", all->len ? " " : "", t.name);
		record_clear(RECORD_TASK, &t);
		if (!ok)
			return FALSE;
	}
	g_free(f->makes_due);
	f->makes_due = all->len ? g_strdup(all->str) : NULL;
	return TRUE;
}

static void
take_proposal(struct finding *f, const struct finding_proposal *p)
{
	f->proposed = p->level;
	f->level = f->level == NONE ? p->level : f->level;
	g_free(f->raised);
	f->raised = g_strdup(p->raised);
	g_free(f->rule);
	f->rule = g_strdup(p->rule);
	if (!f->allowed)
		f->allowed = g_strdup(p->allowed);
}

static gboolean
write_finding(struct book *b, struct finding_form *form, struct measure_form *m, GArray *photos, GError **err)
{
	struct finding *f = &form->what;

	if (m->kind && !book_put(b, RECORD_MEASUREMENT, &m->what, err))
		return FALSE;
	f->measurement = m->kind ? m->what.id : f->measurement;
	if (!book_put(b, RECORD_FINDING, f, err))
		return FALSE;
	for (guint i = 0; i < photos->len; i++) {
		struct photo *p = &((struct photo *)(void *)photos->data)[i];

		p->finding = f->id;
		if (!book_put(b, RECORD_PHOTO, p, err))
			return FALSE;
	}
	return !form->also || form->also(b, f->id, form->user, err);
}

/* How the one that is corrected ended, and with what reading, stays. */
static gboolean
take_over(struct book *b, struct finding *f, GError **err)
{
	struct finding was;
	gboolean ok;

	if (f->id == NONE)
		return TRUE;
	record_init(RECORD_FINDING, &was);
	ok = row_get(b->db, RECORD_FINDING, f->id, &was, err) && same_boat(was.boat, f, "finding", err);
	if (ok) {
		f->measurement = was.measurement;
		f->mended = was.mended;
		f->service = was.service;
		g_free(f->left_as);
		f->left_as = g_steal_pointer(&was.left_as);
	}
	if (ok && f->mended != NONE && f->date != NONE && f->date > f->mended)
		ok = err_set(err, ERR_CONFLICT, "it was mended before that day");
	record_clear(RECORD_FINDING, &was);
	return ok;
}

/* Everything but the writing. */
static gboolean
settle(struct book *b, struct finding_form *form, struct measure_form *m, struct finding_proposal *p, GError **err)
{
	struct measure_limits limits;
	struct condition_out judged;

	return take_over(b, &form->what, err) && settle_place(b, &form->what, err) && settle_day(b, &form->what, err)
	    && read_reading(b, form, m, err)
	    && (!m->kind || book_measure_ready(b, m, &limits, &judged, err) || err_prefix(err, "measured: "))
	    && finding_propose(b, &form->what, m->kind ? m : NULL, p, err);
}

/* All of it but the writing: what was read into m, the photos to be cleared; NULL and *err. */
static GArray *
make_ready(struct book *b, struct finding_form *form, struct measure_form *m, struct finding_proposal *p, GError **err)
{
	struct finding *f = &form->what;
	GArray *photos = NULL;

	*p = (struct finding_proposal){ .level = LEVEL_MEND };
	record_init(RECORD_MEASUREMENT, &m->what);
	if (!f->who)
		f->who = g_strdup(b->who.name);
	if (settle(b, form, m, p, err) && settle_makes_due(b, f, p->makes_due, err))
		photos = photos_read(b, f->boat, form->photos, err);
	if (photos)
		take_proposal(f, p);
	return photos;
}

gboolean
book_put_finding(struct book *b, struct finding_form *form, struct finding_proposal *p, GError **err)
{
	struct measure_form m = { .kind = NULL };
	g_autoptr(GArray) photos = make_ready(b, form, &m, p, err);
	gboolean ok = photos && write_finding(b, form, &m, photos, err);

	record_clear(RECORD_MEASUREMENT, &m.what);
	return ok;
}

gboolean
book_finding(struct book *b, struct finding_form *form, struct finding_proposal *p, GError **err)
{
	struct measure_form m = { .kind = NULL };
	const struct finding *f = &form->what;
	g_autoptr(GArray) photos = make_ready(b, form, &m, p, err);
	gboolean ok = photos && book_begin(b, err)
		   && book_end(b, write_finding(b, form, &m, photos, err), err, "%s found: %s (%s)%s",
			       book_name_of(b, RECORD_FITTING, f->fitting), f->words, word_of(&words_level, f->level),
			       f->mended == NONE ? "" : ", mended");

	record_clear(RECORD_MEASUREMENT, &m.what);
	return ok;
}

gboolean
book_propose(struct book *b, const struct finding_form *form, struct finding_proposal *p, GError **err)
{
	struct measure_form m = { .kind = NULL };
	gboolean ok;

	record_init(RECORD_MEASUREMENT, &m.what);
	ok = read_reading(b, form, &m, NULL) && m.kind && measure_parse(m.kind, m.what.as_read, &m.what.value, NULL);
	if (ok)
		m.what.what = g_strdup(m.kind->what);
	ok = finding_propose(b, &form->what, ok ? &m : NULL, p, err);
	record_clear(RECORD_MEASUREMENT, &m.what);
	return ok;
}

/* The latest work since it was found, on a task that it asked for, or at which it was found; NONE. */
static gboolean
work_since(struct book *b, const struct finding *f, gint64 day, gint64 *service, GError **err)
{
	g_auto(GStrv) name = g_strsplit(f->makes_due ? f->makes_due : "", " ", -1);
	gint64 latest = NONE;

	*service = NONE;
	for (int i = -1; i < 0 || name[i]; i++) {
		gint64 task = i < 0 ? f->task : book_key_of(b, SQL_TASK_BY_NAME, f->boat, name[i]);
		struct cells *c;
		g_autoptr(GArray) done = NULL;
		const struct service *s;

		if (task == NONE)
			continue;
		c = cells_open(b->db, SQL_SERVICES_BETWEEN);
		cells_bind(c, 1, task);
		cells_bind(c, 2, f->date);
		cells_bind(c, 3, day);
		done = book_rows(c, RECORD_SERVICE, err);
		if (!done)
			return FALSE;
		s = (const void *)done->data;
		for (guint k = 0; k < done->len; k++) {
			if (s[k].outcome == OUTCOME_BAD || s[k].outcome == OUTCOME_NOT_SEEN || s[k].date <= latest)
				continue;
			latest = s[k].date;
			*service = s[k].id;
		}
	}
	return TRUE;
}

gboolean
book_put_mend(struct book *b, struct finding *f, gint64 day, const char *left_as, GError **err)
{
	char d[DAY_TEXT], t[DAY_TEXT];

	if (f->mended != NONE)
		return err_set(err, ERR_CONFLICT, "that was mended on %s already: --reopen opens it again", day_iso(f->mended, d));
	if (!left_as || !left_as[strspn(left_as, " \t\n")])
		return err_set(err, ERR_INPUT, "how was it left? a few words, or a reading: nothing said is never good");
	if (day > b->who.today)
		return err_set(err, ERR_INPUT, "%s lies ahead of today, %s", day_iso(day, d), day_iso(b->who.today, t));
	if (day < f->date)
		return err_set(err, ERR_INPUT, "%s comes before the day on which it was found, %s", day_iso(day, d),
			       day_iso(f->date, t));
	if (!work_since(b, f, day, &f->service, err))
		return FALSE;
	f->mended = day;
	g_free(f->left_as);
	f->left_as = g_strdup(left_as);
	return book_put(b, RECORD_FINDING, f, err);
}

gboolean
book_mend(struct book *b, struct finding *f, gint64 day, const char *left_as, GError **err)
{
	return book_begin(b, err)
	    && book_end(b, book_put_mend(b, f, day, left_as, err), err, "mended: %s, left as %s", f->words, left_as);
}

gboolean
book_reopen(struct book *b, struct finding *f, GError **err)
{
	if (f->mended == NONE)
		return err_set(err, ERR_CONFLICT, "that is open");
	f->mended = f->service = NONE;
	g_clear_pointer(&f->left_as, g_free);
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_FINDING, f, err), err, "open again: %s", f->words);
}

/* The rows of a kind that stand under a finding. */
static gboolean
drop_under(struct book *b, enum record r, enum sql_id sql, gint64 finding, GError **err)
{
	g_autoptr(GArray) all = book_gather(b, r, sql, finding, err);
	gsize size = record_type(r)->size;

	for (guint i = 0; all && i < all->len; i++)
		if (!row_drop(b->db, r, *field_int(&record_type(r)->field[0], all->data + i * size), err))
			return FALSE;
	return all != NULL;
}

gboolean
book_drop_finding(struct book *b, const struct finding *f, GError **err)
{
	return book_begin(b, err)
	    && book_end(b,
			drop_under(b, RECORD_PHOTO, SQL_PHOTOS_OF_FINDING, f->id, err)
				&& drop_under(b, RECORD_WAIVER, SQL_WAIVERS_OF_FINDING, f->id, err)
				&& row_drop(b->db, RECORD_FINDING, f->id, err),
			err, "finding taken out: %s", f->words);
}

static gint
worst_first(gconstpointer x, gconstpointer y)
{
	const struct finding *a = x, *b = y;

	if ((a->mended == NONE) != (b->mended == NONE))
		return a->mended == NONE ? -1 : 1;
	if (a->mended != NONE)
		return (a->mended < b->mended) - (a->mended > b->mended);
	if (a->level != b->level)
		return a->level < b->level ? -1 : 1;
	return (a->date > b->date) - (a->date < b->date);
}

GArray *
book_findings(struct book *b, gint64 boat, gboolean all, GError **err)
{
	GArray *list = all ? book_records(b, RECORD_FINDING, boat, err)
			   : book_gather(b, RECORD_FINDING, SQL_FINDINGS_OPEN, boat, err);

	if (list)
		g_array_sort(list, worst_first);
	return list;
}

GArray *
book_findings_for(struct book *b, gint64 boat, const char *task, GError **err)
{
	GArray *list = book_findings(b, boat, FALSE, err);

	for (guint i = list ? list->len : 0; i-- > 0;) {
		const char *names = ((const struct finding *)(const void *)list->data)[i].makes_due;
		g_auto(GStrv) name = g_strsplit(names ? names : "", " ", -1);

		if (!g_strv_contains((const char *const *)name, task))
			g_array_remove_index(list, i);
	}
	return list;
}

static gboolean
none_or_several(const char *key, int n, GError **err)
{
	g_autofree char *shown = text_quoted(key);

	if (n)
		return err_set(err, ERR_INPUT, "%d findings have keys that begin or end with %s: more letters are wanted", n,
			       shown);
	return err_set(err, ERR_NOT_FOUND, "%s is no finding's key: splitpin found --list shows them", shown);
}

gboolean
book_find_finding(struct book *b, gint64 boat, const char *key, struct finding *f, GError **err)
{
	g_autofree char *low = g_ascii_strdown(key, -1);
	g_autoptr(GArray) all = book_findings(b, boat, TRUE, err);
	struct finding *hit = NULL;
	int n = 0;

	record_init(RECORD_FINDING, f);
	if (!all)
		return FALSE;
	for (guint i = 0; *low && i < all->len; i++) {
		struct finding *one = &((struct finding *)(void *)all->data)[i];
		g_autofree char *letters = book_key_text(one->id);

		if (!g_str_has_prefix(letters, low) && !g_str_has_suffix(letters, low))
			continue;
		hit = one;
		n++;
	}
	if (n != 1)
		return none_or_several(key, n, err);
	*f = *hit;
	record_init(RECORD_FINDING, hit); /* its texts are *f's now */
	return TRUE;
}
