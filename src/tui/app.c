#include "tui/app_inside.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "engine/timeline.h"
#include "logbook/job.h"
#include "logbook/outing.h"
#include "logbook/page.h"
#include "tui/form.h"

#include <stdarg.h>
#include <string.h>

void
app_say(struct app *a, enum style style, const char *format, ...)
{
	va_list ap;

	g_free(a->message);
	va_start(ap, format);
	a->message = g_strdup_vprintf(format, ap);
	va_end(ap);
	a->message_style = style;
}

void
app_complain(struct app *a, GError *err)
{
	app_say(a, STYLE_ERROR, "%s", err ? err->message : "that did not work");
	g_clear_error(&err);
}

gint64
app_today(const struct app *a)
{
	return a->start.who.today;
}

const struct view_kind *
app_kind(const struct app *a)
{
	return a->view[a->depth - 1].kind;
}

void *
app_data(struct app *a)
{
	return a->view[a->depth - 1].data;
}

struct list *
app_list(struct app *a)
{
	return app_kind(a)->list ? app_kind(a)->list(app_data(a)) : NULL;
}

void
app_open(struct app *a, const struct view_kind *kind, gint64 subject)
{
	GError *err = NULL;
	void *data;

	if (a->depth == APP_DEPTH)
		return app_say(a, STYLE_ERROR, "too many pages lie upon each other: q closes one");
	data = g_malloc0(kind->size);
	a->view[a->depth].kind = kind;
	a->view[a->depth++].data = data;
	if (kind->open)
		kind->open(a, data, subject);
	if (kind->load && !kind->load(a, data, &err))
		app_complain(a, err);
}

void
app_close_at(struct app *a, int depth)
{
	if (depth < 1 || depth >= a->depth)
		return;
	if (a->view[depth].kind->clear)
		a->view[depth].kind->clear(a->view[depth].data);
	g_free(a->view[depth].data);
	a->depth--;
	for (int i = depth; i < a->depth; i++)
		a->view[i] = a->view[i + 1];
}

void
app_close(struct app *a)
{
	app_close_at(a, a->depth - 1);
}

/* "main 612.4 h  generator ~80 h" */
static gboolean
read_hours(struct app *a, GError **err)
{
	g_autoptr(GArray) engines = book_records(a->book, RECORD_ENGINE, a->boat.id, err);
	GString *out = g_string_new(NULL);

	for (guint i = 0; engines && i < engines->len; i++) {
		const struct engine *e = &((const struct engine *)(const void *)engines->data)[i];
		struct engine_hours run;
		g_autofree char *words = NULL;

		if (!book_engine_hours(a->book, e, app_today(a), &run, err)) {
			g_string_free(out, TRUE);
			return FALSE;
		}
		words = engine_hours_words(&run);
		g_string_append_printf(out, "%s%s%s%s", i ? "  " : "", engines->len > 1 ? e->name : "",
				       engines->len > 1 ? " " : "", words);
	}
	g_free(a->head);
	a->head = g_string_free(out, FALSE);
	return engines != NULL;
}

/* Where it lies now, since when, and in what water. */
static void
read_lies(struct app *a)
{
	static const char *const where[STAND_COUNT] = { "afloat", "on the trailer", "ashore", "under a roof" };
	const struct span *s;
	int n = timeline_spans(due_timeline(a->due), &s), now = 0, i;
	char day[16];

	g_clear_pointer(&a->lies, g_free);
	while (now + 1 < n && s[now].to <= app_today(a))
		now++;
	if (!n)
		return;
	for (i = now; i > 0 && s[i - 1].stand == s[now].stand;)
		i--;
	a->lies = g_strdup_printf("%s%s%s, %s", where[s[now].stand], i ? " since " : "", i ? day_words(s[i].from, day) : "",
				  word_of(&words_water, s[now].stand == STAND_AFLOAT ? (gint64)s[now].water : a->boat.water));
}

