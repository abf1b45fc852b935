/* new and boat: the first boat of a new logbook, and further ones. */
#include "cli/cli.h"
#include "cli/show.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "logbook/found.h"
#include "logbook/known.h"
#include "logbook/place.h"
#include "logbook/handover.h"
#include "logbook/transfer.h"
#include "logbook/units.h"

#include <stdio.h>
#include <string.h>

/* A question for whoever makes a logbook at a terminal; the answer is taken like the option of that name. */
struct question {
	const char *option, *ask, *otherwise;
};

static const struct question questions[] = {
	{ "kind", "Kind of boat (petrol-sterndrive, diesel-sterndrive, inboard, outboard, jet, sail)",
	  "petrol-sterndrive" },
	{ "berth", "Where does it lie in season (afloat, trailer, ashore, roof)", "trailer" },
	{ "winter", "And out of season", "roof" },
	{ "water", "In which water, as a rule (fresh, brackish, salt)", "fresh" },
	{ "launch", "Usual day of launching", "04-15" },
	{ "haul-out", "Usual day of hauling out", "10-15" },
	{ "meter", "What does the hour meter show (empty: no meter)", "" },
	{ "bought", "Bought new from its builder, or used (new, used; empty: as if used)", "" },
};

static void
answer(struct args *a, const char *name, const char *value)
{
	g_ptr_array_add(a->names, (gpointer)(guintptr)name);
	g_ptr_array_add(a->values, (gpointer)(guintptr)g_intern_string(value));
}

/* Which fuel, where the kind comes with several; without a terminal the usual. */
static gboolean
complete_fuel(const struct cli *c, struct args *a, GError **err)
{
	g_autofree char *folder = g_build_filename(c->data, "catalogue", NULL), *all = NULL;
	g_auto(GStrv) fuels = NULL;
	char buf[200];

	if (args_value(a, "fuel") || !c->ask)
		return TRUE;
	fuels = catalogue_fuels(folder, args_value(a, "kind"), err);
	if (!fuels || !fuels[0] || !fuels[1])
		return fuels != NULL;
	all = g_strdup_printf("Its fuel (%s, %s)", fuels[0], fuels[1]);
	if (!cli_ask(all, fuels[0], buf, sizeof buf))
		return err_set(err, ERR_INPUT, "the questions were broken off: nothing was made");
	answer(a, "fuel", buf);
	return TRUE;
}

/* One such, or yes or no; an empty answer is "not known". */
static gboolean
ask_choice(struct args *a, const struct catalogue_choice *q, GError **err)
{
	gboolean one = !q->module[1];
	g_autofree char *words = one ? g_strdup("yes, no") : g_strjoinv(", ", q->module), *all = NULL;
	char buf[200];

	all = g_strdup_printf("%s (%s; empty: not known)", q->ask, words);
	for (;;) {
		if (!cli_ask(all, "", buf, sizeof buf))
			return err_set(err, ERR_INPUT, "the questions were broken off: nothing was made");
		if (!*buf || (one && !strcmp(buf, "no")))
			return TRUE;
		if (one ? !strcmp(buf, "yes") : g_strv_contains((const char *const *)q->module, buf))
			break;
	}
	answer(a, "with", one ? q->module[0] : buf);
	return TRUE;
}

/* What only some boats of the kind have. */
static gboolean
complete_with(const struct cli *c, struct args *a, GError **err)
{
	g_autofree char *folder = g_build_filename(c->data, "catalogue", NULL);
	const char *kind = args_value(a, "kind"), *fuel = args_value(a, "fuel");
	g_auto(GStrv) fuels = NULL;
	g_autoptr(GArray) all = NULL;
	struct boat boat;

	if (!c->ask || args_value(a, "with"))
		return TRUE;
	record_init(RECORD_BOAT, &boat);
	if (!opt_word(a, "kind", &words_boat_kind, &boat.kind, NULL) || !opt_word(a, "berth", &words_stand, &boat.berth, NULL)
	    || !opt_word(a, "winter", &words_stand, &boat.winter, NULL))
		return TRUE; /* told where the boat is made */
	fuels = catalogue_fuels(folder, kind, err);
	if (!fuels || !fuels[0])
		return fuels != NULL;
	all = catalogue_choices(folder, &boat, fuel ? fuel : fuels[0], err);
	for (guint i = 0; all && i < all->len; i++)
		if (!ask_choice(a, &((const struct catalogue_choice *)(const void *)all->data)[i], err))
			return FALSE;
	return all != NULL;
}

