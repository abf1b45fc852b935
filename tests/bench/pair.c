/* Two commands in turn, A B A B ..., and how their times compare round by round:
 *
 *	pair [-n ROUNDS] [-r TIMES] [-o FILE] [-b SHELL-COMMAND] A ... ::: B ...
 *
 * A round's time is the median of TIMES runs.  What they print goes to FILE, or nowhere.  Before each run, untimed, a
 * shell command can lay out what it needs.  Prints one line of words:
 *	ratio least most cpu-ratio msA msB cpuA cpuB kibA kibB
 * where ratio is the median of A's wall-clock time over B's of the same round, cpu the same of processor time, and kib
 * the largest peak memory.  Pairing cancels what the machine does beside; a ratio of processor times is steadier still,
 * but blind to waiting. */
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { MOST = 1000 };

struct command { char **argv; double wall[MOST], cpu[MOST]; long kib; };

struct how { int rounds, times; const char *out, *before; };

static double
seconds(struct timeval t)
{
	return (double)t.tv_sec + (double)t.tv_usec / 1e6;
}

static double
now(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec + (double)t.tv_nsec / 1e9;
}

static int
compare(const void *x, const void *y)
{
	double a = *(const double *)x, b = *(const double *)y;

	return (a > b) - (a < b);
}

static double
median(const double *x, int n)
{
	static double sorted[MOST];

	memcpy(sorted, x, (size_t)n * sizeof *x);
	qsort(sorted, (size_t)n, sizeof *sorted, compare);
	return n % 2 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
}

static void
become(const struct how *how, char **argv)
{
	int fd = open(how->out ? how->out : "/dev/null", O_WRONLY | O_CREAT | O_TRUNC, 0600);

	if (fd < 0 || dup2(fd, STDOUT_FILENO) < 0)
		_exit(126);
	execvp(argv[0], argv);
	_exit(127);
}

static void
run_once(const struct how *how, struct command *c, double *wall, double *cpu)
{
	struct rusage use;
	int status;
	double start;
	pid_t pid;

	if (how->before && system(how->before))
		exit(3);
	start = now();
	pid = fork();
	if (pid == 0)
		become(how, c->argv);
	if (pid < 0 || wait4(pid, &status, 0, &use) != pid || status) {
		fprintf(stderr, "pair: %s failed\n", c->argv[0]);
		exit(3);
	}
	*wall = now() - start;
	*cpu = seconds(use.ru_utime) + seconds(use.ru_stime);
	if (use.ru_maxrss > c->kib)
		c->kib = use.ru_maxrss;
}

static void
run_round(const struct how *how, struct command *c, int round)
{
	static double wall[MOST], cpu[MOST];

	for (int i = 0; i < how->times; i++)
		run_once(how, c, &wall[i], &cpu[i]);
	c->wall[round] = median(wall, how->times);
	c->cpu[round] = median(cpu, how->times);
}

static void
report(const struct how *how, const struct command *a, const struct command *b)
{
	static double ratio[MOST], cpu[MOST];
	int n = how->rounds;

	for (int i = 0; i < n; i++) {
		ratio[i] = a->wall[i] / b->wall[i];
		cpu[i] = a->cpu[i] / (b->cpu[i] > 0 ? b->cpu[i] : 1e-6);
	}
	qsort(ratio, (size_t)n, sizeof *ratio, compare);
	printf("%.3f %.3f %.3f %.3f %.2f %.2f %.2f %.2f %ld %ld\n", median(ratio, n), ratio[0], ratio[n - 1], median(cpu, n),
	       median(a->wall, n) * 1e3, median(b->wall, n) * 1e3, median(a->cpu, n) * 1e3, median(b->cpu, n) * 1e3, a->kib,
	       b->kib);
}

static int
number(const char *text)
{
	int n = atoi(text);

	return n < 1 ? 1 : n > MOST ? MOST : n;
}

int
main(int argc, char **argv)
{
	static struct command a, b;
	struct how how = { 9, 1, NULL, NULL };
	int option;

	while ((option = getopt(argc, argv, "+n:r:o:b:")) != -1)
		switch (option) {
		case 'n': how.rounds = number(optarg); break;
		case 'r': how.times = number(optarg); break;
		case 'o': how.out = optarg; break;
		case 'b': how.before = optarg; break;
		default: return 2;
		}
	a.argv = b.argv = argv + optind;
	while (*b.argv && strcmp(*b.argv, ":::"))
		b.argv++;
	if (!*b.argv || !b.argv[1] || a.argv == b.argv) {
		fputs("pair [-n ROUNDS] [-r TIMES] [-o FILE] [-b SHELL-COMMAND] A ... ::: B ...\n", stderr);
		return 2;
	}
	*b.argv++ = NULL;
	run_round(&how, &a, 0);	/* warm, and thrown away */
	run_round(&how, &b, 0);
	for (int i = 0; i < how.rounds; i++) {
		run_round(&how, &a, i);
		run_round(&how, &b, i);
	}
	report(&how, &a, &b);
	return 0;
}
