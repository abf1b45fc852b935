/* A small catalogue in a folder of its own, which the tests write and edit, and boats made of it. */
#ifndef TESTS_LOGBOOK_SMALL_CATALOGUE_H
#define TESTS_LOGBOOK_SMALL_CATALOGUE_H

#include "logbook/catalogue.h"
#include "tests/logbook/open.h"

static char *files; /* the small catalogue's folder */

static const char fittings_head[] = "path,title,variants,below-waterline,fuel,rubber,needs-off,off-minutes\n";
static const char tasks_head[] = "name,fitting,title,verb,place,mechanism,consequence,rule,minutes,proof\n";
static const char limits_head[] = "task,kind,amount,hours,standing,source\n";
#define SOURCE "practice,\"common practice, no source\"\n"

static inline void
write_file(const char *module, const char *file, const char *text)
{
	g_autofree char *to = g_build_filename(files, module, NULL), *at = g_build_filename(to, file, NULL);

	ck_assert_int_eq(g_mkdir_with_parents(to, 0700), 0);
	ck_assert(g_file_set_contents(at, text, -1, NULL));
}

static inline void
write_module(const char *module, const char *fittings, const char *tasks, const char *limits)
{
	g_autofree char *f = g_strconcat(fittings_head, fittings, NULL), *t = g_strconcat(tasks_head, tasks, NULL),
			*m = g_strconcat(limits_head, limits, NULL);

	write_file(module, "fittings.csv", f);
	write_file(module, "tasks.csv", t);
	write_file(module, "limits.csv", m);
}

/* An engine that each has, a hull, and what a generator has; edition 1. */
static inline void
write_catalogue(void)
{
	write_file("", "kinds.csv",
		   "kind,fuel,module,each\ninboard,diesel,hull,no\ninboard,diesel,engine,yes\ninboard,petrol,hull,no\n"
		   "inboard,petrol,engine,yes\ninboard,petrol,vapour,no\ngenerator,diesel,genset,no\n");
	write_file("", "editions.csv", "edition,date,what\n1,2026-01-01,First\n");
	write_file("", "rates.csv", "name,value,unit,standing,source\nraw-water.salt,2,,memory,rule of thumb\n");
	write_module("hull", "hull,Hull,,yes,no,no,,\nhull/plug,Drain plug,,yes,no,no,,\n",
		     "plug.inspect,hull/plug,See that the plug is in,inspect,out,none,sinks,inspection,1,plug in hand\n",
		     "plug.inspect,months,1,," SOURCE "plug.inspect,hours,,10," SOURCE);
	write_module("engine",
		     "engine,Engine,,no,no,no,,\nengine/cover,Cover,,no,no,no,,5\n"
		     "engine/pump,Pump,plain greasable,no,no,yes,engine/cover,\n",
		     "pump.inspect,engine/pump,Look at the pump,inspect,anywhere,none,costs,inspection,5,no drip\n"
		     "pump.renew,engine/pump,Renew the pump,renew,anywhere,none,costs,renewal,30,no drip\n",
		     "pump.inspect,hours,,100," SOURCE "pump.renew,months,24,," SOURCE);
	write_module("vapour", "vapour,Vapour,,no,yes,no,,\n",
		     "vapour.sniff,vapour,Sniff,test,anywhere,none,burns,inspection,1,no smell\n",
		     "vapour.sniff,outings,1,," SOURCE);
	write_module("genset", "generator,Generator,,no,no,no,,\n",
		     "generator.listen,generator,Listen to the generator,inspect,anywhere,none,costs,inspection,1,even\n",
		     "generator.listen,hours,,100," SOURCE);
}

static inline void
begin(void)
{
	setup();
	files = g_build_filename(folder, "catalogue", NULL);
	write_catalogue();
}

static inline void
remove_all(const char *at)
{
	GDir *d = g_dir_open(at, 0, NULL);
	const char *name;

	while (d && (name = g_dir_read_name(d))) {
		g_autofree char *inner = g_build_filename(at, name, NULL);

		remove_all(inner);
	}
	if (d)
		g_dir_close(d);
	g_remove(at);
}

static inline void
end(void)
{
	remove_all(files);
	g_clear_pointer(&files, g_free);
	teardown();
}

/* A boat with engines of these names, each with a meter at 100 h. */
static inline gboolean
make(const char *fuel, const char *const *engines, GError **err)
{
	struct new_boat n = { .catalogue = files, .said.fuel = fuel };
	gboolean ok;

	for (int i = 0; engines[i]; i++)
		n.engine[n.n_engines++] = (struct new_engine){ engines[i], 100 * H, NONE, FALSE };
	if (!book)
		book = book_create(path, &who, err);
	ck_assert_ptr_nonnull(book);
	record_init(RECORD_BOAT, &n.boat);
	n.boat.name = g_strdup("Heron");
	n.boat.kind = KIND_INBOARD;
	n.boat.berth = STAND_AFLOAT;
	n.boat.winter = STAND_ASHORE;
	n.boat.water = WATER_FRESH;
	n.boat.launch = 415;
	n.boat.haul_out = 1015;
	n.boat.since = day_from_ymd(2026, 1, 1);
	ok = book_add_boat(book, &n, err);
	record_clear(RECORD_BOAT, &n.boat);
	record_clear(RECORD_BOAT, &boat);
	return ok && book_boat(book, NULL, &boat, err);
}

static inline void
made(const char *fuel, const char *const *engines)
{
	g_autoptr(GError) err = NULL;

	ck_assert_msg(make(fuel, engines, &err), "%s", err ? err->message : "?");
}

static const char *const one[] = { "main", NULL }, *const twins[] = { "port", "starboard", NULL },
		  *const with_generator[] = { "main", "generator", NULL },
		  *const twins_and_generator[] = { "generator", "port", "starboard", NULL };

static inline gboolean
has_task(const char *name)
{
	g_autoptr(GArray) all = book_records(book, RECORD_TASK, boat.id, NULL);

	for (guint i = 0; i < all->len; i++)
		if (!strcmp(((const struct task *)(const void *)all->data)[i].name, name))
			return TRUE;
	return FALSE;
}

#endif