/* A boat with a shaft or a mast is rarely on a trailer. */
static const char *
usual(const struct args *a, const struct question *q)
{
	const char *kind = args_value(a, "kind");
	gboolean moored = kind && (!g_ascii_strcasecmp(kind, word_of(&words_boat_kind, KIND_INBOARD))
				   || !g_ascii_strcasecmp(kind, word_of(&words_boat_kind, KIND_SAIL)));

	if (moored && !strcmp(q->option, "berth"))
		return word_of(&words_stand, STAND_AFLOAT);
	return moored && !strcmp(q->option, "winter") ? word_of(&words_stand, STAND_ASHORE) : q->otherwise;
}

/* Fill in by asking what was not given; without a terminal the usual answers hold, but for what must be known. */
static gboolean
complete(const struct cli *c, struct args *a, GError **err)
{
	char buf[200];

	if (!args_word(a, 0)) {
		if (!c->ask)
			return err_set(err, ERR_INPUT,
				       "what is the boat's name? splitpin new NAME --kind petrol-sterndrive ...");
		if (!cli_ask("The boat's name", "", buf, sizeof buf) || !*buf)
			return err_set(err, ERR_INPUT, "a logbook wants a boat's name: nothing was made");
		g_ptr_array_add(a->words, (gpointer)(guintptr)g_intern_string(buf));
	}
	for (guint i = 0; i < G_N_ELEMENTS(questions); i++) {
		const struct question *q = &questions[i];

		if (args_value(a, q->option) || (!strcmp(q->option, "meter") && args_value(a, "hours")))
			continue;
		g_strlcpy(buf, usual(a, q), sizeof buf);
		if (c->ask && !cli_ask(q->ask, usual(a, q), buf, sizeof buf))
			return err_set(err, ERR_INPUT, "the questions were broken off: nothing was made");
		if (*buf)
			answer(a, q->option, buf);
	}
	return complete_fuel(c, a, err) && complete_with(c, a, err);
}

static struct new_engine *
engine_named(struct new_boat *n, const char *text, const char **value)
{
	const char *eq = strchr(text, '=');
	g_autofree char *name = eq ? g_strndup(text, (gsize)(eq - text)) : g_strdup("main");
	int i = 0;

	*value = eq ? eq + 1 : text;
	while (i < n->n_engines && strcmp(n->engine[i].name, name))
		i++;
	if (i == MAX_ENGINES)
		return NULL;
	if (i == n->n_engines)
		n->engine[n->n_engines++] = (struct new_engine){ g_intern_string(name), NONE, NONE, FALSE };
	return &n->engine[i];
}

static gboolean
read_engines(const struct args *a, struct new_boat *n, GError **err)
{
	static const char *const option[] = { "meter", "hours" };
	const char *v, *value;

	for (int o = 0; o < 2; o++)
		for (int k = 0; (v = args_nth(a, option[o], k)); k++) {
			struct new_engine *e = engine_named(n, v, &value);

			if (!e)
				return err_set(err, ERR_INPUT, "more than %d engines", MAX_ENGINES);
			if (!hours_parse(value, o ? &e->hours : &e->reading, err))
				return err_prefix(err, "--%s: ", option[o]);
			e->estimated = args_flag(a, "estimated");
		}
	for (int k = 0; (v = args_nth(a, "engine", k)); k++) {
		g_autofree char *with = g_strconcat(v, "=", NULL);

		if (!engine_named(n, with, &value))
			return err_set(err, ERR_INPUT, "more than %d engines", MAX_ENGINES);
	}
	if (!n->n_engines)
		engine_named(n, "main=", &value);
	return TRUE;
}

