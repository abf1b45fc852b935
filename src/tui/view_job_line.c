/* A line of the strip-down list as it is typed with greasy hands, over the job: Enter writes it down and the next can be typed;
 * below it stands what is understood, or what is offered. */
#include "tui/job_view.h"

#include "base/err.h"
#include "base/text.h"
#include "logbook/page.h"
#include "logbook/removal_parse.h"
#include "tui/edit.h"

#include <string.h>

enum { LINE_ROWS = 3 };

struct line_data {
	struct job_data *job; /* of the view below */
	gint64 removal; /* that it takes the place of; NONE: it is a new one */
	gboolean setting; /* how that one stood; then on to the next of which nobody has said */
	int offer; /* that Tab takes; -1: none */
	struct edit edit;
};

static void
open_line(struct app *a, void *data, gint64 subject)
{
	struct line_data *l = data;

	(void)subject;
	l->job = job_shown(a);
	l->removal = NONE;
	edit_init(&l->edit, "");
}

static void
clear_line(void *data)
{
	edit_clear(&((struct line_data *)data)->edit);
}

static const struct removal *
removal_of(const struct line_data *l)
{
	const struct job_sheet *s = l->job ? l->job->sheet : NULL;

	for (int i = 0; s && l->removal != NONE && i < (int)s->removals->len; i++)
		if (job_removal_at(s, i)->id == l->removal)
			return job_removal_at(s, i);
	return NULL;
}

static gboolean
load_line(struct app *a, void *data, GError **err)
{
	struct line_data *l = data;

	(void)a, (void)err;
	if (l->job && l->job->sheet)
		l->offer = job_next_offer(l->job->sheet, l->offer);
	return TRUE;
}

/* Onto a line of the list; of a setting what was found stands there, to be changed. */
static void
take_up(struct line_data *l, const struct removal *r)
{
	l->removal = r->id;
	l->setting = r->kind == REMOVAL_SETTING;
	edit_set(&l->edit, l->setting && r->as_found ? r->as_found : "");
	list_select(&l->job->list[l->job->face], r->id);
}

void
job_line_open(struct app *a, gint64 removal)
{
	struct job_data *d = job_shown(a);
	int depth = a->depth;
	struct line_data *l;
	const struct removal *r;

	app_open(a, &view_job_line, removal);
	if (a->depth == depth)
		return;
	l = app_data(a);
	l->removal = removal;
	r = removal_of(l);
	if (r)
		take_up(l, r);
	else if (d->typed)
		edit_set(&l->edit, d->typed);
	g_clear_pointer(&d->typed, g_free);
}

/* ---- drawing ---- */

static char *
label_of(const struct line_data *l)
{
	const struct removal *r = removal_of(l);

	if (r)
		return g_strdup_printf("%d. %s> ", (int)r->no, l->setting ? "found" : "is");
	return g_strdup("off> ");
}

/* Without the paths behind an @. */
static char *
words_of(const char *text)
{
	const char *at = *text == '@' ? text : strstr(text, " @");

	return g_strstrip(at ? g_strndup(text, (gsize)(at - text)) : g_strdup(text));
}

static char *
with_doubt(const struct removal *r)
{
	g_autofree char *words = removal_understood(r), *word = NULL;
	const char *meant;

	if (!removal_doubt(r, &word, &meant))
		return g_steal_pointer(&words);
	return g_strdup_printf("%s. %s: is %s meant?", words, word, meant);
}

/* What Enter would write, or what can be done. */
static char *
understood(const struct line_data *l)
{
	g_autofree char *words = words_of(edit_text(&l->edit));
	const char *line = *words == '=' ? words + 1 : words;
	const struct removal *of = removal_of(l);
	g_autoptr(GError) err = NULL;
	struct removal r;
	char *out = NULL;

	record_init(RECORD_REMOVAL, &r);
	if (l->setting)
		out = *words ? g_strdup_printf("%s, found %s", of ? of->what : "", words)
			     : g_strdup_printf("%s: how does it stand now?", of ? of->what : "");
	else if (*line && removal_parse(line, &r, &err))
		out = with_doubt(&r);
	else if (err)
		out = g_strdup(err->message);
	record_clear(RECORD_REMOVAL, &r);
	if (out && *words == '=' && !l->setting) {
		char *as = g_strdup_printf("as the last line, but %s", out);

		g_free(out);
		out = as;
	}
	if (!out && *words == '=')
		out = g_strdup("the last line once more");
	return out;
}

