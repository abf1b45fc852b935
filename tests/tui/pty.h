/* long: one harness, used by one test program a file.
 * A program on a pseudo-terminal, its screen as libvterm understands it.  Waiting is for what is to be seen, never for time
 * to pass; what does not come within the patience fails and shows the screen. */
#ifndef TESTS_TUI_PTY_H
#define TESTS_TUI_PTY_H

#include "base/date.h"
#include "logbook/transfer.h"

#include <check.h>
#include <errno.h>
#include <glib/gstdio.h>
#include <poll.h>
#include <pty.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <termios.h>
#include <unistd.h>
#include <vterm.h>

enum { PATIENCE_MS = 20000, TURN_MS = 20 };

struct pty {
	int fd, rows, cols;
	pid_t pid;
	VTerm *vt;
	VTermScreen *screen;
	GString *raw;	/* every byte that came */
	gboolean alternate;
	struct termios before;	/* how the terminal was when the program got it */
};

static int
pty_property(VTermProp prop, VTermValue *value, void *user)
{
	struct pty *p = user;

	if (prop == VTERM_PROP_ALTSCREEN)
		p->alternate = value->boolean;
	return 1;
}

static const VTermScreenCallbacks pty_callbacks = { .settermprop = pty_property };

/* env: "NAME=value", ended by NULL, all that the program gets. */
static inline void
pty_start(struct pty *p, int rows, int cols, char *const *argv, char *const *env)
{
	struct winsize size = { .ws_row = (unsigned short)rows, .ws_col = (unsigned short)cols };
	int master, slave;

	*p = (struct pty) { .rows = rows, .cols = cols, .raw = g_string_new(NULL), .vt = vterm_new(rows, cols) };
	vterm_set_utf8(p->vt, 1);
	p->screen = vterm_obtain_screen(p->vt);
	vterm_screen_enable_altscreen(p->screen, 1);
	vterm_screen_set_callbacks(p->screen, &pty_callbacks, p);
	vterm_screen_reset(p->screen, 1);
	ck_assert_int_eq(openpty(&master, &slave, NULL, NULL, NULL), 0);
	tcgetattr(slave, &p->before);
	close(slave);
	close(master);
	p->pid = forkpty(&p->fd, NULL, &p->before, &size);
	if (p->pid == 0) {
		execve(argv[0], argv, env);
		_exit(127);
	}
	ck_assert_int_gt(p->pid, 0);
}

enum pumped { PUMPED_NOTHING, PUMPED_BYTES, PUMPED_END };	/* END: the program has let go of the terminal */

static inline enum pumped
pty_pump(struct pty *p, int ms)
{
	struct pollfd f = { p->fd, POLLIN, 0 };
	char buf[4096];
	ssize_t n;

	if (poll(&f, 1, ms) <= 0)
		return PUMPED_NOTHING;
	n = read(p->fd, buf, sizeof buf);
	if (n <= 0)
		return PUMPED_END;
	g_string_append_len(p->raw, buf, n);
	vterm_input_write(p->vt, buf, (size_t)n);
	return PUMPED_BYTES;
}

/* The screen as lines. */
static inline char *
pty_text(struct pty *p)
{
	GString *out = g_string_new(NULL);
	char line[4096];

	for (int y = 0; y < p->rows; y++) {
		size_t n = vterm_screen_get_text(p->screen, line, sizeof line - 1, (VTermRect) { y, y + 1, 0, p->cols });

		line[n] = '\0';
		g_string_append(out, g_strchomp(line));
		g_string_append_c(out, '\n');
	}
	return g_string_free(out, FALSE);
}

static inline gboolean
pty_has(struct pty *p, const char *words)
{
	g_autofree char *text = pty_text(p);

	return strstr(text, words) != NULL;
}

static inline void
pty_wait(struct pty *p, const char *words, gboolean there, const char *file, int line)
{
	for (int ms = 0; pty_has(p, words) != there;) {
		enum pumped pumped = pty_pump(p, TURN_MS);

		ms += pumped == PUMPED_NOTHING ? TURN_MS : 0;
		if (pumped == PUMPED_END || ms >= PATIENCE_MS) {
			g_autofree char *text = pty_text(p);

			ck_abort_msg("%s:%d: %s \"%s\" on\n%s", file, line, there ? "no" : "still", words, text);
		}
	}
}
#define pty_wants(p, words) pty_wait(p, words, TRUE, __FILE__, __LINE__)
#define pty_gone(p, words) pty_wait(p, words, FALSE, __FILE__, __LINE__)

static inline void
pty_send(struct pty *p, const char *keys)
{
	ck_assert_int_eq(write(p->fd, keys, strlen(keys)), (int)strlen(keys));
}

static inline void
pty_resize(struct pty *p, int rows, int cols)
{
	struct winsize size = { .ws_row = (unsigned short)rows, .ws_col = (unsigned short)cols };

	p->rows = rows;
	p->cols = cols;
	vterm_set_size(p->vt, rows, cols);
	ck_assert_int_eq(ioctl(p->fd, TIOCSWINSZ, &size), 0);
}

static inline VTermPos
pty_cursor(struct pty *p)
{
	VTermPos pos;

	vterm_state_get_cursorpos(vterm_obtain_state(p->vt), &pos);
	return pos;
}

/* Its status, as wait has it, after everything it wrote has come.  What does not end meets the test's own time limit. */
static inline int
pty_end(struct pty *p)
{
	int status = -1;

	while (pty_pump(p, PATIENCE_MS) == PUMPED_BYTES)
		continue;
	ck_assert_int_eq(waitpid(p->pid, &status, 0), p->pid);
	return status;
}

static inline void
pty_clear(struct pty *p)
{
	close(p->fd);
	vterm_free(p->vt);
	g_string_free(p->raw, TRUE);
}

#endif
