/* The command line: one table of commands, one file a command. */
#ifndef CLI_CLI_H
#define CLI_CLI_H

#include "cli/args.h"
#include "logbook/book.h"

#include <stdio.h>

enum exit_code {
	EXIT_DONE,
	EXIT_NO, /* the answer is no (with --exit-code, verify) */
	EXIT_USE, /* wrong use: unknown command or option */
	EXIT_DATA, /* what was typed or read is wrong, or contradicts the logbook */
	EXIT_FILE, /* the logbook, or another file, can't be opened, read or written */
};

/* What the program was started with; main fills it in. */
struct cli {
	struct book_who who; /* and today */
	const char *program; /* as it was called */
	const char *file; /* the logbook */
	const char *data; /* folder of the shipped catalogue and demo */
	const char *modules; /* folder of what is loaded when it is wanted */
	const char *boat; /* --boat, NULL: the only one, or all */
	const char *folder; /* where the logbook stands, to be made for a new one; NULL: the user's own choice */
	int columns; /* width of the output; 80 when it is no terminal */
	gboolean terminal; /* the output is one */
	gboolean ask; /* someone can be asked: input and output are terminals */
	gboolean dated; /* today was said, and stays */
	/* Without a command, where someone can be asked: the screens.  NULL: there are none. */
	gboolean (*screens)(const struct cli *c, GError **err);
};

struct command {
	const char *name;
	const char *args; /* "[HOURS] [REMARK]" */
	const char *summary; /* one line */
	const char *text; /* a paragraph and examples */
	const struct option_def *options; /* ends with a name of NULL */
	int (*run)(struct cli *c, const struct args *a, GError **err);
	int words; /* at most so many; -1: any number */
};

/* Run the program's command line; returns an enum exit_code. */
int cli_run(struct cli *c, int argc, char **argv);

/* The table, in the order of help; ends with NULL. */
extern const struct command *const cli_commands[];
/* The command of that name; NULL, and *err with the nearest. */
const struct command *cli_command(const char *word, GError **err);
/* Options that every command takes. */
extern const struct option_def cli_common[];

/* Open the logbook for the command, and the boat meant: --boat, or the only one.  NULL and *err. */
struct book *cli_open(struct cli *c, enum book_mode mode, GError **err);
gboolean cli_boat(struct cli *c, struct book *book, struct boat *boat, GError **err);

/* What most commands come to: open, find the boat, act, close.  An exit code, as act's is. */
typedef int cli_act(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err);
enum book_mode cli_list_mode(const struct args *a); /* to read with --list, else to write */
int cli_with_boat(struct cli *c, enum book_mode mode, const struct args *a, cli_act *act, GError **err);

/* Options as values; an option not given leaves *value as it is.  Errors name the option. */
gboolean opt_date(const struct cli *c, const struct args *a, const char *name, gint64 *value, GError **err);
gboolean opt_yearday(const struct args *a, const char *name, gint64 *value, GError **err);
gboolean opt_hours(const struct args *a, const char *name, gint64 *value, GError **err);
gboolean opt_count(const struct args *a, const char *name, gint64 *value, GError **err);
gboolean opt_word(const struct args *a, const char *name, const struct words *w, gint64 *value, GError **err);
/* --standing; else manual or owner, as --source begins. */
gboolean opt_standing(const struct args *a, gint64 *standing, GError **err);

/* Ask whoever is at the terminal (c->ask); an empty answer is the one in brackets.  FALSE: broken off. */
gboolean cli_ask(const char *ask, const char *otherwise, char *buf, int size);

/* Print "splitpin: ..." to stderr. */
void cli_complain(const GError *err);
/* Print a text, control bytes made harmless, wrapped at the output's width. */
void cli_say(const struct cli *c, int indent, const char *format, ...) G_GNUC_PRINTF(3, 4);
/* Print data for other programs, exact; on a terminal what would steer it is made harmless. */
void cli_data(const struct cli *c, const char *text);
/* The same of what is written to a stream between these two. */
struct cli_stream {
	FILE *to;
	char *text;
	size_t n;
};
FILE *cli_stream_open(const struct cli *c, struct cli_stream *s);
void cli_stream_close(const struct cli *c, struct cli_stream *s);
/* Flush stdout; ERR_SYSTEM when not all could be written. */
gboolean cli_flush(GError **err);

extern const struct command command_help, command_new, command_boat, command_outing, command_stay, command_season,
	command_happening, command_meter, command_measure, command_wrench, command_figure, command_did, command_due,
	command_found, command_ready, command_job, command_why, command_plan, command_fitting, command_place, command_stores,
	command_import, command_export, command_yard, command_dossier, command_undo, command_redo, command_history,
	command_verify, command_backup;

#endif
