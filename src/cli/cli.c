#include "cli/cli.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "base/text.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const struct option_def cli_common[] = {
	{ "file", "FILE", "the logbook; else SPLITPIN_FILE, else boat.splitpin in the user's data folder" },
	{ "boat", "NAME", "which boat, when the logbook holds several" },
	{ "today", "DATE", "take this day for today" },
	{ "who", "NAME", "who makes the entry; else the login name" },
	{ "help", NULL, "show what the command does and takes" },
	{ "version", NULL, "show the version" },
	{ NULL, NULL, NULL },
};

void
cli_complain(const GError *err)
{
	g_autofree char *text = text_harmless(err->message, TRUE);

	fflush(stdout);
	fprintf(stderr, "splitpin: %s%s\n", text,
		g_error_matches(err, ERR_DOMAIN, ERR_DOUBT) ? " --yes takes it as it is" : "");
}

gboolean
cli_ask(const char *ask, const char *otherwise, char *buf, int size)
{
	printf("%s%s%s%s: ", ask, *otherwise ? " [" : "", otherwise, *otherwise ? "]" : "");
	fflush(stdout);
	if (!fgets(buf, size, stdin))
		return FALSE;
	g_strstrip(buf);
	if (!*buf)
		g_strlcpy(buf, otherwise, (gsize)size);
	return TRUE;
}

void
cli_say(const struct cli *c, int indent, const char *format, ...)
{
	g_autofree char *text = NULL, *safe = NULL;
	g_autoptr(GString) out = g_string_new(NULL);
	va_list ap;

	va_start(ap, format);
	text = g_strdup_vprintf(format, ap);
	va_end(ap);
	safe = text_harmless(text, TRUE);
	text_wrap(out, safe, c->columns, indent);
	puts(out->str);
}

void
cli_data(const struct cli *c, const char *text)
{
	g_auto(GStrv) lines = NULL;

	if (!c->terminal) {
		fputs(text, stdout);
		return;
	}
	lines = g_strsplit(text, "\r\n", -1);
	for (int i = 0; lines[i]; i++) {
		g_autofree char *safe = text_harmless(lines[i], TRUE);

		printf("%s%s", i ? "\n" : "", safe);
	}
}

FILE *
cli_stream_open(const struct cli *c, struct cli_stream *s)
{
	*s = (struct cli_stream){ NULL, NULL, 0 };
	s->to = c->terminal ? open_memstream(&s->text, &s->n) : NULL;
	return s->to ? s->to : stdout;
}

void
cli_stream_close(const struct cli *c, struct cli_stream *s)
{
	if (!s->to)
		return;
	fclose(s->to);
	cli_data(c, s->text);
	free(s->text);
}

gboolean
cli_flush(GError **err)
{
	if (fflush(stdout) == 0 && !ferror(stdout))
		return TRUE;
	return err_set(err, ERR_SYSTEM, "not everything could be written to the output");
}

static int
exit_of(const GError *err)
{
	if (err->domain != ERR_DOMAIN)
		return EXIT_FILE;
	switch ((enum err_code)err->code) {
	case ERR_USE:
		return EXIT_USE;
	case ERR_INPUT:
	case ERR_NOT_FOUND:
	case ERR_CONFLICT:
	case ERR_DOUBT:
		return EXIT_DATA;
	case ERR_STORE:
	case ERR_SYSTEM:
		return EXIT_FILE;
	}
	return EXIT_FILE;
}

struct book *
cli_open(struct cli *c, enum book_mode mode, GError **err)
{
	return book_open(c->file, mode, &c->who, err);
}

gboolean
cli_boat(struct cli *c, struct book *book, struct boat *boat, GError **err)
{
	return book_boat(book, c->boat, boat, err);
}

enum book_mode
cli_list_mode(const struct args *a)
{
	return args_flag(a, "list") ? BOOK_READ : BOOK_WRITE;
}

int
cli_with_boat(struct cli *c, enum book_mode mode, const struct args *a, cli_act *act, GError **err)
{
	struct book *b = cli_open(c, mode, err);
	struct boat boat;
	int code = EXIT_DATA;

	if (!b)
		return EXIT_FILE;
	if (cli_boat(c, b, &boat, err)) {
		code = act(c, b, &boat, a, err);
		record_clear(RECORD_BOAT, &boat);
	}
	book_close(b);
	return code;
}

static gboolean
option_failed(GError **err, const char *name)
{
	return err_prefix(err, "--%s: ", name);
}

gboolean
opt_date(const struct cli *c, const struct args *a, const char *name, gint64 *value, GError **err)
{
	const char *text = args_value(a, name);

	return !text || day_parse(text, c->who.today, value, err) || option_failed(err, name);
}

gboolean
opt_yearday(const struct args *a, const char *name, gint64 *value, GError **err)
{
	const char *text = args_value(a, name);

	return !text || yearday_parse(text, value, err) || option_failed(err, name);
}

gboolean
opt_hours(const struct args *a, const char *name, gint64 *value, GError **err)
{
	const char *text = args_value(a, name);

	return !text || hours_parse(text, value, err) || option_failed(err, name);
}

gboolean
opt_count(const struct args *a, const char *name, gint64 *value, GError **err)
{
	const char *text = args_value(a, name);

	return !text || count_parse(text, value, err) || option_failed(err, name);
}

gboolean
opt_word(const struct args *a, const char *name, const struct words *w, gint64 *value, GError **err)
{
	const char *text = args_value(a, name);

	return !text || word_parse(w, text, value, err) || option_failed(err, name);
}

