/* A logbook as both front ends see it: open, look up, record, ask.  Every recording function is one transaction and
 * one journal entry; it fills *err and changes nothing when it fails. */
#ifndef LOGBOOK_BOOK_H
#define LOGBOOK_BOOK_H

#include "model/records.h"

struct book;

enum book_mode { BOOK_READ, BOOK_WRITE };

/* Who acts, and when: the program reads the clock once and passes it down. */
struct book_who {
	const char *name, *device;
	gint64 now; /* UTC seconds since 1970 */
	gint64 today; /* day number */
	const char *data; /* folder of what is shipped: the catalogue; NULL: none */
};

/* Keeps no pointer into *who but its texts, which must outlive the book. */
struct book *book_open(const char *path, enum book_mode mode, const struct book_who *who, GError **err);
/* A new, empty logbook; never over an existing file. */
struct book *book_create(const char *path, const struct book_who *who, GError **err);
void book_close(struct book *b);

gint64 book_today(const struct book *b);

/* A record's key as sixteen letters, so that nothing takes it for a number; and back (FALSE: it is none). */
char *book_key_text(gint64 key);
gboolean book_key(const char *text, gint64 *key);

/* The boat of that name, or with NULL the only one.  Clear with record_clear(RECORD_BOAT). */
gboolean book_boat(struct book *b, const char *name, struct boat *boat, GError **err);
/* All records of a kind that belong to a boat (rates: all), in their stable order: an array of structs that clears
 * itself. */
GArray *book_records(struct book *b, enum record r, gint64 boat, GError **err);
/* All boats. */
GArray *book_boats(struct book *b, GError **err);

/* The task, or the fitting, that the words mean: its exact name or path, or words that all stand in its name,
 * title or fitting; of fittings the one whose whole title, or end of its path, they are comes before others that
 * hold them.  ERR_NOT_FOUND, or ERR_INPUT naming the candidates. */
gboolean book_find_task(struct book *b, gint64 boat, const char *words, struct task *task, GError **err);
gboolean book_find_fitting(struct book *b, gint64 boat, const char *words, struct fitting *fitting, GError **err);

/* The journal. */
struct book_entry {
	gint64 seq, at;
	char *who, *device, *what;
	gint64 undoes, redoes, undone_by; /* NONE: not */
};
void book_entry_clear(struct book_entry *e);
char *book_entry_time(const struct book_entry *e); /* UTC, as the journal keeps it: "2026-11-25 17:04"; the caller's */
/* The newest entries, newest first. */
GArray *book_history(struct book *b, int limit, GError **err);
/* Of the entry of that number, or with NONE of the newest, whose number is 0 when there is none: when it was made (UTC seconds),
 * and its hash in hexadecimal, the caller's.  It stands for all entries up to it, each of which holds the hash of the one
 * before. */
gboolean book_entry_hash(struct book *b, gint64 *seq, gint64 *at, char **hash, GError **err);
/* What an entry changed, a line a changed field, through say(user, line). */
gboolean book_history_entry(struct book *b, gint64 seq, void (*say)(void *user, const char *line), void *user,
			    GError **err);
/* Take the newest entry in force back, or bring back what was taken back last; *e says which (clear it). */
gboolean book_undo(struct book *b, struct book_entry *e, GError **err);
gboolean book_redo(struct book *b, struct book_entry *e, GError **err);
/* Check everything that can be checked; each problem through say.  *problems counts them. */
gboolean book_verify(struct book *b, void (*say)(void *user, const char *line), void *user, int *problems,
		     GError **err);
gboolean book_backup(struct book *b, const char *path, GError **err);

#endif