static gboolean
read_boat(struct app *a, GError **err)
{
	g_autoptr(GArray) boats = book_boats(a->book, err);
	struct boat *all;
	guint i = 0;

	if (!boats)
		return FALSE;
	all = (void *)boats->data;
	a->n_boats = (int)boats->len;
	while (i < boats->len && all[i].id != a->boat.id)
		i++;
	if (i == boats->len)
		i = 0;
	record_clear(RECORD_BOAT, &a->boat);
	if (!boats->len)
		return TRUE;
	a->boat = all[i];
	record_init(RECORD_BOAT, &all[i]);	/* its texts are the app's now */
	return TRUE;
}

static gboolean
read_all(struct app *a, GError **err)
{
	const struct due_ask ask = { app_today(a), NONE };

	if (!read_boat(a, err))
		return FALSE;
	if (a->boat.id != NONE && (!book_due(a->book, &a->boat, &ask, a->due, err) || !read_hours(a, err)))
		return FALSE;
	if (a->boat.id != NONE)
		read_lies(a);
	for (int i = 0; i < a->depth; i++)
		if (a->view[i].kind->load && !a->view[i].kind->load(a, a->view[i].data, err))
			return FALSE;
	return TRUE;
}

static gboolean
read_anew(struct app *a, GError **err)
{
	gboolean ok;

	a->seen = book_version(a->book);
	ok = book_hold(a->book, err) && read_all(a, err);
	book_release(a->book);
	return ok;
}

/* A logbook without a boat has nothing to show. */
static void
ask_for_boat(struct app *a)
{
	if (a->boat.id != NONE)
		return;
	while (a->depth > 1)
		app_close(a);
	form_open(a, &form_new, NONE);
}

void
app_changed(struct app *a)
{
	GError *err = NULL;

	if (!a->book)
		return;
	if (!read_anew(a, &err))
		app_complain(a, err);
	ask_for_boat(a);
}

static void
take_time(struct app *a)
{
	gint64 today = app_today(a);

	if (!a->start.read_clock)
		return;
	a->start.read_clock(&a->start.who.now, &a->start.who.today);
	if (a->book)
		book_clock(a->book, a->start.who.now, a->start.who.today);
	if (today != app_today(a))
		app_changed(a);
}

/* Whoever left with something off in November finds it in April. */
static void
say_open_jobs(struct app *a)
{
	g_autoptr(GArray) jobs = a->boat.id == NONE ? NULL : book_jobs(a->book, a->boat.id, FALSE, NULL);
	const struct job *first = jobs && jobs->len ? (const void *)jobs->data : NULL;
	char day[16];

	if (first && jobs->len == 1)
		app_say(a, STYLE_PLAIN, "the job %s %s %s: J goes to it", first->name,
			first->paused == NONE ? "is open since" : "rests since",
			day_words(first->paused == NONE ? first->opened : first->paused, day));
	else if (first)
		app_say(a, STYLE_PLAIN, "%u jobs are open: J lists them", jobs->len);
}

struct app *
app_new(const struct app_start *start, int h, int w, gboolean ascii, GError **err)
{
	struct app *a = g_new0(struct app, 1);
	gboolean there = g_file_test(start->file, G_FILE_TEST_EXISTS);

	*a = (struct app) { .start = *start, .h = h, .w = w, .ascii = ascii, .due = due_list_new() };
	record_init(RECORD_BOAT, &a->boat);
	if (there && !(a->book = book_open(start->file, BOOK_WRITE, &start->who, err)))
		goto failed;
	if (there && start->boat && !book_boat(a->book, start->boat, &a->boat, err))
		goto failed;
	app_open(a, &view_due, NONE);
	if (there && !read_anew(a, err))
		goto failed;
	if (there)
		ask_for_boat(a);
	else
		form_open(a, &form_new, NONE);
	if (a->n_boats > 1 && !start->boat)
		app_open(a, &view_boats, NONE);
	else if (there)
		say_open_jobs(a);
	return a;
failed:
	app_free(a);
	return NULL;
}

