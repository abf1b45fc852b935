/* The shipped knowledge of a kind of boat, in memory: its modules' fittings, tasks and limits.
 *
 * A folder of catalogues has kinds.csv, which says of which modules a kind of boat is made, and a folder a module with
 * fittings.csv, tasks.csv and limits.csv.  Rows are known by their names: a fitting by its path, a task by its name. */
#ifndef LOGBOOK_CATALOGUE_H
#define LOGBOOK_CATALOGUE_H

#include "model/records.h"

#define KIND_GENERATOR "generator" /* the engine of that name, and the kind that its modules are listed under */

/* Where a row was read. */
struct catalogue_from {
	const char *file; /* "sterndrive/tasks.csv", interned */
	gint64 line;
	gboolean each; /* of a fitting: it stands once for every propulsion engine */
};

struct catalogue_part {
	enum record r;
	/* Of that record's struct.  The key is the row's place here, and a reference to a fitting or task is the place of
	 * that; boat is NONE. */
	GArray *rows;
	GArray *from; /* struct catalogue_from, of each row */
	GHashTable *by_name; /* path or name -> its place + 1; NULL: limits have no name */
};

struct catalogue {
	struct catalogue_part fittings, tasks, limits;
};

/* The fuels that there are for a kind, the usual first; none where no catalogue knows the kind, or the folder has no
 * kinds.csv.  NULL and *err when kinds.csv can't be read; the caller's, as GStrv. */
char **catalogue_fuels(const char *folder, const char *kind, GError **err);
/* Read the modules of a kind and a fuel.  With problems (of char *, owned) all that is wrong is added to them,
 * "file:line:column: what", and what is right is returned; without, the first is *err, and NULL returned. */
struct catalogue *catalogue_read(const char *folder, const char *kind, const char *fuel, GPtrArray *problems, GError **err);
void catalogue_free(struct catalogue *c); /* NULL: nothing */

/* As it stands on a boat with these engines (struct engine), by boat->kind and boat->catalogue:
 * with several propulsion engines what each has goes by port/engine/coupler and port-coupler.grease, "Coupler, port", and
 * counts that engine's hours.  With a generator, its modules are there as well, and the rest counts the hours of the
 * (first) propulsion engine, so that they are never mixed.  Without a catalogue for the kind it has no rows. */
struct catalogue *catalogue_for_boat(const char *folder, const struct boat *boat, const GArray *engines, GError **err);

/* "inboard", or "inboard petrol" where petrol is not the usual one; what boat.catalogue keeps.  NULL and *err for a fuel
 * that the kind has not, NULL alone when there is no catalogue; the caller's. */
char *catalogue_name(const char *folder, const char *kind, const char *fuel, GError **err);

/* A row; a place; where a row was read. */
const struct fitting *catalogue_fitting(const struct catalogue *c, gint64 at);
const struct task *catalogue_task(const struct catalogue *c, gint64 at);
const struct limit *catalogue_limit(const struct catalogue *c, gint64 at);
gint64 catalogue_find(const struct catalogue_part *p, const char *name); /* NONE: no such path or name */
const struct catalogue_from *catalogue_row_from(const struct catalogue_part *p, gint64 at);

/* The edition of the catalogues in a folder: the last of editions.csv; NONE when it says none. */
gint64 catalogue_edition(const char *folder);

/* Into the logbook with it, for the boat: boat->catalogue is set and kept, and without rates the logbook gets those of the
 * folder.  Within a command that is under way. */
struct book;
struct catalogue_given { int fittings, tasks; };
gboolean catalogue_put(struct book *b, const char *folder, struct boat *boat, const char *fuel,
		       struct catalogue_given *given, GError **err);

#endif
