/* A line of the strip-down list goes back: how many, how it is left, and why that is not as it was. */
#include "base/amount.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/page.h"
#include "logbook/removal_parse.h"
#include "tui/form.h"
#include "tui/job_view.h"

#include <string.h>

static const char *const no_yes[] = { "no", "yes" };
static const struct words words_no_yes = { "no or yes", no_yes, G_N_ELEMENTS(no_yes) };

static gboolean
is_counted(const struct removal *r)
{
	return r->kind == REMOVAL_RETAINER || r->kind == REMOVAL_PLUG;
}

static gboolean
has_figure(const struct removal *r)
{
	return r->kind == REMOVAL_SETTING || r->as_found;
}

static const struct removal *
line_of(const struct app *a, const struct form *f)
{
	const struct job_data *d = job_shown(a);

	for (int i = 0; d && d->sheet && i < (int)d->sheet->removals->len; i++)
		if (job_removal_at(d->sheet, i)->id == f->subject)
			return job_removal_at(d->sheet, i);
	return NULL;
}

static void
add_fields(struct form *f, const struct removal *r)
{
	g_autofree char *count = r->count == NONE ? NULL : g_strdup_printf("%d", (int)r->count);

	if (r->kind != REMOVAL_SETTING) {
		g_autofree char *hint = count ? g_strdup_printf("%s came off: count how many are in", count)
					      : g_strdup("how many are in; empty: not a thing to count");

		form_add(f, "count", "Counted in", g_intern_string(hint), is_counted(r) ? NULL : count);
	}
	if (has_figure(r)) {
		g_autofree char *hint = r->as_found ? g_strdup_printf("as found: %s; = is the same", r->as_found)
						    : g_strdup("how it stands now");

		form_add(f, "left", "Left", g_intern_string(hint), NULL);
	}
	if (r->kind != REMOVAL_SETTING)
		form_add_choice(f, "renewed", "New ones", &words_no_yes, r->state == REMOVAL_RENEW, FALSE);
	form_add(f, "why", "Why",
		 "why it is not as it was: one lost in the bilge and looked for, set by the manual, p. 41", NULL);
}

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	const struct removal *r = line_of(a, f);
	g_autofree char *words = r ? removal_understood(r) : NULL;

	if (!r)
		return err_set(err, ERR_NOT_FOUND, "that line is not on the screen any more");
	f->heading = g_strdup_printf("%d. %s", (int)r->no, words);
	add_fields(f, r);
	return TRUE;
}

/* "=": as it was found. */
static const char *
left_text(const struct form *f, const struct removal *r)
{
	const char *left = form_text(f, "left");

	return !strcmp(left, "=") && r->as_found ? r->as_found : left;
}

/* NONE: not said, or no number, which is then marked. */
static gint64
read_count(struct form *f, const struct removal *r)
{
	const char *text = form_text(f, "count");
	guint64 n = 0;

	if (!*text && is_counted(r))
		form_refuse(f, "count", "wanted: retainers and plugs are counted out and in");
	if (!*text)
		return NONE;
	if (!g_ascii_string_to_unsigned(text, 10, 0, 9999, &n, NULL)) {
		form_refuse(f, "count", "a number: how many are in");
		return NONE;
	}
	return (gint64)n;
}

/* What must be explained; NULL: nothing.  The caller's. */
static char *
wants_why(const struct form *f, const struct removal *r, gint64 count)
{
	const char *left = left_text(f, r);

	if (r->state == REMOVAL_EXTRA)
		return g_strdup("it is left over: where does it belong?");
	if (r->state == REMOVAL_MISSING)
		return g_strdup("it was missing as found: what was done about it?");
	if (r->count != NONE && count != NONE && r->count != count)
		return g_strdup_printf("%d off and %d in: what became of the rest?", (int)r->count, (int)count);
	if (r->kind == REMOVAL_SETTING && !r->as_found)
		return g_strdup("how it was found is not written down: by what was it set?");
	if (r->as_found && *left && !text_same_words(r->as_found, left))
		return g_strdup_printf("found %s and left %s: why?", r->as_found, left);
	return NULL;
}

static char *
check(struct app *a, struct form *f)
{
	const struct removal *r = line_of(a, f);
	const char *why = form_text(f, "why");
	g_autofree char *wanted = NULL;
	GString *sum;
	gint64 count;

	if (!r)
		return NULL;
	count = read_count(f, r);
	if (has_figure(r) && !*form_text(f, "left"))
		form_refuse(f, "left",
			    r->as_found ? "wanted: how is it left? = is as found" : "wanted: how is it left?");
	wanted = wants_why(f, r, count);
	if (wanted && !why[strspn(why, " ")])
		form_refuse(f, "why", wanted);
	sum = g_string_new(r->kind == REMOVAL_SETTING ? "Set" : "Back");
	if (count != NONE)
		g_string_append_printf(sum, ", %d in", (int)count);
	if (has_figure(r))
		g_string_append_printf(sum, "; found %s, left %s", r->as_found ? r->as_found : "not written down",
				       left_text(f, r));
	g_string_append(sum, wanted ? ", and not as it was." : ".");
	return g_string_free(sum, FALSE);
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	const struct removal *shown = line_of(a, f);
	struct job_data *d = job_shown(a);
	struct removal_back k = { .renewed = form_word(f, "renewed") == 1 };
	g_autofree char *no = shown ? g_strdup_printf("%d", (int)shown->no) : NULL;
	struct removal r;
	gboolean ok;

	if (!shown)
		return err_set(err, ERR_NOT_FOUND, "that line is not on the list any more");
	k.count = read_count(f, shown);
	k.left = left_text(f, shown);
	k.why = form_text(f, "why");
	ok = book_find_removal(a->book, &d->sheet->job, no, &r, err)
	  && book_job_back(a->book, &d->sheet->job, &r, &k, err);
	if (ok) {
		g_autofree char *words = job_line_words(&r);

		app_say(a, STYLE_STRONG, "%s%s%s",
			k.finding != NONE ? "MISSING, it holds the launch until it is put right: "
			: r.state == REMOVAL_MISSING ? "back; its finding is still to be mended, under Work: "
			: k.note ? "USED AGAIN; retainers are renewed, u opens it again: " : "back: ",
			words, k.finding != NONE || k.note || r.state == REMOVAL_MISSING ? "" : "; u takes it off again");
	}
	g_free(k.note);
	record_clear(RECORD_REMOVAL, &r);
	return ok;
}

static void
go_on(struct app *a, gint64 made)
{
	struct job_data *d = job_shown(a);

	(void)made;
	if (d && d->sheet)
		job_select_open(d, FACE_REFIT, 0);
}

const struct form_kind form_back = {
	.name = "job-back",
	.title = "It goes back",
	.button = "Enter closes the line",
	.begin = begin,
	.check = check,
	.save = save,
	.then = go_on,
};