void
app_free(struct app *a)
{
	if (!a)
		return;
	prompt_close(a);
	while (a->depth > 1)
		app_close(a);
	if (a->depth && a->view[0].kind->clear)
		a->view[0].kind->clear(a->view[0].data);
	if (a->depth)
		g_free(a->view[0].data);
	book_close(a->book);
	due_list_free(a->due);
	record_clear(RECORD_BOAT, &a->boat);
	g_strfreev(a->run);
	g_free(a->message);
	g_free(a->head);
	g_free(a->lies);
	g_free(a);
}

static void
undo(struct app *a, gboolean again)
{
	struct book_entry e = { 0 };
	GError *err = NULL;

	if (again ? book_redo(a->book, &e, &err) : book_undo(a->book, &e, &err)) {
		app_say(a, STYLE_STRONG, "%s: %s", again ? "brought back" : "taken back", e.what);
		app_changed(a);
	} else {
		app_complain(a, err);
	}
	book_entry_clear(&e);
}

static void
go(struct app *a, const struct view_kind *kind)
{
	while (a->depth > 1)
		app_close(a);
	if (kind != &view_due)
		app_open(a, kind, NONE);
}

static void
help(struct app *a)
{
	const struct view_kind *kind = app_kind(a);
	const struct form *f = kind == &view_form ? app_data(a) : NULL;
	GString *out = g_string_new(NULL);

	if (f && f->heading)	/* a small screen cuts it: cautions must be read somewhere */
		g_string_append_printf(out, "%s\n\n", f->heading);
	for (int i = 0; i < key_table_length; i++) {
		const struct key_binding *b = &key_table[i];
		g_autoptr(GString) keys = g_string_new(NULL);

		for (guint k = 0; k < G_N_ELEMENTS(b->key) && b->key[k]; k++) {
			char buf[8];

			g_string_append_printf(keys, "%s%s", k ? " " : "", key_words(b->key[k], buf));
		}
		if (b->where & kind->where)
			g_string_append_printf(out, "%-14s %s\n", keys->str, b->help);
	}
	app_page(a, "Keys that hold here", g_string_free(out, FALSE));
}

static void
back(struct app *a, gboolean may_quit)
{
	struct list *l = app_list(a);

	if (l && l->filter)
		list_filter(l, NULL);
	else if (a->depth > 1)
		app_close(a);
	else if (may_quit)
		a->wish = WISH_QUIT;
	else
		app_say(a, STYLE_PLAIN, "q ends the program");
}

/* What needs a boat, where there is none yet. */
static gboolean
wants_boat(const struct app *a, enum act act)
{
	gboolean of_boat = act == ACT_LOG || act == ACT_SEASON || act == ACT_YARD || act == ACT_JOBS ||
			   (act >= ACT_DUE && act <= ACT_HISTORY);

	return a->boat.id == NONE && (of_boat || (!a->book && act >= ACT_UNDO && act <= ACT_REDO));
}

/* Where the list stands below the head. */
static struct area
list_area(struct app *a)
{
	const struct area whole = { NULL, 0, 0, a->h - 3, a->w };
	const struct view_kind *kind = app_kind(a);

	return kind->parts ? kind->parts(app_data(a), &whole).list : whole;
}

