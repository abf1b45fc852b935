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
 *   tui/       the screens: views drawn into cells; one file knows the terminal
 *   pdf/       a module, loaded when paper is wanted as PDF
 *
 * Here the program reads the clock and the environment, once, and passes them down. */
#include "cli/cli.h"

#include "base/date.h"
#include "tui/tui.h"

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

static void
read_clock(gint64 *now, gint64 *today)
{
	*now = (gint64)time(NULL);
	*today = local_day(*now);
}

static char *
state_folder(void)
{
	const char *given = g_getenv("XDG_STATE_HOME");

	return given && g_path_is_absolute(given)
		? g_build_filename(given, "splitpin", NULL)
		: g_build_filename(g_get_home_dir(), ".local", "state", "splitpin", NULL);
}

/* The screens know the command line by its table alone. */
static gboolean
run_screens(const struct cli *c, GError **err)
{
	g_autofree char *state = state_folder();
	g_autoptr(GArray) commands = g_array_new(TRUE, TRUE, sizeof(struct app_command));
	struct app_start start = {
		.program = c->program,
		.file = c->file,
		.folder = c->folder,
		.data = c->data,
		.modules = c->modules,
		.state = state,
		.boat = c->boat,
		.who = c->who,
		.read_clock = c->dated ? NULL : read_clock,
	};

	for (int i = 0; cli_commands[i]; i++) {
		struct app_command command = { cli_commands[i]->name, cli_commands[i]->args, cli_commands[i]->summary };

		g_array_append_val(commands, command);
	}
	start.command = (const void *)commands->data;
	return tui_run(&start, err);
}

int
main(int argc, char **argv)
{
	g_autofree char *folder = g_build_filename(g_get_user_data_dir(), "splitpin", NULL);
	g_autofree char *file = logbook_path(folder);
	const char *data = g_getenv("SPLITPIN_DATA"), *modules = g_getenv("SPLITPIN_MODULES");
	struct cli c = {
		.file = file,
		.folder = g_str_has_prefix(file, folder) ? folder : NULL,
		.data = data && *data ? data : SPLITPIN_DATADIR,
		.modules = modules && *modules ? modules : SPLITPIN_MODULES,
		.program = argv[0],
		.screens = run_screens,
	};

	/* The terminal's letters alone; each other category would be one more file to read, and change nothing. */
	setlocale(LC_CTYPE, "");
	/* A file that reaches the size limit is an error to report, not a death; so is a reader that went away. */
	signal(SIGXFSZ, SIG_IGN);
	read_clock(&c.who.now, &c.who.today);
	c.who.name = g_get_user_name();
	c.who.device = g_get_host_name();
	c.who.data = c.data;
	c.columns = columns_of(STDOUT_FILENO);
	c.terminal = isatty(STDOUT_FILENO);
	c.ask = c.terminal && isatty(STDIN_FILENO);
	return cli_run(&c, argc, argv);
}
