/* The shipped knowledge of a kind of boat, in memory: its modules' fittings, tasks and limits.
 *
 * A folder of catalogues has kinds.csv, which says of which modules a kind of boat is made, and a folder a module with
 * fittings.csv, tasks.csv and limits.csv.  Rows are known by their names: a fitting by its path, a task by its name. */
#ifndef LOGBOOK_CATALOGUE_H
#define LOGBOOK_CATALOGUE_H

#include "model/records.h"

#define KIND_GENERATOR "generator" /* the engine of that name, and the kind that its modules are listed under */

/* Where a row was read. */
enum module_stand {
	MODULE_ONCE, MODULE_EACH, /* once for every propulsion engine */
	MODULE_ASKED, /* once, where the owner says that there is one, or the boat lies on one */
	MODULE_EITHER, /* for every engine; of those so marked the owner's, and all of them until the owner says which */
};
extern const struct words words_module_stand; /* no yes asked either: the column each */

struct catalogue_from {
	const char *file, *module; /* "sterndrive/tasks.csv", "sterndrive"; interned */
	gint64 line;
	enum module_stand stand;
};
gboolean module_for_each(enum module_stand stand); /* what is of it stands once for every propulsion engine */

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
 * (first) propulsion engine, so that they are never mixed.  Of several, what the engine `plain` has keeps the names without a
 * side: it was there alone once; NONE: none does.  Without a catalogue for the kind it has no rows. */
struct catalogue *catalogue_for_boat(const char *folder, const struct boat *boat, const GArray *engines, gint64 plain,
				     GError **err);

/* What an owner says of a boat besides its kind. */
struct catalogue_said {
	const char *fuel; /* NULL: the usual */
	char **with; /* modules that only some boats of the kind have: "trailer", "saildrive"; NULL: none is named */
};
/* "inboard", or "sail petrol saildrive trailer"; what boat.catalogue keeps.  NULL and *err for a fuel or a module that the
 * kind has not, NULL alone when there is no catalogue; the caller's. */
char *catalogue_name(const char *folder, const char *kind, const struct catalogue_said *said, GError **err);

#define QUESTION_WITH "with" /* what such a question has for its what */
/* What is asked of a new boat before its catalogue is taken, out of the shipped questions.csv. */
struct catalogue_choice {
	char **module; /* one: whether there is such; several: which of them */
	char *ask;
};
/* Those that a boat of the kind, fuel, berth and winter's place leaves open: an array that clears itself.  NULL and *err. */
GArray *catalogue_choices(const char *folder, const struct boat *boat, const char *fuel, GError **err);
/* Whether the boat has what is of a row's module. */
gboolean catalogue_has(const struct catalogue *c, const struct boat *boat, const struct catalogue_from *from);

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
gboolean catalogue_put(struct book *b, const char *folder, struct boat *boat, const struct catalogue_said *said,
		       struct catalogue_given *given, GError **err);
/* The boat has such a module after all: what that brings, and what it takes away, is news of its catalogue then. */
gboolean book_boat_with(struct book *b, const char *folder, struct boat *boat, const char *module, GError **err);

#endif
