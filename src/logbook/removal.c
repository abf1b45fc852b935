#include "logbook/job_inside.h"

#include "base/err.h"
#include "base/key.h"
#include "base/text.h"
#include "logbook/finding.h"
#include "logbook/photo.h"
#include "logbook/removal_parse.h"

#include <string.h>

void
removal_form_clear(struct removal_form *f)
{
	record_clear(RECORD_REMOVAL, &f->what);
	g_clear_pointer(&f->side, g_free);
}

/* What a line is written with. */
struct writing {
	const struct job *job;
	struct removal_form *f;
	GArray *files; /* struct photo */
	struct job_opening opening;
	const struct fitting *drive; /* that is off by it; NULL: none */
};

static gboolean
put_files(struct book *b, GArray *files, gint64 removal, GError **err)
{
	for (guint i = 0; i < files->len; i++) {
		struct photo *p = &((struct photo *)(void *)files->data)[i];

		p->removal = removal;
		if (!book_put(b, RECORD_PHOTO, p, err))
			return FALSE;
	}
	return TRUE;
}

static gboolean
write_line(struct book *b, struct writing *w, GError **err)
{
	struct removal *r = &w->f->what;

	w->f->side = w->drive ? job_drive_side(&w->opening, w->drive) : NULL;
	return book_put(b, RECORD_REMOVAL, r, err) && put_files(b, w->files, r->id, err)
	    && job_record_drive_off(b, w->job, &w->opening, w->drive, &w->f->drive_off, err);
}

/* Within the transaction of its finding. */
static gboolean
write_with_finding(struct book *b, gint64 finding, void *user, GError **err)
{
	struct writing *w = user;

	w->f->finding = finding;
	return write_line(b, w, err) && job_put_aim(b, w->job, NONE, finding, err);
}

gboolean
job_find_wanting(struct book *b, const struct job *job, const struct removal *r, struct finding_form *f, GError **err)
{
	struct finding_proposal p;
	gboolean ok;

	f->what.boat = job->boat;
	f->what.fitting = r->fitting != NONE ? r->fitting : book_key_of(b, SQL_FITTING_BY_PATH, job->boat, "boat");
	f->what.level = LEVEL_HOLD;
	f->what.remark = g_strdup_printf("job %s, line %d%s%s", job->name, (int)r->no, r->why ? ": " : "", r->why ? r->why : "");
	ok = book_finding(b, f, &p, err);
	finding_proposal_clear(&p);
	record_clear(RECORD_FINDING, &f->what);
	return ok;
}

static gboolean
find_wanting(struct book *b, struct writing *w, GError **err)
{
	const struct removal *r = &w->f->what;
	struct finding_form f = { .also = write_with_finding, .user = w };
	g_autofree char *words = removal_words(r);

	record_init(RECORD_FINDING, &f.what);
	f.what.words = g_strdup_printf(r->state == REMOVAL_MISSING ? "missing as found: %s" : "left over: %s", words);
	return job_find_wanting(b, w->job, r, &f, err);
}

static gboolean
settle_fitting(struct book *b, struct writing *w, GError **err)
{
	struct removal *r = &w->f->what;
	struct fitting f;
	gboolean wanting = r->state == REMOVAL_MISSING || r->state == REMOVAL_EXTRA;

	if (w->f->fitting) {
		if (!book_find_fitting(b, w->job->boat, w->f->fitting, &f, err))
			return FALSE;
		r->fitting = f.id;
		record_clear(RECORD_FITTING, &f);
	}
	if (r->fitting == NONE)
		r->fitting = w->opening.fitting;
	/* Nobody knows of what: it is the boat's, rather than not written down. */
	if (r->fitting == NONE && wanting)
		r->fitting = book_key_of(b, SQL_FITTING_BY_PATH, w->job->boat, "boat");
	return !wanting || r->fitting != NONE
	    || err_set(err, ERR_INPUT,
		       "of what is it? what is missing or left over is a finding on a fitting: --fitting names it");
}

/* What a line like the last one does not say is as there. */
static void
take_over(struct removal *r, const struct removal *last)
{
	r->count = r->count == NONE ? last->count : r->count;
	r->kind = r->kind == REMOVAL_PART || r->kind == REMOVAL_SETTING ? last->kind : r->kind;
	if (r->state == REMOVAL_REUSE && last->state == REMOVAL_RENEW)
		r->state = last->state;
	r->what = r->what ? r->what : g_strdup(last->what);
	r->size = r->size ? r->size : g_strdup(last->size);
	r->tray = r->tray ? r->tray : g_strdup(last->tray);
	r->orientation = r->orientation ? r->orientation : g_strdup(last->orientation);
	r->fitting = r->fitting == NONE ? last->fitting : r->fitting;
}

