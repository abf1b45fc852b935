/* splitpin: a maintenance logbook for boats.
 *
 * The map, from the ground up; a layer includes only what stands below it (tests/lint/layers.sh holds it to that):
 *
 *   base/      dates, amounts, text, errors
 *   engine/    the computation: exposure, clocks, due days.  Values in, values out; no file, no clock
 *   model/     the records, their fields and their words
 *   store/     the SQLite file: schema, statements, journal, verification
 *   exchange/  CSV and JSON
 *   logbook/   what the front ends see: open, record, correct, undo, ask
 *   cli/       one file a command
 *
 * Here the program reads the clock and the environment, once, and passes them down. */
#include "cli/cli.h"

#include "base/date.h"

#include <errno.h>
#include <locale.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/ioctl.h>
#include <time.h>
#include <unistd.h>

static gint64
local_day(gint64 now)
{
	time_t t = (time_t)now;
	struct tm tm;

	return localtime_r(&t, &tm) ? day_from_ymd(tm.tm_year + 1900, tm.tm_mon + 1, tm.tm_mday) : NONE;
}

static int
columns_of(int fd)
{
	struct winsize size;

	if (!isatty(fd) || ioctl(fd, TIOCGWINSZ, &size) || size.ws_col < 20)
		return 80;
	return size.ws_col;
}

static char *
logbook_path(const char *folder)
{
	const char *given = g_getenv("SPLITPIN_FILE");

	return given && *given ? g_strdup(given) : g_build_filename(folder, "boat.splitpin", NULL);
}

int
main(int argc, char **argv)
{
	g_autofree char *folder = g_build_filename(g_get_user_data_dir(), "splitpin", NULL);
	g_autofree char *file = logbook_path(folder);
	const char *data = g_getenv("SPLITPIN_DATA");
	struct cli c = {
		.file = file,
		.folder = g_str_has_prefix(file, folder) ? folder : NULL,
		.data = data && *data ? data : SPLITPIN_DATADIR,
	};

	/* The terminal's letters alone; each other category would be one more file to read, and change nothing. */
	setlocale(LC_CTYPE, "");
	/* A file that reaches the size limit is an error to report, not a death; so is a reader that went away. */
	signal(SIGXFSZ, SIG_IGN);
	c.who.now = (gint64)time(NULL);
	c.who.today = local_day(c.who.now);
	c.who.name = g_get_user_name();
	c.who.device = g_get_host_name();
	c.columns = columns_of(STDOUT_FILENO);
	c.terminal = isatty(STDOUT_FILENO);
	c.ask = c.terminal && isatty(STDIN_FILENO);
	return cli_run(&c, argc, argv);
}
