#include "tui/tui.h"

#include "base/date.h"
#include "base/text.h"
#include "tui/form.h"
#include "tui/term.h"

#include <poll.h>
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

/* How long to wait for a key before looking whether another program changed the logbook; how often work under way is
 * looked at, and shown after that many times. */
enum { IDLE_MS = 500, WORK_MS = 50, WORK_SHOWN = 6 };

struct screen {
	struct terminal *term;
	struct app *app;
	struct grid *grid;
	gboolean mouse;
};

static void
show(struct screen *s)
{
	int h, w;

	term_size(s->term, &h, &w);
	if (h != s->grid->h || w != s->grid->w)
		grid_size(s->grid, h, w);
	app_draw(s->app, s->grid);
	term_show(s->term, s->grid);
}

static void
edit_long_text(struct screen *s)
{
	GError *err = NULL;
	char *text = term_edit(s->term, form_long_text(s->app), &err);

	if (text)
		form_long_text_set(s->app, text);
	else
		app_complain(s->app, err);
	g_free(text);
}

/* A command of the command line as a process of its own, its output gathered. */
struct work {
	GPid pid;
	struct pollfd pipe[2];	/* its output and its complaints; fd -1 when that has ended */
	GString *out;
};

static gboolean
work_begin(struct work *work, const struct app *a, GError **err)
{
	g_autoptr(GPtrArray) argv = g_ptr_array_new();
	char today[DAY_TEXT];
	const char *const common[] = { a->start.program, "--file", a->start.file, "--boat", a->boat.name, "--today",
				       day_iso(a->start.who.today, today), "--who", a->start.who.name };

	for (guint i = 0; i < G_N_ELEMENTS(common); i++)
		g_ptr_array_add(argv, (gpointer)(guintptr)common[i]);
	for (int i = 0; a->run[i]; i++)
		g_ptr_array_add(argv, a->run[i]);
	g_ptr_array_add(argv, NULL);
	work->out = g_string_new(NULL);
	work->pipe[0].events = work->pipe[1].events = POLLIN;
	return g_spawn_async_with_pipes(NULL, (char **)argv->pdata, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_DO_NOT_REAP_CHILD, NULL,
					NULL, &work->pid, NULL, &work->pipe[0].fd, &work->pipe[1].fd, err);
}

/* FALSE when all of it has come. */
static gboolean
work_read(struct work *work)
{
	char buf[4096];

	if (poll(work->pipe, 2, WORK_MS) < 0)
		return TRUE;
	for (int i = 0; i < 2; i++) {
		ssize_t n = work->pipe[i].revents ? read(work->pipe[i].fd, buf, sizeof buf) : 1;

		if (work->pipe[i].revents && n > 0)
			g_string_append_len(work->out, buf, n);
		if (n <= 0) {
			close(work->pipe[i].fd);
			work->pipe[i].fd = -1;
		}
	}
	return work->pipe[0].fd >= 0 || work->pipe[1].fd >= 0;
}

static void
run_command(struct screen *s)
{
	struct app *a = s->app;
	struct work work = { 0 };
	g_autofree char *title = g_strjoinv(" ", a->run);
	GError *err = NULL;
	gboolean stopped = FALSE;
	int status;

	if (!work_begin(&work, a, &err)) {
		g_string_free(work.out, TRUE);
		return app_complain(a, err);
	}
	for (int i = 0; work_read(&work); i++) {
		if (i >= WORK_SHOWN && i % (1000 / WORK_MS / 4) == 0) {
			app_say(a, STYLE_STRONG, "%s: under way, %d s; Esc stops it", a->run[0], i * WORK_MS / 1000);
			show(s);
		}
		if (!stopped && term_stopped(s->term))
			stopped = kill(work.pid, SIGTERM) == 0;
	}
	while (waitpid(work.pid, &status, 0) < 0)
		continue;
	g_spawn_close_pid(work.pid);
	app_changed(a);
	if (stopped)
		g_string_append(work.out, "Stopped: nothing of it was recorded.\n");
	else if (!work.out->len)
		g_string_append(work.out, "Done.\n");
	app_say(a, STYLE_PLAIN, "%s", stopped ? "stopped" : WIFEXITED(status) && !WEXITSTATUS(status) ? "done" : "it was refused");
	app_page(a, title, g_string_free(work.out, FALSE));
}

static gboolean
grant(struct screen *s)
{
	enum app_wish wish = s->app->wish;

	s->app->wish = WISH_NONE;
	switch (wish) {
	case WISH_NONE: break;
	case WISH_QUIT: return FALSE;
	case WISH_SUSPEND: term_suspend(s->term); break;
	case WISH_REPAINT: term_repaint(s->term); break;
	case WISH_MOUSE:
		s->mouse = !s->mouse;
		term_mouse(s->term, s->mouse);
		app_say(s->app, STYLE_PLAIN, s->mouse ? "mouse on: hold Shift to select text" : "mouse off");
		break;
	case WISH_EDIT: edit_long_text(s); break;
	case WISH_RUN: run_command(s); break;
	}
	return TRUE;
}

gboolean
tui_run(const struct app_start *start, GError **err)
{
	struct screen s = { .term = term_open(FALSE, err) };
	gboolean ok;
	int h, w;

	if (!s.term)
		return FALSE;
	term_size(s.term, &h, &w);
	s.app = app_new(start, h, w, term_ascii(s.term), err);
	s.grid = grid_new(h, w, term_ascii(s.term));
	ok = s.app != NULL;
	if (ok) {
		do {
			struct key_event k;

			show(&s);
			k = term_key(s.term, IDLE_MS);
			if (k.key == K_NONE)
				app_idle(s.app);
			else
				app_key(s.app, &k);
		} while (grant(&s));
	}
	term_close(s.term);
	grid_free(s.grid);
	app_free(s.app);
	return ok;
}
