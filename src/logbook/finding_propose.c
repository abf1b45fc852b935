/* How grave a finding is by the rules; finding.h says which. */
#include "logbook/finding_inside.h"

#include "base/date.h"
#include "logbook/due_list.h"
#include "logbook/knowledge.h"
#include "logbook/plain_words.h"
#include "logbook/variant.h"

#include <math.h>
#include <string.h>

void
finding_proposal_clear(struct finding_proposal *p)
{
	g_free(p->why);
	g_free(p->raised);
	g_free(p->makes_due);
	g_free(p->allowed);
	*p = (struct finding_proposal){ .level = LEVEL_MEND };
}

/* What the rules look at. */
struct seen {
	struct book *b;
	const struct finding *f;
	const struct measurement *reading; /* NULL: none */
	const struct condition_kind *kind; /* of it */
	struct boat boat;
	struct fitting fitting;
	GArray *tasks, *fittings, *engines; /* of the boat */
	GArray *sentence; /* struct plain_word */
	gint64 year;
	struct finding_proposal *p;
};

static gboolean
any_of(const GArray *sentence, const char *const *alternative, int n, gint64 year)
{
	for (int i = 0; i < n; i++)
		if (plain_has(sentence, alternative[i], year))
			return TRUE;
	return FALSE;
}

static gboolean
was_not_seen(const struct seen *s)
{
	static const char *const words[] = { "not-seen", "not-see", "not-be-seen", "cannot-see", "cannot-be-seen", "no-access",
					     "not-inspected", "not-be-inspected", "not-reached", "not-be-reached",
					     "not-looked-at", "not-checked", "not-be-checked" };

	return any_of(s->sentence, words, G_N_ELEMENTS(words), s->year);
}

/* Whether the boat has such work: it is wanted, what it is done on is there, and of that design. */
static gboolean
is_done_here(const struct seen *s, const struct task *t)
{
	const struct fitting *f = (const void *)s->fittings->data;

	for (guint i = 0; t->retired != 1 && i < s->fittings->len; i++)
		if (f[i].id == t->fitting)
			return f[i].retired != 1 && variant_has_task(t->variants, f[i].variant);
	return FALSE;
}

/* 1 << each consequence of the fitting's work; of the one task alone at whose work it was found. */
static guint
consequences(const struct seen *s, gboolean of_task)
{
	guint all = 0;

	for (guint i = 0; i < s->tasks->len; i++) {
		const struct task *t = &((const struct task *)(const void *)s->tasks->data)[i];

		if ((of_task && s->f->task != NONE ? t->id == s->f->task : t->fitting == s->f->fitting) && is_done_here(s, t))
			all |= 1U << t->consequence;
	}
	return all;
}

static gboolean
is_grave(guint consequences)
{
	return (consequences & (1U << COST_SINKS | 1U << COST_BURNS | 1U << COST_HURTS)) != 0;
}

static void
raise_to(struct seen *s, gint64 level, char *why)
{
	g_autofree char *before = s->p->raised;

	s->p->raised = before ? g_strdup_printf("%s; %s", before, why) : g_strdup(why);
	s->p->level = level;
	g_free(why);
}

static void
raise_by_place(struct seen *s)
{
	gboolean below = s->fitting.below_waterline == 1, fuel = s->fitting.fuel == 1;

	if (s->p->level > LEVEL_HOLD && (below || fuel))
		raise_to(s, s->p->level - 1,
			 g_strdup(below && fuel ? "below the waterline, and it carries fuel"
				  : below	? "below the waterline"
						: "it carries fuel"));
}

/* How far the water gets: a scale of four words; -1: none of them. */
static int
wetness(const GArray *sentence, gint64 year)
{
	static const char *const scale[] = { "weeping", "seeping", "dripping", "streaming" };

	for (int i = G_N_ELEMENTS(scale); i-- > 0;)
		if (plain_has(sentence, scale[i], year))
			return i;
	return -1;
}

static gboolean
wetter_than(const struct seen *s, const struct finding *before)
{
	g_autoptr(GArray) then = plain_words(before->words);
	int was = wetness(then, s->year);

	return was >= 0 && wetness(s->sentence, s->year) > was;
}

/* Whether the same value reads worse; where more and less are both worse, when its verdict is. */
static gboolean
reads_worse(const struct seen *s, const struct measurement *before)
{
	double now = s->reading->value, then = before->value;
	struct edge passed;

	if (strcmp(before->what, s->reading->what) || isnan(now) || isnan(then))
		return FALSE;
	switch (s->kind->bands.worse) {
	case WORSE_MORE:
		return now > then;
	case WORSE_LESS:
		return now < then;
	case WORSE_BOTH:
		break;
	}
	return bands_verdict(&s->kind->bands, now, &passed) > bands_verdict(&s->kind->bands, then, &passed);
}

