/* Printing shared by the commands. */
#ifndef CLI_SHOW_H
#define CLI_SHOW_H

#include "cli/cli.h"

/* A record's key as its sixteen letters, typed back. */
gboolean key_parse(const char *text, gint64 *key, GError **err);

/* List a boat's records of one kind, a line each with its key; `--since` leaves older ones out.  An exit code. */
int show_records(struct cli *c, struct book *b, enum record r, gint64 boat, const struct args *a, GError **err);

/* The same of those alone whose field is that key. */
struct show_only {
	enum record r;
	gint64 boat;
	const char *field;
	gint64 key;
};
int show_records_of(struct cli *c, struct book *b, const struct show_only *only, const struct args *a, GError **err);

/* --waive of ready and of found: what the words mean is let pass, with --reason and --until. */
gboolean waive_thing(struct cli *c, struct book *b, gint64 boat, const char *thing, const struct args *a, GError **err);

/* Text cut or padded to columns, harmless; printed. */
void show_fit(const char *text, int columns);

#endif
