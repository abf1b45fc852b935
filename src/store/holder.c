#include "store/holder.h"

#include <glib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <unistd.h>

/* SQLite's lock bytes (its file-format document, "locking"): pending, reserved, and 510 shared ones. */
enum { PENDING = 0x40000000, RESERVED, SHARED_FIRST };

struct lock {
	int pid;
	unsigned int major, minor;
	unsigned long inode;
	long long start;
	char kind[8];	/* READ or WRITE */
};

/* "1: POSIX  ADVISORY  WRITE 1234 08:01:131 1073741825 1073741825"; waiting ones have "->" and do not match. */
static gboolean
lock_parse(const char *line, struct lock *l)
{
	return sscanf(line, "%*d: POSIX %*s %7s %d %x:%x:%lu %lld", l->kind, &l->pid, &l->major, &l->minor,
		      &l->inode, &l->start) == 6;
}

/* 2: another writer of this file, 1: another reader, 0: neither.  Some file systems number their device otherwise in
 * /proc, so that inode and lock byte decide. */
static int
lock_weight(const struct lock *l, const GStatBuf *file)
{
	if (l->inode != (unsigned long)file->st_ino || l->pid <= 0 || l->pid == (int)getpid())
		return 0;
	if (l->start == RESERVED || l->start == PENDING)
		return 2;
	return l->start >= SHARED_FIRST && l->start < SHARED_FIRST + 510;
}

static int
find_holder(const GStatBuf *file, struct lock *found)
{
	g_autofree char *text = NULL;
	g_auto(GStrv) lines = NULL;
	int best = 0;

	if (!g_file_get_contents("/proc/locks", &text, NULL, NULL))
		return 0;
	lines = g_strsplit(text, "\n", -1);
	for (int i = 0; lines[i]; i++) {
		struct lock l;
		int weight = lock_parse(lines[i], &l) ? lock_weight(&l, file) : 0;

		if (weight > best) {
			best = weight;
			*found = l;
		}
	}
	return best;
}

char *
holder_words(const char *path)
{
	g_autofree char *file = NULL, *comm = NULL;
	struct lock l;
	GStatBuf st;
	int weight = g_stat(path, &st) ? 0 : find_holder(&st, &l);

	if (!weight)
		return g_strdup("written by another program");
	file = g_strdup_printf("/proc/%d/comm", l.pid);
	if (g_file_get_contents(file, &comm, NULL, NULL))
		g_strchomp(comm);
	return g_strdup_printf("%s by %s (process %d)", weight == 2 ? "written" : "read",
			       comm && *comm ? comm : "another program", l.pid);
}