static char *
offered(const struct line_data *l)
{
	g_autofree char *words =
		l->removal == NONE && l->offer >= 0 ? job_offer_words(job_offer_at(l->job->sheet, l->offer)) : NULL;

	if (l->removal != NONE)
		return g_strdup("what is right: 5 tray 3; the rest stays. @ and a path: a photo");
	return words ? g_strdup_printf("Tab takes: %s", words)
		     : g_strdup("6 bolts 5/8 tray 2; = the last once more; @ a photo's path");
}

static void
draw_line(const void *data, const struct area *a)
{
	const struct line_data *l = data;
	struct area job = area_part(a, 0, 0, a->h - LINE_ROWS, a->w),
		    line = area_part(a, a->h - LINE_ROWS, 0, LINE_ROWS, a->w);
	g_autofree char *label = label_of(l), *below = NULL;
	int x = MIN(text_width(label), a->w / 2);

	if (!l->job || !l->job->sheet) {
		area_put(a, 1, 1, STYLE_PLAIN, "This job is not in the log any more: Esc leaves.");
		return area_cursor(a, 1, 1);
	}
	job_draw(l->job, &job);
	below = understood(l);
	if (!below)
		below = offered(l);
	area_repeat(&line, 0, 0, line.w, STYLE_PLAIN, glyph(line.g, GLYPH_RULE));
	area_put_in(&line, 1, 1, x, STYLE_STRONG, label);
	area_put(&line, 2, 1, STYLE_PLAIN, below);
	edit_draw(&l->edit, &line, 1, 1 + x, line.w - x - 2, TRUE);
}

/* ---- writing ---- */

/* "nuts.jpg @'two words.m4a'": the paths, without the quotes that a terminal puts around them. */
static char **
paths_of(const char *text)
{
	const char *at = strstr(text, " @");
	g_auto(GStrv) part = g_strsplit(*text == '@' ? text + 1 : at ? at + 2 : "", " @", -1);
	GPtrArray *out = g_ptr_array_new();

	for (int i = 0; part[i]; i++) {
		char *path = g_strstrip(g_strdup(part[i]));
		gsize n = strlen(path);

		if (n > 1 && (*path == '\'' || *path == '"') && path[n - 1] == *path) {
			path[n - 1] = '\0';
			memmove(path, path + 1, n - 1);
		}
		if (*path)
			g_ptr_array_add(out, path);
		else
			g_free(path);
	}
	g_ptr_array_add(out, NULL);
	return (char **)g_ptr_array_free(out, FALSE);
}

/* The last line that was written, for a file that comes alone. */
static gboolean
correct(struct app *a, struct line_data *l, struct removal_form *f, GError **err)
{
	const struct job_sheet *s = l->job->sheet;
	const struct removal *r = removal_of(l);
	g_autofree char *no = NULL;

	if (!r && s->removals->len)
		r = job_removal_at(s, (int)s->removals->len - 1);
	if (!r)
		return err_set(err, ERR_NOT_FOUND, "of what is it? no line is on the list yet");
	no = g_strdup_printf("%d", (int)r->no);
	f->finding = NONE;
	return book_find_removal(a->book, &s->job, no, &f->what, err) && book_job_correct(a->book, &s->job, f, err);
}

static gboolean
write_words(struct app *a, struct line_data *l, char *words, struct removal_form *f, GError **err)
{
	const struct job *job = &l->job->sheet->job;

	if (l->removal != NONE || !*words) {
		f->line = *words ? words : NULL;
		return correct(a, l, f, err);
	}
	f->again = *words == '=' && l->job->sheet->removals->len > 0;
	f->line = *words == '=' ? g_strchug(words + 1) : words;
	if (f->again && !*f->line)
		f->line = "reuse"; /* says nothing new */
	return book_job_off(a->book, job, f, err);
}

/* A corrected line is done; after a setting comes the next of which nobody has said how it stands. */
static void
go_on(struct app *a, struct line_data *l)
{
	const struct job_sheet *s = l->job->sheet;
	int from = 0, next;

	if (l->removal == NONE) {
		edit_set(&l->edit, "");
		return;
	}
	while (from < (int)s->removals->len && job_removal_at(s, from)->id != l->removal)
		from++;
	next = l->setting ? job_next_unwritten(s, from) : -1;
	if (next < 0)
		app_close(a);
	else
		take_up(l, job_removal_at(s, next));
}