/* The last line that something came off by. */
static gboolean
repeat(const GArray *lines, struct removal *r, GError **err)
{
	for (guint i = lines->len; i-- > 0;) {
		const struct removal *last = &((const struct removal *)(const void *)lines->data)[i];

		if (last->kind == REMOVAL_SETTING && last->as_found == NULL)
			continue;
		take_over(r, last);
		return TRUE;
	}
	return err_set(err, ERR_NOT_FOUND, "nothing is on the list that could be repeated");
}

static gboolean
settle_line(struct book *b, const struct job *job, struct removal_form *f, GError **err)
{
	g_autoptr(GArray) lines = job_removals(b, job->id, err);
	struct removal *r = &f->what;

	if (!lines || (f->again && !repeat(lines, r, err)))
		return FALSE;
	if (!r->what)
		return err_set(err, ERR_INPUT, "what came off? \"6 bolts 5/8 tray 2\", \"trim angle 3/8 in proud\"");
	if (r->count != NONE && (r->count < 1 || r->count > 9999))
		return err_set(err, ERR_INPUT, "%" G_GINT64_FORMAT " came off: that is no count", r->count);
	r->state = f->left_over ? REMOVAL_EXTRA : r->state;
	r->job = job->id;
	r->off = b->who.today;
	r->no = lines->len ? ((const struct removal *)(const void *)lines->data)[lines->len - 1].no + 1 : 1;
	r->who = g_strdup(f->who ? f->who : b->who.name);
	r->remark = g_strdup(f->remark);
	return TRUE;
}

static gboolean
write_off(struct book *b, const struct job *job, struct removal_form *f, GError **err)
{
	struct writing w = { .job = job, .f = f };
	struct removal *r = &f->what;
	gboolean ok = job_at_work(job, err) && settle_line(b, job, f, err);

	w.files = ok ? photos_read(b, job->boat, f->files, err) : NULL;
	if (!w.files)
		return FALSE;
	ok = job_opening_read(b, job, &w.opening, err) && settle_fitting(b, &w, err)
	  && job_drive_of_line(&w.opening, r, f->fitting != NULL, &w.drive, err);
	if (ok && (r->state == REMOVAL_MISSING || r->state == REMOVAL_EXTRA)) {
		ok = find_wanting(b, &w, err);
	} else if (ok) {
		g_autofree char *words = removal_understood(r);

		ok = book_begin(b, err)
		  && book_end(b, write_line(b, &w, err), err, "job %s, line %d: %s", job->name, (int)r->no, words);
	}
	job_opening_clear(&w.opening);
	g_array_unref(w.files);
	return ok;
}

static void
begin(struct removal_form *f)
{
	record_init(RECORD_REMOVAL, &f->what);
	f->finding = NONE;
	f->drive_off = FALSE;
	f->side = NULL;
}

gboolean
book_job_off(struct book *b, const struct job *job, struct removal_form *f, GError **err)
{
	begin(f);
	return removal_parse(f->line, &f->what, err) && write_off(b, job, f, err);
}

static const struct job_offer *
offer_of(const struct job_sheet *s, int n, GError **err)
{
	for (guint i = 0; i < s->offers->len; i++) {
		const struct job_offer *o = &((const struct job_offer *)(const void *)s->offers->data)[i];

		/* What was only taken for it may be something else. */
		if (o->n == n && o->sure)
			err_set(err, ERR_CONFLICT, "that is on the list already, as line %d: %s", (int)o->line, o->what);
		if (o->n == n)
			return o->sure ? NULL : o;
	}
	err_set(err, ERR_NOT_FOUND, "no %d is offered: splitpin job %s --offers lists what the templates say comes off", n,
		s->job.name);
	return NULL;
}

gboolean
book_job_take(struct book *b, const struct job *job, int n, struct removal_form *f, GError **err)
{
	struct job_sheet *s = book_job_sheet(b, job, err);
	const struct job_offer *o = s ? offer_of(s, n, err) : NULL;
	struct removal *r = &f->what;
	gboolean ok;

	begin(f);
	ok = o && (!f->line || !*f->line || removal_parse(f->line, r, err));
	if (ok) {
		r->state = r->state == NONE ? REMOVAL_REUSE : r->state;
		r->kind = o->kind;
		r->count = r->count == NONE ? o->count : r->count;
		r->size = r->size ? r->size : g_strdup(o->size);
		/* More words than the offer's are kept beside it, and the offer counts as taken. */
		if (r->what && !f->remark)
			f->remark = g_intern_string(r->what);
		g_free(r->what);
		r->what = g_strdup(o->what);
	}
	job_sheet_free(s);
	return ok && write_off(b, job, f, err);
}

static void
replace(char **field, char **with)
{
	if (!*with)
		return;
	g_free(*field);
	*field = g_steal_pointer(with);
}