void
app_act(struct app *a, enum act act)
{
	const struct view_kind *kind = app_kind(a);
	struct list *list = app_list(a);

	if (wants_boat(a, act))
		return app_say(a, STYLE_PLAIN, "there is no boat yet: Enter makes one");
	if ((kind->act && kind->act(a, app_data(a), act)) || (list && list_act(list, act, list_area(a).h)))
		return;
	switch (act) {
	case ACT_BACK: return back(a, FALSE);
	case ACT_QUIT: return back(a, TRUE);
	case ACT_LOG: return form_open(a, &form_outing, NONE);
	case ACT_UNDO: return undo(a, FALSE);
	case ACT_REDO: return undo(a, TRUE);
	case ACT_FILTER: return prompt_open(a, FALSE);
	case ACT_COMMAND: return prompt_open(a, TRUE);
	case ACT_HELP: return help(a);
	case ACT_DUE: return go(a, &view_due);
	case ACT_OUTINGS: return go(a, &view_outings);
	case ACT_BOAT: return go(a, &view_boat);
	case ACT_YEAR: return go(a, &view_year);
	case ACT_HAPPENINGS: return go(a, &view_happenings);
	case ACT_FINDINGS: return go(a, &view_findings);
	case ACT_READY: return go(a, &view_ready);
	case ACT_PLAN: return go(a, &view_plan);
	case ACT_HISTORY: return go(a, &view_history);
	case ACT_BOATS: return go(a, &view_boats);
	case ACT_JOBS: return go(a, &view_jobs);
	case ACT_STORES: return go(a, &view_stores);
	case ACT_SEASON: return app_open(a, &view_season_lists, NONE);
	case ACT_DOSSIER: return form_open(a, &form_dossier, NONE);
	case ACT_YARD: return app_open(a, &view_yard, NONE);
	case ACT_SUSPEND: a->wish = WISH_SUSPEND; return;
	case ACT_REPAINT: a->wish = WISH_REPAINT; return;
	case ACT_MOUSE: a->wish = WISH_MOUSE; return;
	case ACT_UP: case ACT_DOWN: case ACT_PAGE_UP: case ACT_PAGE_DOWN: case ACT_FIRST: case ACT_LAST:
		return;
	case ACT_OPEN: case ACT_DID: case ACT_MEASURE: case ACT_ADD: case ACT_STAY: case ACT_CHANGE: case ACT_DROP: case ACT_CLOSE:
	case ACT_TICK: case ACT_PASS: case ACT_HEED: case ACT_FOUND: case ACT_MEND: case ACT_PHOTOS: case ACT_READ: case ACT_TAKE:
	case ACT_FACE: case ACT_FACE_BACK: case ACT_REPEAT: case ACT_REST: case ACT_NOTE:
	case ACT_CAME: case ACT_HERE: case ACT_TALLY: case ACT_NEED: case ACT_NUMBER:
		return app_say(a, STYLE_PLAIN, "nothing is selected for that here");
	case ACT_NONE: case ACT_COUNT: return;
	}
}

/* A click selects; a second one on the same line opens it. */
static void
click(struct app *a, const struct key_event *k)
{
	struct list *list = app_list(a);
	struct area shown = list_area(a);
	int before = list ? list->at : -1, y = k->y - 1 - shown.y;

	if (list && y >= 0 && y < shown.h && list_click(list, y, shown.h) && list->at == before)
		app_act(a, ACT_OPEN);
}

void
app_key(struct app *a, const struct key_event *k)
{
	const struct view_kind *kind = app_kind(a);
	struct key_event e = *k;

	if (e.key == K_NONE || e.key == K_RESIZE)
		return;
	if (e.key == K_PASTE || e.key == K_PASTE_END) {
		a->pasting = e.key == K_PASTE;
		return;
	}
	e.pasted = a->pasting && e.key != K_HANGUP;
	take_time(a);
	g_clear_pointer(&a->message, g_free);
	if (e.key == K_HANGUP)
		a->wish = WISH_QUIT;
	else if (a->prompt && (e.pasted || (e.key != K_CTRL('z') && e.key != K_CTRL('l'))))
		prompt_key(a, &e);
	else if (kind->key && kind->key(a, app_data(a), &e))
		return;
	else if (e.pasted)
		app_say(a, STYLE_PLAIN, "text can be pasted into a form only: o opens one for an outing");
	else if (e.key == K_CLICK)
		click(a, &e);
	else if (e.key == K_CTRL('c') && !(kind->where & (IN_FORM | IN_LINE)))
		a->wish = WISH_QUIT;
	else
		app_act(a, key_act(e.key, kind->where));
}

void
app_idle(struct app *a)
{
	take_time(a);
	if (!a->book || book_version(a->book) == a->seen)
		return;
	app_changed(a);
	if (!a->message || a->message_style == STYLE_PLAIN)	/* what was recorded, or is wrong, is not talked over */
		app_say(a, STYLE_STRONG, "another program changed the logbook: this is how it stands now");
}
