/* Two programs with screens in turn on a pseudo-terminal of 80x24: how long until the first frame is there, and from a key
 * until the terminal hears of it.
 *
 *	screen [-n ROUNDS] [-k KEYS] -m MARK A ... ::: B ...
 *
 * MARK is text of each program's last line: where it comes, the frame is whole.  Keys are j and k in turn, and q at the end.
 * Prints one line of words:
 *	ratio least most msA msB kibA | key-ratio key-msA key-msB key-msA-95th
 * where ratio is the median of A's time to its first frame over B's of the same round. */
#include <fcntl.h>
#include <poll.h>
#include <pty.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { MOST = 5000, PATIENCE_MS = 5000 };

struct program {
	char **argv;
	double frame[MOST], key[MOST];
	int n_keys;
	long kib;
};

struct how { int rounds, keys; const char *mark; };

static double
now(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec * 1e3 + (double)t.tv_nsec / 1e6;
}

static int
compare(const void *x, const void *y)
{
	double a = *(const double *)x, b = *(const double *)y;

	return (a > b) - (a < b);
}

static double
quantile(const double *x, int n, double q)
{
	static double sorted[MOST];

	memcpy(sorted, x, (size_t)n * sizeof *x);
	qsort(sorted, (size_t)n, sizeof *sorted, compare);
	return sorted[(int)(q * (n - 1) + .5)];
}

static void
give_up(const struct program *p, const char *what)
{
	fprintf(stderr, "screen: %s: %s\n", p->argv[0], what);
	exit(3);
}

static int
readable(int fd, int ms)
{
	struct pollfd p = { fd, POLLIN, 0 };

	return poll(&p, 1, ms) > 0;
}

/* Read until the mark has come. */
static void
first_frame(const struct how *how, const struct program *p, int fd)
{
	static char seen[1 << 20];
	size_t n = 0;

	for (;;) {
		ssize_t got = readable(fd, PATIENCE_MS) ? read(fd, seen + n, sizeof seen - 1 - n) : 0;

		if (got <= 0)
			give_up(p, "the mark never came");
		n += (size_t)got;
		seen[n] = '\0';
		if (strstr(seen, how->mark))
			return;
	}
}

static void
drain(int fd)
{
	char buf[4096];

	while (readable(fd, 3) && read(fd, buf, sizeof buf) > 0)
		continue;
}

static void
keys(const struct how *how, struct program *p, int fd)
{
	char buf[65536];

	for (int i = 0; i < how->keys && p->n_keys < MOST; i++) {
		double start = now();

		if (write(fd, i % 2 ? "k" : "j", 1) != 1 || !readable(fd, PATIENCE_MS) || read(fd, buf, sizeof buf) <= 0)
			give_up(p, "a key showed nothing");
		p->key[p->n_keys++] = now() - start;
		drain(fd);
	}
}

static void
run_once(const struct how *how, struct program *p, int round)
{
	struct winsize size = { .ws_row = 24, .ws_col = 80 };
	struct rusage use;
	double start = now();
	int fd, status;
	pid_t pid = forkpty(&fd, NULL, NULL, &size);

	if (pid == 0) {
		setenv("TERM", "xterm-256color", 1);
		execvp(p->argv[0], p->argv);
		_exit(127);
	}
	if (pid < 0)
		give_up(p, "no pseudo-terminal");
	first_frame(how, p, fd);
	p->frame[round] = now() - start;
	drain(fd);
	keys(how, p, fd);
	if (write(fd, "q", 1) != 1)
		give_up(p, "it had ended");
	drain(fd);
	if (wait4(pid, &status, 0, &use) != pid || status)
		give_up(p, "it ended badly");
	close(fd);
	if (use.ru_maxrss > p->kib)
		p->kib = use.ru_maxrss;
}

int
main(int argc, char **argv)
{
	static struct program a, b;
	static double ratio[MOST];
	struct how how = { 9, 40, NULL };
	int option;

	while ((option = getopt(argc, argv, "+n:k:m:")) != -1)
		switch (option) {
		case 'n': how.rounds = atoi(optarg); break;
		case 'k': how.keys = atoi(optarg); break;
		case 'm': how.mark = optarg; break;
		default: return 2;
		}
	a.argv = b.argv = argv + optind;
	while (*b.argv && strcmp(*b.argv, ":::"))
		b.argv++;
	if (!how.mark || !*b.argv || !b.argv[1] || a.argv == b.argv || how.rounds < 1 || how.rounds > 100) {
		fputs("screen [-n ROUNDS] [-k KEYS] -m MARK A ... ::: B ...\n", stderr);
		return 2;
	}
	*b.argv++ = NULL;
	run_once(&how, &a, 0);	/* warm, and thrown away */
	run_once(&how, &b, 0);
	a.n_keys = b.n_keys = 0;
	for (int i = 0; i < how.rounds; i++) {
		run_once(&how, &a, i);
		run_once(&how, &b, i);
		ratio[i] = a.frame[i] / b.frame[i];
	}
	printf("%.3f %.3f %.3f %.2f %.2f %ld | %.3f %.3f %.3f %.3f\n", quantile(ratio, how.rounds, .5),
	       quantile(ratio, how.rounds, 0), quantile(ratio, how.rounds, 1), quantile(a.frame, how.rounds, .5),
	       quantile(b.frame, how.rounds, .5), a.kib, quantile(a.key, a.n_keys, .5) / quantile(b.key, b.n_keys, .5),
	       quantile(a.key, a.n_keys, .5), quantile(b.key, b.n_keys, .5), quantile(a.key, a.n_keys, .95));
	return 0;
}