/* The last finding on the same fitting before this one; FALSE: there is none. */
static gboolean
last_before(const struct seen *s, struct finding *last)
{
	g_autoptr(GArray) all = s->f->fitting == NONE
				      ? NULL
				      : book_gather(s->b, RECORD_FINDING, SQL_FINDINGS_OF_FITTING, s->f->fitting, NULL);

	record_init(RECORD_FINDING, last);
	for (guint i = 0; all && i < all->len; i++) {
		struct finding *f = &((struct finding *)(void *)all->data)[i];

		if (f->id == s->f->id || f->date > s->f->date)
			continue;
		*last = *f;
		record_init(RECORD_FINDING, f);
		return TRUE;
	}
	return FALSE;
}

static void
raise_by_trend(struct seen *s)
{
	struct finding last;
	struct measurement before;
	gboolean found = s->p->level == LEVEL_WATCH && last_before(s, &last);
	char day[16];

	if (!found)
		return;
	record_init(RECORD_MEASUREMENT, &before);
	if (last.level == LEVEL_WATCH) {
		if (s->reading && last.measurement != NONE
		    && row_get(s->b->db, RECORD_MEASUREMENT, last.measurement, &before, NULL) && reads_worse(s, &before))
			raise_to(s, LEVEL_MEND, g_strdup_printf("watched before, and worse: %s read %s on %s", before.what,
								before.as_read, day_words(before.date, day)));
		else if (wetter_than(s, &last))
			raise_to(s, LEVEL_MEND, g_strdup_printf("watched before, and worse than on %s: \"%s\"",
								day_words(last.date, day), last.words));
	}
	record_clear(RECORD_MEASUREMENT, &before);
	record_clear(RECORD_FINDING, &last);
}

static const char *
engine_name(const struct seen *s, guint i)
{
	return ((const struct engine *)(const void *)s->engines->data)[i].name;
}

/* The side of a twin that was looked at, by the fitting's path or the sentence; NULL: neither tells. */
static const char *
side_of(const struct seen *s)
{
	for (guint i = 0; i < s->engines->len; i++) {
		g_autofree char *begin = g_strconcat(engine_name(s, i), "/", NULL);

		if (s->fitting.path && g_str_has_prefix(s->fitting.path, begin))
			return engine_name(s, i);
	}
	for (guint i = 0; i < s->engines->len; i++)
		if (plain_has(s->sentence, engine_name(s, i), s->year))
			return engine_name(s, i);
	return NULL;
}

static gboolean
has_task(const struct seen *s, const char *name)
{
	for (guint i = 0; i < s->tasks->len; i++)
		if (!strcmp(((const struct task *)(const void *)s->tasks->data)[i].name, name))
			return TRUE;
	return FALSE;
}

/* Whether a rule's name means that task: by itself, or of the side that was looked at, or of any while that is not known. */
static gboolean
is_meant(const struct seen *s, const struct task *t, const char *name, const char *side)
{
	if (!strcmp(t->name, name)) {
		g_autofree char *other = side ? g_strconcat(side, "-", name, NULL) : NULL;

		return !other || !has_task(s, other);
	}
	for (guint i = 0; i < s->engines->len; i++) {
		g_autofree char *own = g_strconcat(engine_name(s, i), "-", name, NULL);

		if (!strcmp(t->name, own))
			return !side || !strcmp(side, engine_name(s, i));
	}
	return FALSE;
}

/* Of the rule's tasks those that this boat has. */
static char *
tasks_here(const struct seen *s, const char *names)
{
	g_auto(GStrv) name = g_strsplit(names ? names : "", " ", -1);
	g_autoptr(GString) here = g_string_new(NULL);
	const char *side = side_of(s);

	for (int i = 0; name[i]; i++)
		for (guint k = 0; k < s->tasks->len; k++) {
			const struct task *t = &((const struct task *)(const void *)s->tasks->data)[k];

			if (is_meant(s, t, name[i], side) && is_done_here(s, t))
				g_string_append_printf(here, "%s%s", here->len ? " " : "", t->name);
		}
	return here->len ? g_strdup(here->str) : NULL;
}

