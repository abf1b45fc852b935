#include "cli/cli.h"

#include <stdio.h>

const struct command *const cli_commands[] = { &command_new,       &command_outing,
					       &command_due,       &command_why,
					       &command_ready,
					       &command_did,       &command_found,
					       &command_job,
					       &command_yard,      &command_dossier,
					       &command_stay,      &command_season,
					       &command_happening, &command_meter,
					       &command_measure,   &command_figure,
					       &command_wrench,
					       &command_plan,      &command_fitting,
					       &command_place,     &command_stores,
					       &command_boat,
					       &command_import,    &command_export,
					       &command_undo,      &command_redo,
					       &command_history,   &command_verify,
					       &command_backup,    &command_help,
					       NULL };

static const struct option_def options[] = {
	{ "commands", NULL, "only the commands' names, a line each" },
	{ "options", NULL, "only the options of the command, a line each" },
	{ NULL, NULL, NULL },
};

static void
print_options(const struct cli *c, const struct option_def *o)
{
	for (; o && o->name; o++) {
		g_autofree char *left = g_strdup_printf("--%s%s%s", o->name, o->arg ? " " : "", o->arg ? o->arg : "");

		cli_say(c, 27, "  %-24s %s", left, o->help);
	}
}

static void
print_names(const struct option_def *o)
{
	for (; o && o->name; o++)
		printf("%s\n", o->name);
}

static void
print_command(const struct cli *c, const struct command *cmd)
{
	printf("splitpin %s%s%s\n", cmd->name, *cmd->args ? " " : "", cmd->args);
	printf("  %s\n\n", cmd->summary);
	if (cmd->text) {
		cli_say(c, 0, "%s", cmd->text);
		putchar('\n');
	}
	if (cmd->options && cmd->options->name)
		puts("Options:");
	print_options(c, cmd->options);
	puts("Options of every command:");
	print_options(c, cli_common);
}

static void
print_all(void)
{
	puts("splitpin: a maintenance logbook for a boat: hours in, due list out\n\n"
	     "splitpin [--file FILE] [--today DATE] COMMAND ...\n");
	for (int i = 0; cli_commands[i]; i++)
		printf("  %-10s %s\n", cli_commands[i]->name, cli_commands[i]->summary);
	puts("\nsplitpin help COMMAND tells more; see splitpin(1) and splitpin-csv(5).");
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	const char *word = args_word(a, 0);
	const struct command *cmd = word ? cli_command(word, err) : NULL;

	if (word && !cmd)
		return EXIT_USE;
	if (args_flag(a, "commands")) {
		for (int i = 0; cli_commands[i]; i++)
			puts(cli_commands[i]->name);
	} else if (args_flag(a, "options")) {
		print_names(cmd ? cmd->options : NULL);
		print_names(cli_common);
	} else if (cmd) {
		print_command(c, cmd);
	} else {
		print_all();
	}
	return EXIT_DONE;
}

const struct command command_help = {
	"help", "[COMMAND]", "tell what the commands do and take", NULL, options, run, 1,
};