static gboolean
read_bought(const struct args *a, struct new_boat *n, GError **err)
{
	gint64 bought = NONE;

	if (!opt_word(a, "bought", &words_bought, &bought, err))
		return FALSE;
	n->from_builder = bought == BOUGHT_NEW;
	n->used = bought == BOUGHT_USED;
	return TRUE;
}

static gboolean
read_boat(const struct cli *c, const struct args *a, struct new_boat *n, GError **err)
{
	struct boat *b = &n->boat;

	record_init(RECORD_BOAT, b);
	b->name = args_join(a, 0);
	b->place = g_strdup(args_value(a, "place"));
	n->said.fuel = args_value(a, "fuel");
	n->said.with = args_all(a, "with");
	n->variants = args_all(a, "variant");
	n->without = args_all(a, "without");
	return opt_word(a, "kind", &words_boat_kind, &b->kind, err) && read_bought(a, n, err)
	    && opt_word(a, "berth", &words_stand, &b->berth, err)
	    && opt_word(a, "winter", &words_stand, &b->winter, err)
	    && opt_word(a, "water", &words_water, &b->water, err) && opt_word(a, "units", &words_units, &b->units, err)
	    && opt_yearday(a, "launch", &b->launch, err)
	    && opt_yearday(a, "haul-out", &b->haul_out, err) && opt_count(a, "built", &b->built, err)
	    && opt_date(c, a, "since", &b->since, err) && read_engines(a, n, err);
}

/* What is remembered of its past, on a terminal; an answer that is none is asked for again. */
static gboolean
ask_known(const struct cli *c, struct book *b, const struct boat *boat, GError **err)
{
	g_autoptr(GArray) all = book_questions(b, boat, err);
	const struct known_question *q = all ? (const void *)all->data : NULL;
	char buf[100];

	if (all && all->len)
		cli_say(c, 0, "Of its past, a few things change most: a year, \"spring 2021\", 2018..2020, or one of the words. "
			"Enter: not known. q: no more questions.");
	for (guint i = 0; all && i < all->len; i++) {
		GError *wrong = NULL;

		if (!cli_ask(q[i].ask, "", buf, sizeof buf) || !strcmp(buf, "q"))
			return TRUE;
		if (*buf && !book_known(b, &q[i], buf, &wrong)) {
			cli_say(c, 2, "  %s", wrong->message);
			g_clear_error(&wrong);
			i--;
		}
	}
	return all != NULL;
}

static gboolean
add_boat(const struct cli *c, struct book *b, const struct args *a, GError **err)
{
	struct new_boat n = { 0 };
	g_autofree char *folder = NULL;
	gboolean ok = read_boat(c, a, &n, err);

	if (ok) {
		folder = g_build_filename(c->data, "catalogue", NULL);
		n.catalogue = folder;
		ok = book_add_boat(b, &n, err);
	}
	if (ok)
		cli_say(c, 2, "%s: %d tasks on %d fittings%s", n.boat.name, n.given.tasks, n.given.fittings,
			n.given.tasks
				? " from the catalogue; what this boat has not, splitpin fitting PATH --none takes out"
				: ": no catalogue is shipped for this kind yet; splitpin plan --add adds tasks");
	if (ok && c->ask && !n.from_builder)
		ok = ask_known(c, b, &n.boat, err);
	if (ok && n.given.tasks)
		cli_say(c, 2, "%s", n.from_builder ? "what is due, and when: splitpin due"
						   : "the first plan: splitpin due; what to look at first: due --survey");
	g_strfreev(n.said.with);
	g_strfreev(n.variants);
	g_strfreev(n.without);
	record_clear(RECORD_BOAT, &n.boat);
	return ok;
}