/* What was not seen is still to be looked at: the task at whose work it was to be, else every look at the fitting that matters. */
static char *
looks_here(const struct seen *s)
{
	g_autoptr(GString) here = g_string_new(NULL);

	for (guint k = 0; k < s->tasks->len; k++) {
		const struct task *t = &((const struct task *)(const void *)s->tasks->data)[k];
		gboolean looks = t->fitting == s->f->fitting && t->rule == CLOCK_INSPECTION && is_grave(1U << t->consequence);

		if ((s->f->task != NONE ? t->id == s->f->task : looks) && is_done_here(s, t))
			g_string_append_printf(here, "%s%s", here->len ? " " : "", t->name);
	}
	return here->len ? g_strdup(here->str) : NULL;
}

/* "weeping: damp ring, no drop forms in 10 minutes", or that nothing is recognised. */
static char *
words_known(const GPtrArray *words)
{
	g_autoptr(GString) out = g_string_new(NULL);

	for (guint i = 0; i < words->len; i++) {
		const struct trade_word *w = words->pdata[i];

		g_string_append_printf(out, "%s%s: %s", i ? "; " : "", w->word, w->meaning);
	}
	if (!out->len)
		return g_strdup("no rule knew these words; what nobody knows is mended rather than watched");
	return g_strdup_printf("no rule knew the sentence; %s", out->str);
}

static void
take_told(struct seen *s, const struct finding_told *told)
{
	struct finding_proposal *p = s->p;
	const struct finding_rule *r = told->rule;
	g_autofree char *source = r ? source_words(word_index(&words_standing, r->standing), r->source) : NULL;

	p->level = told->level == NONE ? LEVEL_MEND : told->level;
	p->rule = r ? g_intern_string(r->id) : NULL;
	p->why = r ? g_strdup_printf("%s (%s)", r->why, source) : words_known(told->words);
	p->makes_due = r ? tasks_here(s, r->makes_due) : NULL;
	p->allowed = r ? g_strdup(r->limit) : NULL;
	if (!r && was_not_seen(s) && is_grave(consequences(s, TRUE))) {
		g_free(p->why);
		p->why = g_strdup("not seen is not good: when this fails it sinks, burns or hurts");
		p->makes_due = looks_here(s);
		raise_to(s, LEVEL_HOLD, g_strdup("not inspected: it holds until it was seen, or is let pass by name"));
	} else if (!r) {
		raise_by_place(s);
	}
	raise_by_trend(s);
}

static gboolean
read_seen(struct seen *s, GError **err)
{
	int month, mday, year;

	day_to_ymd(s->f->date == NONE ? s->b->who.today : s->f->date, &year, &month, &mday);
	s->year = year;
	s->sentence = plain_words(s->f->words ? s->f->words : "");
	s->tasks = book_records(s->b, RECORD_TASK, s->f->boat, err);
	s->fittings = s->tasks ? book_records(s->b, RECORD_FITTING, s->f->boat, err) : NULL;
	s->engines = s->fittings ? book_records(s->b, RECORD_ENGINE, s->f->boat, err) : NULL;
	return s->engines && row_get(s->b->db, RECORD_BOAT, s->f->boat, &s->boat, err)
	    && (s->f->fitting == NONE || row_get(s->b->db, RECORD_FITTING, s->f->fitting, &s->fitting, err));
}

static gboolean
tell(struct seen *s, GError **err)
{
	const struct knowledge *k = book_knowledge(s->b, err);
	struct finding_ask ask = { s->f->words ? s->f->words : "", s->fitting.path, consequences(s, FALSE),
				   s->boat.berth == STAND_AFLOAT, s->f->date == NONE ? s->b->who.today : s->f->date };
	struct finding_told told;

	if (!k)
		return FALSE;
	knowledge_tell(k, &ask, &told);
	take_told(s, &told);
	finding_told_clear(&told);
	return TRUE;
}

gboolean
finding_propose(struct book *b, const struct finding *f, const struct measure_form *reading, struct finding_proposal *p,
		GError **err)
{
	struct seen s = { .b = b, .f = f, .reading = reading ? &reading->what : NULL, .kind = reading ? reading->kind : NULL,
			  .p = p };
	gboolean ok;

	*p = (struct finding_proposal){ .level = LEVEL_MEND };
	record_init(RECORD_BOAT, &s.boat);
	record_init(RECORD_FITTING, &s.fitting);
	ok = read_seen(&s, err) && tell(&s, err);
	record_clear(RECORD_BOAT, &s.boat);
	record_clear(RECORD_FITTING, &s.fitting);
	g_array_unref(s.sentence);
	g_clear_pointer(&s.tasks, g_array_unref);
	g_clear_pointer(&s.fittings, g_array_unref);
	g_clear_pointer(&s.engines, g_array_unref);
	return ok;
}
