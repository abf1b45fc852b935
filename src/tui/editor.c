#include "tui/editor.h"

#include "base/err.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

static char *
command_line(void)
{
	static const char *const names[] = { "VISUAL", "EDITOR" };
	const char *editor = "vi";

	for (guint i = G_N_ELEMENTS(names); i-- > 0;)
		if (getenv(names[i]) && *getenv(names[i]))
			editor = getenv(names[i]);
	return g_strdup_printf("exec %s \"$1\"", editor);
}

/* Its stop was the whole job's, ours as well, and is over. */
static gboolean
has_gone_on(pid_t pid)
{
	int status;

	return waitpid(pid, &status, WCONTINUED | WNOHANG) == pid && WIFCONTINUED(status);
}

/* Its status, -1: none.  An editor that stops itself alone stops the program, too, or no shell would have the terminal again. */
static int
wait_for(pid_t pid)
{
	for (;;) {
		int status;
		pid_t told = waitpid(pid, &status, WUNTRACED);

		if (told == pid && !WIFSTOPPED(status))
			return status;
		if (told < 0 && errno != EINTR)
			return -1;
		if (told < 0 || has_gone_on(pid))
			continue;
		raise(SIGTSTP);
		kill(pid, SIGCONT);
	}
}

/* The editor's exit code, or -1: it could not be started or was killed. */
static int
run(const char *path)
{
	static const int keys[] = { SIGINT, SIGQUIT, SIGTSTP };
	struct sigaction ignore = { .sa_handler = SIG_IGN }, usual = { .sa_handler = SIG_DFL }, was[G_N_ELEMENTS(keys)];
	g_autofree char *command = command_line();
	int status = -1;
	pid_t pid;

	for (guint i = 0; i < G_N_ELEMENTS(keys); i++)
		sigaction(keys[i], keys[i] == SIGTSTP ? &usual : &ignore, &was[i]);
	pid = fork();
	if (pid == 0) {
		for (guint i = 0; i < G_N_ELEMENTS(keys); i++)
			sigaction(keys[i], &usual, NULL);
		execl("/bin/sh", "sh", "-c", command, "sh", path, (char *)NULL);
		raise(SIGKILL);
	}
	if (pid > 0)
		status = wait_for(pid);
	for (guint i = 0; i < G_N_ELEMENTS(keys); i++)
		sigaction(keys[i], &was[i], NULL);
	return pid > 0 && WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

/* What is in the file; what is no text stays there. */
static char *
take(char **path, GError **err)
{
	g_autofree char *text = NULL;
	gsize n;

	if (!g_file_get_contents(*path, &text, &n, err))
		return NULL;
	if (g_utf8_validate(text, (gssize)n, NULL))
		return g_strchomp(g_steal_pointer(&text));
	err_set(err, ERR_INPUT, "the editor wrote what is no UTF-8: the text stays as it was, what was written is in %s", *path);
	g_clear_pointer(path, g_free);
	return NULL;
}

char *
editor_text(const char *text, GError **err)
{
	g_autofree char *path = NULL;
	char *edited = NULL;
	int fd = g_file_open_tmp("splitpin-XXXXXX.txt", &path, err), code;

	if (fd < 0)
		return NULL;
	close(fd);
	if (g_file_set_contents_full(path, text, -1, G_FILE_SET_CONTENTS_NONE, 0600, err)) {
		code = run(path);
		if (code)
			err_set(err, ERR_SYSTEM, "the editor ended with %d: the text stays as it was", code);
		else
			edited = take(&path, err);
	}
	if (path)
		g_remove(path);
	return edited;
}