static const struct option_def options[] = {
	{ "kind", "KIND", "petrol-sterndrive, diesel-sterndrive, inboard, outboard, jet or sail" },
	{ "fuel", "WORD", "petrol or diesel, where the catalogue has both for the kind" },
	{ "berth", "PLACE", "where it lies in season: afloat, trailer, ashore or roof" },
	{ "winter", "PLACE", "where it lies out of season" },
	{ "water", "WATER", "usual water: fresh, brackish or salt" },
	{ "launch", "DAY", "usual day of launching: 04-15" },
	{ "haul-out", "DAY", "usual day of hauling out" },
	{ "units", "SYSTEM", "inch or metric: what limits are shown in first, and what stands beside what was typed" },
	{ "place", "NAME", "where it usually lies; splitpin place says what is known of its water and air" },
	{ "meter", "[ENGINE=]READING", "what the hour meter shows; ENGINE is main unless named" },
	{ "hours", "[ENGINE=]HOURS", "what the engine has run, where the meter does not say so" },
	{ "engine", "NAME", "an engine without a meter or known hours" },
	{ "estimated", NULL, "the hours are a guess" },
	{ "bought", "WORD", "new, from its builder: nothing is older than --since; or used: it asks to be gone through" },
	{ "since", "DATE", "first day that the log covers; else today" },
	{ "built", "YEAR", "year the boat was built" },
	{ "variant", "PATH=WORD", "design of a fitting: drive/transom/gimbal-bearing=sealed" },
	{ "with", "PART", "what only some boats of the kind have: trailer; for sail, shaft or saildrive; may be repeated" },
	{ "without", "PATH", "a fitting of the catalogue that this boat has not" },
	{ "from", "FOLDER", "make it of the files that export everything wrote" },
	{ "demo", NULL, "make the demo logbook instead" },
	{ NULL, NULL, NULL },
};

/* The user's own data folder; what fails here is told when the file is made. */
static void
make_folder(const struct cli *c)
{
	if (c->folder)
		g_mkdir_with_parents(c->folder, 0700);
}

static int
make_from(struct cli *c, const char *folder, GError **err)
{
	gint64 rows;

	make_folder(c);
	if (!book_make_from(c->file, &c->who, folder, &rows, err))
		return EXIT_DATA;
	printf("logbook made of %" G_GINT64_FORMAT " records: %s\n", rows, c->file);
	return EXIT_DONE;
}

static int
run_new(struct cli *c, const struct args *given, GError **err)
{
	struct args a = *given;
	struct book *b;
	gboolean ok;

	if (args_flag(&a, "demo")) {
		make_folder(c);
		if (!book_make_demo(c->file, &c->who, c->data, err))
			return EXIT_DATA;
		printf("demo logbook made: %s\n", c->file);
		return EXIT_DONE;
	}
	if (g_file_test(c->file, G_FILE_TEST_EXISTS)) {
		err_set(err, ERR_STORE,
			"%s is there already: splitpin boat NAME adds a boat to it, --file names another", c->file);
		return EXIT_FILE;
	}
	if (args_value(&a, "from"))
		return make_from(c, args_value(&a, "from"), err);
	if (!complete(c, &a, err))
		return EXIT_USE;
	make_folder(c);
	b = book_create(c->file, &c->who, err);
	if (!b)
		return EXIT_FILE;
	ok = add_boat(c, b, &a, err);
	book_close(b);
	if (!ok) {
		remove(c->file);
		return EXIT_DATA;
	}
	printf("logbook made: %s\n", c->file);
	return EXIT_DONE;
}

const struct command command_new = {
	"new",
	"[NAME]",
	"make a logbook with its first boat",
	"splitpin new \"Grey Heron\" --kind petrol-sterndrive --berth trailer --water fresh --meter 612.4\n\n"
	"On a terminal it asks for what was not given. Twins: --meter port=412.0 --meter starboard=398.5. What nobody "
	"knows is left out: unknown is neither zero nor never.",
	options,
	run_new, -1,
};

