#include "tui/term_signals.h"

#include <poll.h>
#include <signal.h>
#include <string.h>
#include <termios.h>
#include <unistd.h>

enum { BYTES = 512, STACK = 64 * 1024 };

static struct {
	char bytes[BYTES];
	gsize n;
	struct termios settings;
	volatile sig_atomic_t end, stop, go_on;
} caught;

/* With what is safe in a handler, and no more. */
static void
on_crash(int sig)
{
	ssize_t done = write(STDOUT_FILENO, caught.bytes, caught.n);

	(void)done;
	tcsetattr(STDIN_FILENO, TCSANOW, &caught.settings);
	signal(sig, SIG_DFL);
	raise(sig);
}

static void
on_end(int sig)
{
	caught.end = sig;
}

static void
on_stop(int sig)
{
	caught.stop = sig;
}

static void
on_go_on(int sig)
{
	caught.go_on = sig;
}

static const struct {
	int sig;
	void (*handler)(int);
	int flags;
} taken[] = {
	{ SIGSEGV, on_crash, (int)SA_RESETHAND | SA_ONSTACK }, { SIGABRT, on_crash, (int)SA_RESETHAND | SA_ONSTACK },
	{ SIGBUS, on_crash, (int)SA_RESETHAND | SA_ONSTACK },  { SIGFPE, on_crash, (int)SA_RESETHAND | SA_ONSTACK },
	{ SIGILL, on_crash, (int)SA_RESETHAND | SA_ONSTACK },  { SIGQUIT, on_crash, (int)SA_RESETHAND | SA_ONSTACK },
	{ SIGHUP, on_end, 0 },	{ SIGTERM, on_end, 0 },	       { SIGINT, on_end, 0 },
	{ SIGTSTP, on_stop, 0 }, { SIGCONT, on_go_on, SA_RESTART },
};

void
signals_keep_settings(void)
{
	tcgetattr(STDIN_FILENO, &caught.settings);
}

void
signals_catch(const char *bytes, gsize n)
{
	static char stack[STACK];	/* of its own, so that an overflow of the usual one is told, too */

	caught.n = MIN(n, sizeof caught.bytes);
	memcpy(caught.bytes, bytes, caught.n);
	caught.end = caught.stop = caught.go_on = 0;
	sigaltstack(&(stack_t) { .ss_sp = stack, .ss_size = sizeof stack }, NULL);
	for (guint i = 0; i < G_N_ELEMENTS(taken); i++)
		sigaction(taken[i].sig, &(struct sigaction) { .sa_handler = taken[i].handler, .sa_flags = taken[i].flags }, NULL);
}

void
signals_leave(void)
{
	for (guint i = 0; i < G_N_ELEMENTS(taken); i++)
		signal(taken[i].sig, SIG_DFL);
}

enum signals_told
signals_told(void)
{
	enum signals_told told = caught.end ? TOLD_END : caught.stop ? TOLD_STOP : caught.go_on ? TOLD_RETURN : TOLD_NOTHING;

	if (told == TOLD_END)
		caught.end = 0;
	else if (told != TOLD_NOTHING)
		signals_forget_stops();
	return told;
}

gboolean
signals_terminal_gone(void)
{
	struct pollfd p = { STDIN_FILENO, POLLIN, 0 };

	return poll(&p, 1, 0) > 0 && p.revents & (POLLHUP | POLLERR | POLLNVAL);
}

void
signals_forget_stops(void)
{
	caught.stop = caught.go_on = 0;
}

void
signals_hold_stop(gboolean on)
{
	sigset_t stop;

	sigemptyset(&stop);
	sigaddset(&stop, SIGTSTP);
	sigprocmask(on ? SIG_BLOCK : SIG_UNBLOCK, &stop, NULL);
}

void
signals_stop(void)
{
	struct sigaction usual = { .sa_handler = SIG_DFL }, ours;

	sigaction(SIGTSTP, &usual, &ours);
	kill(0, SIGTSTP);
	sigaction(SIGTSTP, &ours, NULL);
	signals_forget_stops();
}
