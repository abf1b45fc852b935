/* How what came off went back. */
#include "logbook/job_inside.h"

#include "base/err.h"
#include "base/text.h"
#include "logbook/removal_parse.h"

#include <string.h>

static gboolean
blank(const char *text)
{
	return !text || !text[strspn(text, " \t\n")];
}

static gboolean
is_counted(const struct removal *r)
{
	return r->kind == REMOVAL_RETAINER || r->kind == REMOVAL_PLUG;
}

static gboolean
check_count(const struct removal *r, struct removal_back *k, GError **err)
{
	const int no = (int)r->no;

	if (r->kind == REMOVAL_SETTING)
		return k->count == NONE
		    || err_set(err, ERR_INPUT, "line %d is no thing to count: --left says how it is left", no);
	if (is_counted(r) && r->count == NONE)
		return err_set(err, ERR_INPUT,
			       "line %d, %s: how many came off is not known. Count them by the parts list, and say it first: "
			       "--correct %d --as \"2x\"",
			       no, r->what, no);
	if (is_counted(r) && k->count == NONE)
		return err_set(err, ERR_INPUT, "line %d, %d %s out: how many are in? count them: --count", no, (int)r->count,
			       r->what);
	if (k->count == NONE && r->state != REMOVAL_EXTRA)
		k->count = r->count;
	if (k->count != NONE && (k->count < 0 || k->count > 9999))
		return err_set(err, ERR_INPUT, "%" G_GINT64_FORMAT " is no count", k->count);
	if (r->count != NONE && k->count != NONE && k->count != r->count && blank(k->why))
		return err_set(err, ERR_INPUT, "line %d: %d off and %d back. Why? --why says what became of the rest", no,
			       (int)r->count, (int)k->count);
	return TRUE;
}

static gboolean
check_figure(const struct removal *r, const struct removal_back *k, GError **err)
{
	const int no = (int)r->no;

	if (blank(k->left) && (r->as_found || r->kind == REMOVAL_SETTING))
		return err_set(err, ERR_INPUT, "line %d, %s, was found %s: how is it left? --left", no, r->what,
			       r->as_found ? r->as_found : "as nobody wrote down");
	if (r->kind == REMOVAL_SETTING && !r->as_found && blank(k->why))
		return err_set(
			err, ERR_INPUT,
			"line %d, %s: how it was found is not written down. --correct %d --as \"...\" does, or --why says "
			"by what it was set",
			no, r->what, no);
	if (r->as_found && !text_same_words(r->as_found, k->left) && blank(k->why))
		return err_set(err, ERR_INPUT, "line %d, %s: found %s and left %s. Why? --why", no, r->what, r->as_found,
			       k->left);
	return TRUE;
}

/* "same", and what else people say of what is as it was found. */
static const char *
as_left(const struct removal *r, const char *left)
{
	static const char *const same[] = { "same", "the same", "as found", "as it was", "unchanged", "as before" };

	for (guint i = 0; left && r->as_found && i < G_N_ELEMENTS(same); i++)
		if (text_same_words(left, same[i]))
			return r->as_found;
	return left;
}

struct putting {
	const struct job *job;
	struct removal *r;
	struct removal_back *k;
};

/* Within the transaction of its finding. */
static gboolean
put_with_finding(struct book *b, gint64 finding, void *user, GError **err)
{
	struct putting *p = user;

	p->k->finding = finding;
	return book_put(b, RECORD_REMOVAL, p->r, err) && job_put_aim(b, p->job, NONE, finding, err);
}

/* A retainer or a plug that did not go back is missing, and a reason does not put it in. */
static gboolean
find_short(struct book *b, struct putting *p, GError **err)
{
	const struct removal *r = p->r;
	struct finding_form f = { .also = put_with_finding, .user = p };

	record_init(RECORD_FINDING, &f.what);
	f.what.words = g_strdup_printf("missing: %d of %d %s not put back", (int)(r->count - r->back_count), (int)r->count,
				       r->what);
	return job_find_wanting(b, p->job, r, &f, err);
}

gboolean
book_job_back(struct book *b, const struct job *job, struct removal *r, struct removal_back *k, GError **err)
{
	g_autofree char *words = removal_words(r);
	struct putting putting = { job, r, k };

	k->note = NULL;
	k->finding = NONE;
	k->left = as_left(r, k->left);
	if (!job_at_work(job, err))
		return FALSE;
	if (r->back != NONE)
		return err_set(err, ERR_CONFLICT, "line %d is closed already: splitpin undo opens it again", (int)r->no);
	if (r->state == REMOVAL_EXTRA && blank(k->why))
		return err_set(err, ERR_INPUT, "line %d, %s, is left over: where does it belong? --why", (int)r->no, words);
	if (!check_count(r, k, err) || !check_figure(r, k, err))
		return FALSE;
	if (k->renewed && r->state == REMOVAL_REUSE)
		r->state = REMOVAL_RENEW;
	if (r->kind == REMOVAL_RETAINER && r->state == REMOVAL_REUSE && k->count > 0)
		k->note = g_strdup(
			"a retainer is renewed, not used again: the task that renews them stays open. If new ones went in: "
			"splitpin undo, and --back again with --renewed");
	r->back = b->who.today;
	r->back_count = k->count;
	r->as_left = blank(k->left) ? NULL : g_strdup(k->left);
	r->why = blank(k->why) ? NULL : g_strdup(k->why);
	if (k->who) {
		g_free(r->who);
		r->who = g_strdup(k->who);
	}
	if (is_counted(r) && r->back_count < r->count && r->state != REMOVAL_EXTRA && r->state != REMOVAL_MISSING)
		return find_short(b, &putting, err);
	return book_begin(b, err)
	    && book_end(b, book_put(b, RECORD_REMOVAL, r, err), err, "job %s, line %d back: %s", job->name, (int)r->no, words);
}