static void
finish(struct app *a, struct line_data *l, gboolean ok, struct removal_form *f, GError *err)
{
	if (ok)
		app_changed(a);
	else
		app_complain(a, err);
	if (ok && l->job->sheet)
		go_on(a, l);
	if (ok)
		job_say_written(a, f);
	removal_form_clear(f);
}

static void
write_line(struct app *a, struct line_data *l)
{
	const char *text = edit_text(&l->edit);
	g_autofree char *words = words_of(text);
	g_auto(GStrv) files = paths_of(text);
	struct removal_form f = { .files = (const char *const *)files };
	GError *err = NULL;
	gboolean ok;

	if (!*words && !files[0])
		return app_say(a, STYLE_PLAIN, "nothing is typed: what came off? Esc leaves");
	record_init(RECORD_REMOVAL, &f.what);
	ok = write_words(a, l, words, &f, &err);
	finish(a, l, ok, &f, err);
}

/* Another offer, or another setting. */
static void
move(struct line_data *l, int by)
{
	const struct job_sheet *s = l->job->sheet;
	int n = (int)(l->setting ? s->removals->len : s->offers->len), at = l->setting ? 0 : l->offer;

	if (l->removal != NONE && !l->setting)
		return;
	while (l->setting && at < n && job_removal_at(s, at)->id != l->removal)
		at++;
	for (int k = 0; k < n && at >= 0; k++) {
		at = (at + by + n) % n;
		if (l->setting ? job_removal_at(s, at)->kind == REMOVAL_SETTING && job_removal_at(s, at)->back == NONE
			       : !job_offer_at(s, at)->taken)
			break;
	}
	if (l->setting && at < n)
		take_up(l, job_removal_at(s, at));
	else
		l->offer = at;
}

static void
take(struct app *a, struct line_data *l)
{
	const char *text = edit_text(&l->edit);
	g_autofree char *words = words_of(text);
	g_auto(GStrv) files = paths_of(text);
	struct removal_form f = { .line = *words ? words : NULL, .files = (const char *const *)files };
	const struct job_sheet *s = l->job->sheet;
	GError *err = NULL;
	gboolean ok;

	if (l->setting)
		return move(l, 1);
	if (l->removal != NONE || l->offer < 0)
		return app_say(a, STYLE_PLAIN, "nothing is offered here: Enter writes what is typed");
	record_init(RECORD_REMOVAL, &f.what);
	ok = book_job_take(a->book, &s->job, job_offer_at(s, l->offer)->n, &f, &err);
	finish(a, l, ok, &f, err);
}

static void
leave(struct app *a, struct line_data *l)
{
	if (l->removal == NONE && l->job) {
		g_free(l->job->typed);
		l->job->typed = *edit_text(&l->edit) ? g_strdup(edit_text(&l->edit)) : NULL;
	}
	app_close(a);
}

static gboolean
key_line(struct app *a, void *data, const struct key_event *k)
{
	struct line_data *l = data;
	gboolean gone = !l->job || !l->job->sheet;

	if (!k->pasted && (k->key == K_HANGUP || k->key == K_CTRL('z') || k->key == K_CTRL('l') || k->key == K_F1))
		return FALSE;
	if (k->pasted && k->key == K_ENTER)
		return TRUE; /* a path that was dragged in ends no line */
	if (!k->pasted && (k->key == K_ESC || k->key == K_CTRL('c')))
		leave(a, l);
	else if (gone)
		return TRUE;
	else if (k->pasted)
		edit_key(&l->edit, k);
	else if (k->key == K_ENTER)
		write_line(a, l);
	else if (k->key == K_TAB)
		take(a, l);
	else if (k->key == K_UP || k->key == K_DOWN || k->key == K_BACKTAB)
		move(l, k->key == K_DOWN ? 1 : -1);
	else
		edit_key(&l->edit, k);
	return TRUE;
}

const struct view_kind view_job_line = {
	.where = IN_LINE,
	.size = sizeof(struct line_data),
	.open = open_line,
	.load = load_line,
	.draw = draw_line,
	.key = key_line,
	.clear = clear_line,
};
