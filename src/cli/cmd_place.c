/* place: what is known of where boats lie. */
#include "cli/cli.h"
#include "cli/show.h"

#include "base/err.h"
#include "logbook/place.h"

#include <math.h>
#include <stdio.h>

static const struct option_def options[] = {
	{ "water", "WATER", "fresh, brackish or salt; follows from a salinity" },
	{ "salinity", "READING",
	  "\"18 PSU\", \"12 ppt\", \"42 mS/cm at 18 C\", or off a hydrometer \"1.018 at 15 C\"" },
	{ "air", "CLASS", "corrosivity of the air, ISO 9223: c1 (dry indoors) to c5 (sea coast) and cx" },
	{ "water-temp", "TEMPERATURES", "twelve monthly means from January on, in C, or in F with an F behind" },
	{ "air-temp", "TEMPERATURES", "the same of the air" },
	{ "remark", "TEXT", "anything else" },
	{ "rename", "NAME", "give the place another name; the stays and boats there follow" },
	{ "drop", NULL, "take the place out, when no stay and no boat names it" },
	{ "names", NULL, "only the places' names, a line each" },
	{ NULL, NULL, NULL },
};

static void
line_of(GString *line, const struct place *p)
{
	g_string_append(line, p->water == NONE ? "water not known" : word_of(&words_water, p->water));
	if (!isnan(p->salinity))
		g_string_append_printf(line, ", %.3g PSU", p->salinity);
	if (p->air != NONE)
		g_string_append_printf(line, ", air %s", word_of(&words_air, p->air));
}

static gboolean
list_places(struct book *b, gboolean names, GError **err)
{
	g_autoptr(GArray) all = book_records(b, RECORD_PLACE, NONE, err);

	for (guint i = 0; all && i < all->len; i++) {
		const struct place *p = &((const struct place *)(const void *)all->data)[i];
		g_autoptr(GString) line = g_string_new("  ");

		if (names) {
			puts(p->name);
			continue;
		}
		show_fit(p->name, 30);
		line_of(line, p);
		puts(line->str);
	}
	return all != NULL;
}

static void
say_months(const struct cli *c, const char *what, const struct monthly *m)
{
	g_autoptr(GString) line = g_string_new(NULL);
	gboolean any = FALSE;

	for (guint i = 0; i < G_N_ELEMENTS(m->in); i++) {
		any |= !isnan(m->in[i]);
		if (isnan(m->in[i]))
			g_string_append(line, " -");
		else
			g_string_append_printf(line, " %.3g", m->in[i]);
	}
	if (any)
		cli_say(c, 4, "  %s in C, January to December:%s", what, line->str);
}

static gboolean
show_place(const struct cli *c, struct book *b, const struct place *p, GError **err)
{
	g_autoptr(GString) line = g_string_new(NULL);
	struct monthly water, dry;

	if (!book_place_months(b, p->id, &water, &dry, err))
		return FALSE;
	line_of(line, p);
	cli_say(c, 4, "%s: %s", p->name, line->str);
	if (p->as_read)
		cli_say(c, 4, "  the salinity was read as %s", p->as_read);
	say_months(c, "water", &water);
	say_months(c, "air", &dry);
	if (p->remark)
		cli_say(c, 4, "  %s", p->remark);
	return TRUE;
}

static gboolean
change_place(const struct cli *c, struct book *b, const char *name, const struct args *a, GError **err)
{
	struct place_form f = {
		.name = name,
		.rename = args_value(a, "rename"),
		.water = args_value(a, "water"),
		.air = args_value(a, "air"),
		.salinity = args_value(a, "salinity"),
		.water_temp = args_value(a, "water-temp"),
		.air_temp = args_value(a, "air-temp"),
		.remark = args_value(a, "remark"),
	};
	struct place p;
	gboolean ok = book_place(b, &f, &p, err) && show_place(c, b, &p, err);

	record_clear(RECORD_PLACE, &p);
	return ok;
}

/* Whether anything is said of the place, options of every command apart. */
static gboolean
says_something(const struct args *a)
{
	for (const struct option_def *o = options; o->name; o++)
		if (o->arg && args_value(a, o->name))
			return TRUE;
	return FALSE;
}

static gboolean
one_place(const struct cli *c, struct book *b, const struct args *a, GError **err)
{
	g_autofree char *name = args_join(a, 0);
	struct place p;
	gboolean ok;

	if (args_flag(a, "drop")) {
		if (says_something(a))
			return err_set(err, ERR_USE, "--drop stands alone");
		if (!book_drop_place(b, name, err))
			return FALSE;
		cli_say(c, 2, "%s taken out; splitpin undo brings it back", name);
		return TRUE;
	}
	if (says_something(a))
		return change_place(c, b, name, a, err);
	ok = book_find_place(b, name, &p, err) && show_place(c, b, &p, err);
	record_clear(RECORD_PLACE, &p);
	return ok;
}

static int
run(struct cli *c, const struct args *a, GError **err)
{
	gboolean names = args_flag(a, "names"), look = names || !(says_something(a) || args_flag(a, "drop"));
	struct book *b;
	gboolean ok;

	if (!look && !args_word(a, 0)) {
		err_set(err, ERR_USE, "which place? splitpin place NAME --water salt");
		return EXIT_USE;
	}
	b = cli_open(c, look ? BOOK_READ : BOOK_WRITE, err);
	if (!b)
		return EXIT_FILE;
	ok = args_word(a, 0) && !names ? one_place(c, b, a, err) : list_places(b, names, err);
	book_close(b);
	return ok ? EXIT_DONE : EXIT_DATA;
}

const struct command command_place = {
	"place",
	"[NAME]",
	"the places where boats lie: their water, air and temperatures",
	"splitpin place\n"
	"splitpin place \"town mooring\" --salinity \"42 mS/cm at 18 C\" --air c4\n"
	"splitpin place \"town mooring\" --water-temp \"4 4 6 9 13 17 20 21 18 14 9 6\"\n\n"
	"A stay, an outing or a boat whose --place is such a name gets what is known of it; a water said there wins. A "
	"conductivity meter that shows its reading as at 25 C is written \"42 mS/cm compensated\". The word none "
	"takes a value away.",
	options,
	run,
	-1,
};