gboolean
opt_standing(const struct args *a, gint64 *standing, GError **err)
{
	const char *source = args_value(a, "source");

	*standing = source && !g_ascii_strncasecmp(source, "manual", 6) ? STANDING_MANUAL : STANDING_OWNER;
	return opt_word(a, "standing", &words_standing, standing, err);
}

const struct command *
cli_command(const char *word, GError **err)
{
	g_autoptr(GPtrArray) names = g_ptr_array_new();
	g_autofree char *shown = NULL;
	const char *near;

	for (int i = 0; cli_commands[i]; i++) {
		if (!strcmp(cli_commands[i]->name, word))
			return cli_commands[i];
		g_ptr_array_add(names, (gpointer)(guintptr)cli_commands[i]->name);
	}
	near = text_nearest(word, (const char *const *)names->pdata, (int)names->len);
	shown = text_harmless(word, FALSE);
	if (near)
		err_set(err, ERR_INPUT, "there is no command \"%.40s\": is \"%s\" meant?", shown, near);
	else
		err_set(err, ERR_INPUT, "there is no command \"%.40s\": splitpin help lists them", shown);
	return NULL;
}

static gboolean
take_common(struct cli *c, const struct args *a, GError **err)
{
	if (args_value(a, "file")) {
		c->file = args_value(a, "file");
		c->folder = NULL;
	}
	if (args_value(a, "boat"))
		c->boat = args_value(a, "boat");
	if (args_value(a, "who") && !g_utf8_validate(args_value(a, "who"), -1, NULL))
		return err_set(err, ERR_INPUT, "--who: this is no UTF-8 text");
	if (args_value(a, "who"))
		c->who.name = args_value(a, "who");
	c->dated = c->dated || args_value(a, "today");
	return opt_date(c, a, "today", &c->who.today, err);
}

static int
run_command(struct cli *c, const struct command *cmd, int argc, char **argv)
{
	const struct option_def *const tables[] = { cli_common, cmd->options };
	g_autoptr(GError) err = NULL;
	struct args a;
	int code = EXIT_USE;

	if (args_parse(&a, argc, argv, tables, NULL, &err)) {
		if (args_flag(&a, "help")) {
			GPtrArray *words = g_ptr_array_new();

			g_ptr_array_add(words, (gpointer)(guintptr)cmd->name);
			g_ptr_array_unref(a.words);
			a.words = words;
			code = command_help.run(c, &a, &err);
		} else if (args_flag(&a, "version")) {
			puts("splitpin " SPLITPIN_VERSION);
			code = EXIT_DONE;
		} else if (cmd->words >= 0 && (int)a.words->len > cmd->words) {
			err_set(&err, ERR_USE, "\"%.40s\" is too much: splitpin %s%s%s", args_word(&a, (guint)cmd->words),
				cmd->name, *cmd->args ? " " : "", cmd->args);
		} else if (take_common(c, &a, &err)) {
			code = cmd->run(c, &a, &err);
		} else {
			code = EXIT_DATA;
		}
		if (!err)
			cli_flush(&err);
		if (err && code != EXIT_USE)
			code = exit_of(err);
	}
	if (err)
		cli_complain(err);
	if (err && code == EXIT_USE)
		fprintf(stderr, "splitpin help %s shows what it takes\n", cmd->name);
	args_clear(&a);
	return code;
}

static int
run_help(struct cli *c)
{
	static char help[] = "help", *help_argv[] = { help, NULL };

	return run_command(c, &command_help, 1, help_argv);
}

/* Without a command: the screens; where there can be none the due list, and why. */
static int
run_bare(struct cli *c, GError **err)
{
	static char due[] = "due", *due_argv[] = { due, NULL };
	g_autoptr(GError) why = NULL;
	int code;

	if (c->ask && c->screens && c->screens(c, &why))
		return EXIT_DONE;
	if (why && !g_error_matches(why, ERR_DOMAIN, ERR_USE)) {
		g_propagate_error(err, g_steal_pointer(&why));
		return exit_of(*err);
	}
	if (!g_file_test(c->file, G_FILE_TEST_EXISTS))
		return run_help(c);
	code = run_command(c, &command_due, 1, due_argv);
	fprintf(stderr, "splitpin: %s\n", why ? why->message : "the screens need a terminal; splitpin help lists the commands");
	return code;
}

/* Options before the command: the common ones only. */
static int
run_words(struct cli *c, struct args *a, int argc, char **argv, GError **err)
{
	const struct option_def *const tables[] = { cli_common, NULL };
	const struct command *cmd;
	int rest = 0;

	if (!args_parse(a, argc, argv, tables, &rest, err))
		return EXIT_USE;
	if (args_flag(a, "version")) {
		puts("splitpin " SPLITPIN_VERSION);
		return cli_flush(err) ? EXIT_DONE : EXIT_FILE;
	}
	if (!take_common(c, a, err))
		return EXIT_DATA;
	if (args_flag(a, "help"))
		return run_help(c);
	if (rest >= argc)
		return run_bare(c, err);
	cmd = cli_command(argv[rest], err);
	return cmd ? run_command(c, cmd, argc - rest, argv + rest) : EXIT_USE;
}

int
cli_run(struct cli *c, int argc, char **argv)
{
	g_autoptr(GError) err = NULL;
	struct args a = { 0 };
	int code = run_words(c, &a, argc, argv, &err);

	if (err)
		cli_complain(err);
	args_clear(&a);
	return code;
}
