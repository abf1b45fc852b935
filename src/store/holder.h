/* Who holds a lock on a logbook. */
#ifndef STORE_HOLDER_H
#define STORE_HOLDER_H

/* "written by splitpin (process 1234)", "read by ...", or "written by another program".  Opens no descriptor of
 * the file: closing one would drop this process's own locks on it.  The caller frees it. */
char *holder_words(const char *path);

#endif