/* Of a setting the line is how it was found, word by word: what it is stays. */
static void
correct(struct removal *r, struct removal *said, const char *line)
{
	if (r->kind == REMOVAL_SETTING) {
		g_free(r->as_found);
		r->as_found = g_strstrip(g_strdup(line));
		return;
	}
	if (said->what)
		r->kind = said->kind == REMOVAL_PART || said->kind == REMOVAL_SETTING ? r->kind : said->kind;
	replace(&r->what, &said->what);
	r->count = said->count == NONE ? r->count : said->count;
	r->state = said->state == REMOVAL_REUSE ? r->state : said->state;
	replace(&r->size, &said->size);
	replace(&r->as_found, &said->as_found);
	replace(&r->orientation, &said->orientation);
	replace(&r->tray, &said->tray);
}

/* What was called something else may be the drive. */
static gboolean
write_corrected(struct book *b, const struct job *job, struct removal_form *f, GArray *files, const char *words, GError **err)
{
	struct writing w = { .job = job, .f = f, .files = files };
	gboolean ok = job_opening_read(b, job, &w.opening, err) && job_drive_of_line(&w.opening, &f->what, FALSE, &w.drive, err)
		   && book_begin(b, err)
		   && book_end(b, write_line(b, &w, err), err, "job %s, line %d is: %s", job->name, (int)f->what.no, words);

	job_opening_clear(&w.opening);
	return ok;
}

gboolean
book_job_correct(struct book *b, const struct job *job, struct removal_form *f, GError **err)
{
	g_autoptr(GArray) files = NULL;
	g_autofree char *words = NULL;
	struct removal *r = &f->what, said;
	gboolean ok;

	record_init(RECORD_REMOVAL, &said);
	ok = job_at_work(job, err) && (!f->line || !*f->line || removal_parse(f->line, &said, err));
	if (ok && r->back != NONE)
		ok = err_set(err, ERR_CONFLICT, "line %d is closed: splitpin undo opens it again", (int)r->no);
	if (ok && (said.state == REMOVAL_MISSING || said.state == REMOVAL_EXTRA) && said.state != r->state)
		ok = err_set(err, ERR_INPUT,
			     "what is missing or left over is a line of its own, as it is a finding: --drop %d, and then "
			     "--off",
			     (int)r->no);
	files = ok ? photos_read(b, job->boat, f->files, err) : NULL;
	if (files) {
		if (f->line && *f->line)
			correct(r, &said, f->line);
		if (f->remark) {
			g_free(r->remark);
			r->remark = g_strdup(f->remark);
		}
		words = removal_understood(r);
		ok = write_corrected(b, job, f, files, words, err);
	}
	record_clear(RECORD_REMOVAL, &said);
	return ok && files;
}

static gboolean
drop_files(struct book *b, gint64 removal, GError **err)
{
	g_autoptr(GArray) files = book_removal_files(b, removal, err);

	for (guint i = 0; files && i < files->len; i++)
		if (!row_drop(b->db, RECORD_PHOTO, ((const struct photo *)(const void *)files->data)[i].id, err))
			return FALSE;
	return files != NULL;
}

gboolean
book_job_drop(struct book *b, const struct job *job, const struct removal *r, GError **err)
{
	g_autoptr(GArray) one = g_array_new(FALSE, FALSE, sizeof *r);

	g_array_append_vals(one, r, 1);
	return book_job_drop_each(b, job, one, err);
}

gboolean
book_job_drop_each(struct book *b, const struct job *job, const GArray *lines, GError **err)
{
	g_autoptr(GString) words = g_string_new(NULL);
	gboolean ok = job_at_work(job, err) && book_begin(b, err);

	if (!ok)
		return FALSE;
	for (guint i = 0; ok && i < lines->len; i++) {
		const struct removal *r = &((const struct removal *)(const void *)lines->data)[i];

		ok = drop_files(b, r->id, err) && row_drop(b->db, RECORD_REMOVAL, r->id, err);
		g_string_append_printf(words, "%s%d %s", i ? ", " : "", (int)r->no, r->what);
	}
	return book_end(b, ok, err, "job %s, taken out: %s", job->name, words->str);
}

gboolean
book_find_removal(struct book *b, const struct job *job, const char *text, struct removal *r, GError **err)
{
	g_autoptr(GArray) lines = job_removals(b, job->id, err);
	g_autofree char *shown = text_quoted(text);
	guint64 no = 0;
	gint64 key = NONE;

	record_init(RECORD_REMOVAL, r);
	if (!g_ascii_string_to_unsigned(text, 10, 1, 99999, &no, NULL) && !key_from_letters(text, &key))
		return lines && err_set(err, ERR_INPUT, "%s is no line: a number of the list, or a key", shown);
	for (guint i = 0; lines && i < lines->len; i++) {
		struct removal *one = &((struct removal *)(void *)lines->data)[i];

		if (one->no != (gint64)no && one->id != key)
			continue;
		*r = *one;
		record_init(RECORD_REMOVAL, one); /* its texts are *r's now */
		return TRUE;
	}
	return lines && err_set(err, ERR_NOT_FOUND, "%s has no line %s", job->name, shown);
}

GArray *
book_removal_files(struct book *b, gint64 removal, GError **err)
{
	return book_gather(b, RECORD_PHOTO, SQL_PHOTOS_OF_REMOVAL, removal, err);
}
