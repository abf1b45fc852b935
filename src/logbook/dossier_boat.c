/* The first page: what this is and whether it can be relied on; the boat and her engines. */
#include "logbook/dossier_inside.h"

#include "base/amount.h"
#include "base/date.h"
#include "logbook/outing.h"

#include <string.h>

static void
say_left_out(struct dossier *d)
{
	const struct dossier_form *f = d->form;
	char day[16];

	if (f->since != NONE)
		dossier_prose(d, "Left out: what was before %s. A season that reaches beyond that day is told whole, and "
				  "how things stand now whatever its day.",
			    day_words(f->since, day));
	if (f->without_names)
		dossier_prose(d, "Left out: names of people, places and the boat. The same name is the same number throughout.");
	if (f->without_costs)
		dossier_prose(d, "Left out: costs.");
	if (f->without_remarks)
		dossier_prose(d, "Left out: remarks, and names of photo files.");
	else
		dossier_prose(d, "Remarks, and names of photo files, are as they were typed.");
	if (f->without_names)
		dossier_prose(d, "Where free text is as it was typed, the names that the logbook knows are left out; others may "
				  "stand in it.");
	dossier_prose(d, "What is told here is what was put on record. Where nothing is on record it says so: that is neither "
			  "never nor none. A day with ~ is from memory, hours with ~ hold a guess. No proof: the work asks for "
			  "one, and neither that nor what was seen is on record.");
}

/* What to compare, and how; and what it does not prove. */
static void
say_journal(struct dossier *d)
{
	struct book_entry e = { .at = d->last_at };
	g_autofree char *when = book_entry_time(&e);

	dossier_head(d, "The journal");
	if (d->n_problems)
		dossier_prose(d, "It does not verify, as said above.");
	else
		dossier_prose(d, "This logbook verifies: the chain of hashes holds over all its entries, and every row is what the "
				  "journal says.");
	if (!d->last) {
		dossier_prose(d, "The journal holds no entry.");
		return;
	}
	dossier_title(d, "Its last entry is number %" G_GINT64_FORMAT ", made on %s UTC, with the hash", d->last, when);
	dossier_say(d, 2, "%s", d->hash);
	dossier_prose(d, "To check it, ask for the logbook file. splitpin --file FILE verify proves that it is whole; splitpin "
			  "--file FILE history %" G_GINT64_FORMAT " names the hash of that entry. If it is the one above, this was "
			  "made of that logbook, and nothing up to that entry was changed since. It does not prove that what was "
			  "typed is true.", d->last);
}

gboolean
dossier_first_page(struct dossier *d, GError **err G_GNUC_UNUSED)
{
	g_autofree char *name = names_boat(d->names, d->boat->name);
	char day[16];

	dossier_say(d, 0, "%s: what is on record of %s, %s", d->names ? "A boat" : name, d->names ? "her" : "the boat",
		    day_words(d->b->who.today, day));
	dossier_space(d);
	say_left_out(d);
	say_journal(d);
	return TRUE;
}

static void
say_age(struct dossier *d)
{
	const struct boat *boat = d->boat;
	char since[16], delivered[16];

	if (boat->built == NONE)
		dossier_say(d, 0, "Year built: nobody knows.");
	else
		dossier_say(d, 0, "Built in %d.", (int)boat->built);
	if (boat->delivered != NONE)
		dossier_say(d, 0, "All of it was new on %s.", day_words(boat->delivered, delivered));
	if (boat->since == NONE)
		dossier_say(d, 0, "From when on this log knows her is not on record.");
	else
		dossier_say(d, 0, "This log knows her from %s on; of the time before it knows only what is told as such.",
			    day_words(boat->since, since));
}

gboolean
dossier_boat(struct dossier *d, GError **err G_GNUC_UNUSED)
{
	const struct boat *boat = d->boat;
	g_autofree char *kind = g_strdelimit(g_strdup(word_of(&words_boat_kind, boat->kind)), "-", ' ');
	g_autofree char *place = names_place(d->names, boat->place), *remark = dossier_remark(d, boat->remark);
	char launch[6], haul_out[6];

	dossier_head(d, "The boat");
	if (!d->names)
		dossier_say(d, 0, "Name: %s", boat->name);
	dossier_say(d, 0, "Kind: %s", kind);
	say_age(d);
	dossier_say(d, 0, "In season she usually lies: %s, in %s water%s%s. Out of season: %s.", word_of(&words_stand, boat->berth),
		    word_of(&words_water, boat->water), place ? ", at " : "", place ? place : "",
		    word_of(&words_stand, boat->winter));
	dossier_say(d, 0, "Usual launch (month-day): %s, haul-out: %s.", yearday_text(boat->launch, launch),
		    yearday_text(boat->haul_out, haul_out));
	if (remark)
		dossier_say(d, 0, "Remark: %s", remark);
	return TRUE;
}

static void
say_meters(struct dossier *d, const struct engine *e, const GArray *meters)
{
	int n = 0;

	for (EACH(struct meter, m, meters)) {
		g_autofree char *remark = dossier_remark(d, m->remark);
		char day[16], start[HOURS_TEXT], hours[HOURS_TEXT];

		if (m->engine != e->id)
			continue;
		n++;
		dossier_say(d, 2, "meter from %s on (%s): began at %s h, the engine had %s%s%s%s", day_words(m->fitted, day),
			    word_of(&words_meter_how, m->how), hours_words(m->start, start),
			    m->engine_hours == NONE ? "run nobody knows how long" : hours_words(m->engine_hours, hours),
			    m->engine_hours == NONE ? "" : " h", remark ? "; " : "", remark ? remark : "");
	}
	if (!n)
		dossier_say(d, 2, "no meter is on record: hours are as typed");
}

static void
say_engine(struct dossier *d, const struct engine *e, const struct engine_sum *sum, const struct engine_hours *now)
{
	g_autofree char *total = engine_hours_words(now), *remark = dossier_remark(d, e->remark);
	char day[16], hours[HOURS_TEXT], guessed[HOURS_TEXT];

	dossier_title(d, "%s: %s on %s", e->name, total, day_words(d->b->who.today, day));
	if (e->hours == NONE)
		dossier_say(d, 2, "before this log: nobody knows");
	else
		dossier_say(d, 2, "before this log: %s h%s", hours_words(e->hours, hours), e->estimated == 1 ? ", a guess" : "");
	dossier_say(d, 2, "in this log: %s h; of these %s h are guesses, or only a later reading showed them",
		    hours_words(sum->seconds, hours), hours_words(sum->guessed, guessed));
	if (sum->read != NONE)
		dossier_say(d, 2, "last read off the meter with an outing: %s h, on %s", hours_words(sum->reading, hours),
			    day_words(sum->read, day));
	if (remark)
		dossier_say(d, 2, "%s", remark);
}

gboolean
dossier_engines(struct dossier *d, GError **err)
{
	g_autoptr(GArray) meters = book_records(d->b, RECORD_METER, d->boat->id, err);
	gboolean ok = meters != NULL;
	guint i = 0;

	dossier_head(d, "Engines");
	if (ok && !d->engines->len)
		dossier_say(d, 0, "No engine is on record.");
	for (EACH(struct engine, e, d->engines)) {
		struct engine_hours now;

		ok = ok && book_engine_hours(d->b, e, d->b->who.today, &now, err);
		if (!ok)
			return FALSE;
		say_engine(d, e, &d->engine[i++], &now);
		say_meters(d, e, meters);
	}
	return ok;
}