static gboolean
list_boats(struct book *b, GError **err)
{
	g_autoptr(GArray) boats = book_boats(b, err);

	for (guint i = 0; boats && i < boats->len; i++) {
		const struct boat *s = &((const struct boat *)(const void *)boats->data)[i];

		show_fit(s->name, 30);
		printf("  %s, %s in %s water", word_of(&words_boat_kind, s->kind), word_of(&words_stand, s->berth),
		       word_of(&words_water, s->water));
		if (s->place) {
			printf(", ");
			show_fit(s->place, text_width(s->place));
		}
		if (s->units != NONE)
			printf(", %s units", word_of(&words_units, s->units));
		putchar('\n');
	}
	return boats != NULL;
}

/* Without a name: where the boat that is there lies. */
static gboolean
put_boat_at(struct cli *c, struct book *b, const char *place, GError **err)
{
	struct boat boat;
	gint64 water;
	gboolean ok;

	if (!cli_boat(c, b, &boat, err))
		return FALSE;
	water = boat.water;
	ok = book_boat_at(b, &boat, place, err) || err_prefix(err, "--place: ");
	if (ok && boat.place)
		cli_say(c, 2, "%s lies at %s", boat.name, boat.place);
	else if (ok)
		cli_say(c, 2, "%s lies at no place that is known", boat.name);
	if (ok && boat.water != water)
		cli_say(c, 2, "  its usual water is %s now, as that place has; it was %s",
			word_of(&words_water, boat.water), word_of(&words_water, water));
	record_clear(RECORD_BOAT, &boat);
	return ok;
}

static gboolean
set_units(struct cli *c, struct book *b, const struct args *a, GError **err)
{
	struct boat boat;
	gint64 units;
	gboolean ok;

	if (!cli_boat(c, b, &boat, err))
		return FALSE;
	ok = opt_word(a, "units", &words_units, &units, err) && book_set_units(b, &boat, units, err);
	if (ok)
		cli_say(c, 2, "%s: %s first, and the other beside; what was typed stays as it was typed", boat.name,
			word_of(&words_units, units));
	record_clear(RECORD_BOAT, &boat);
	return ok;
}

/* It has that after all: its tasks are offered like those of a newer catalogue. */
static gboolean
put_with(struct cli *c, struct book *b, const char *module, GError **err)
{
	g_autofree char *folder = g_build_filename(c->data, "catalogue", NULL);
	struct boat boat;
	gboolean ok;

	if (!cli_boat(c, b, &boat, err))
		return FALSE;
	ok = book_boat_with(b, folder, &boat, module, err) || err_prefix(err, "--with: ");
	if (ok)
		cli_say(c, 2, "%s: with %s; plan --news lists what that brings and takes away", boat.name, module);
	record_clear(RECORD_BOAT, &boat);
	return ok;
}

static int
run_boat(struct cli *c, const struct args *given, GError **err)
{
	struct args a = *given;
	const char *place = args_value(&a, "place"), *with = args_value(&a, "with");
	gboolean units = args_value(&a, "units") != NULL, change = place || units || with;
	struct book *b = cli_open(c, args_word(&a, 0) || change ? BOOK_WRITE : BOOK_READ, err);
	gboolean ok;

	if (!b)
		return EXIT_FILE;
	if (args_word(&a, 0))
		ok = complete(c, &a, err) && add_boat(c, b, &a, err);
	else
		ok = change ? (!place || put_boat_at(c, b, place, err)) && (!units || set_units(c, b, &a, err))
				      && (!with || put_with(c, b, with, err))
			    : list_boats(b, err);
	book_close(b);
	return ok ? EXIT_DONE : EXIT_DATA;
}

const struct command command_boat = {
	"boat",
	"[NAME]",
	"list the boats, add one, or say where one lies and its units",
	"splitpin boat Dinghy --kind outboard --berth ashore --water salt\n"
	"splitpin boat --place \"town mooring\"\n"
	"splitpin boat --units metric\n"
	"splitpin boat --with trailer\n\n"
	"Without a NAME, --place is for the boat that is there; one that lies afloat takes the place's water for its "
	"usual one.",
	options,
	run_boat, -1,
};
