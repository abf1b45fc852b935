/* The order of the due list, and its short words. */
#include "logbook/due_list.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/text.h"

#include <string.h>

char *
due_label(const char *fitting, const char *name)
{
	const char *dot = strrchr(name, '.');
	char *label = g_strconcat(fitting, ": ", dot ? dot + 1 : name, NULL);

	for (char *p = label + strlen(fitting); *p; p++)
		if (*p == '-')
			*p = ' ';
	return label;
}

enum { ABOUT_DAYS = 30 };

char *
due_group_title(const struct due_list *l, int from, int to)
{
	const struct due_year *y = due_year(l);
	gint64 by = due_at(l, from)->out.by;
	char d[16];

	switch (due_at(l, from)->out.when) {
	case OPP_NOW:
		return g_strdup("NOW, before the boat is used again");
	case OPP_BEFORE_LAUNCH:
		return g_strdup_printf("BEFORE LAUNCH, %s", day_words(y->launch, d));
	case OPP_FIRST_DAY:
		return g_strdup_printf("FIRST DAY AFLOAT, %s", day_words(y->launch, d));
	case OPP_MID_SEASON:
		for (int i = from; i < to; i++)
			by = MIN(by, due_at(l, i)->out.by);
		return g_strdup_printf("A HAUL IN MID-SEASON, by %s", day_words(by, d));
	case OPP_THIS_SEASON:
		return g_strdup_printf("THIS SEASON, until %s", day_words(y->haul_out, d));
	case OPP_LAY_UP:
		return g_strdup_printf("AT LAY-UP, %s", day_words(y->haul_out, d));
	case OPP_NEXT_SPRING:
		return g_strdup_printf("NEXT SPRING, before %s", day_words(y->next_launch, d));
	case OPP_LATER:
		return g_strdup("LATER");
	case OPP_EACH_OUTING:
		return g_strdup("EACH OUTING");
	case OPP_ON_CONDITION:
		return g_strdup("WHEN SOMETHING ASKS FOR IT");
	case OPP_NO_RECORD:
		return g_strdup("SURVEY: nobody knows when it was last done");
	case OPPORTUNITY_COUNT:
		break;
	}
	g_assert_not_reached();
}

/* Of what nobody knows the looks are summed up: what is to be renewed is known after them. */
char *
due_group_sum(const struct due_list *l, int from, int to)
{
	gboolean survey = due_at(l, from)->out.when == OPP_NO_RECORD;
	const char *to_look = survey ? " to look" : "";
	gint64 minutes = due_access_minutes(l, from, to);
	int n = to - from;

	for (int i = from; i < to; i++)
		if (due_at(l, i)->minutes != NONE && (!survey || due_at(l, i)->in.rule == CLOCK_INSPECTION))
			minutes += due_at(l, i)->minutes;
	if (minutes >= 60)
		return g_strdup_printf("%d %s, about %" G_GINT64_FORMAT " h%s", n, n == 1 ? "task" : "tasks",
				       (minutes + 30) / 60, to_look);
	return g_strdup_printf("%d %s, about %" G_GINT64_FORMAT " min%s", n, n == 1 ? "task" : "tasks", minutes, to_look);
}

/* The parts of a boat as one walks along them, by the beginnings of paths. */
static const struct { const char *top, *title; } areas[] = {
	{ "boat", "hull" }, { "hull", "hull" }, { "drive", "drive" }, { "shaft", "drive" }, { "saildrive", "drive" },
	{ "propeller", "drive" }, { "jet", "drive" }, { "steering", "steering" }, { "engine", "engine" }, { "fuel", "fuel" },
	{ "generator", "generator" }, { "electrical", "electrics" }, { "safety", "safety" }, { "rig", "rig" },
	{ "cabin", "cabin" }, { "trailer", "trailer" },
};

const char *
due_area(const struct due_line *d, int *rank)
{
	return area_of_path(d->path, rank);
}

const char *
area_of_path(const char *path, int *rank)
{
	const char *slash = strchr(path, '/');
	gsize n;

	for (int twin = 0; twin <= 1; twin++, path = slash ? slash + 1 : path, slash = strchr(path, '/')) {
		n = slash ? (gsize)(slash - path) : strlen(path);
		for (guint i = 0; i < G_N_ELEMENTS(areas); i++)
			if (strlen(areas[i].top) == n && !strncmp(areas[i].top, path, n)) {
				for (*rank = 0; strcmp(areas[*rank].title, areas[i].title); ++*rank)
					;
				return areas[i].title;
			}
	}
	*rank = G_N_ELEMENTS(areas);
	return "other";
}

int
due_group_end(const struct due_list *l, int from)
{
	int to = from + 1;

	while (to < due_count(l) && due_at(l, to)->out.when == due_at(l, from)->out.when)
		to++;
	return to;
}

char *
due_access_words(const struct due_list *l, int i)
{
	gint64 minutes = due_access_minutes(l, i, i + 1);

	if (due_at(l, i)->access < 0)
		return g_strdup("nothing first off");
	if (!minutes)
		return g_strdup_printf("first off or open: %s", due_at(l, i)->off);
	return g_strdup_printf("first off or open: %s (%d min)", due_at(l, i)->off, (int)minutes);
}

gboolean
due_is_about(const struct due_out *out)
{
	gboolean spread = out->early != NONE && (out->late == NONE || out->late - out->early > ABOUT_DAYS);

	return out->estimated || spread;
}

const char *
due_day_words(const struct due_out *out, char buf[20])
{
	buf[0] = '~';
	day_words(out->due, buf + (out->due != NONE && due_is_about(out)));
	return buf;
}

/* Within an opportunity, lines behind the same disassembly stand together; the group's rank is its worst line. */
struct group {
	const char *off;
	int worst[OPPORTUNITY_COUNT];
};

static int
compare_lines(gconstpointer x, gconstpointer y, gpointer groups)
{
	const struct due_line *a = x, *b = y;
	const char *off_a = a->off ? a->off : "", *off_b = b->off ? b->off : "";
	GHashTable *g = groups;
	int d = (int)a->out.when - (int)b->out.when;

	/* What nobody knows is looked at by what it costs, not by what must come off. */
	if (!d && a->out.when != OPP_NO_RECORD && strcmp(off_a, off_b)) {
		const struct group *ga = g_hash_table_lookup(g, off_a), *gb = g_hash_table_lookup(g, off_b);

		d = ga->worst[a->out.when] - gb->worst[b->out.when];
		return d ? d : strcmp(off_a, off_b);
	}
	if (!d)
		d = (int)a->in.consequence - (int)b->in.consequence;
	/* A look comes before the renewal that it may spare. */
	if (!d && a->out.when == OPP_NO_RECORD)
		d = (a->in.rule == CLOCK_RENEWAL) - (b->in.rule == CLOCK_RENEWAL);
	if (!d && a->out.due != b->out.due)
		d = a->out.due == NONE ? 1 : b->out.due == NONE ? -1 : a->out.due < b->out.due ? -1 : 1;
	return d ? d : strcmp(a->name, b->name);
}

void
due_sort(struct due_list *l)
{
	g_autoptr(GHashTable) groups = g_hash_table_new_full(g_str_hash, g_str_equal, NULL, g_free);
	struct due_line *line = (void *)l->lines->data;

	for (guint i = 0; i < l->lines->len; i++) {
		const char *off = line[i].off ? line[i].off : "";
		struct group *g = g_hash_table_lookup(groups, off);
		int *worst;

		if (!g) {
			g = g_new(struct group, 1);
			g->off = off;
			for (int o = 0; o < OPPORTUNITY_COUNT; o++)
				g->worst[o] = CONSEQUENCE_COUNT;
			g_hash_table_insert(groups, (gpointer)(guintptr)off, g);
		}
		worst = &g->worst[line[i].out.when];
		*worst = MIN(*worst, (int)line[i].in.consequence);
	}
	g_array_sort_with_data(l->lines, compare_lines, groups);
}

static void
add_count(GString *out, gint64 n, const char *one, const char *many)
{
	text_add_int(out, n);
	g_string_append(out, n == 1 ? one : many);
}

/* "100 h", "12 months", and in brief "12 mo". */
static void
add_words(GString *out, const struct limit *m, gboolean brief)
{
	gboolean years = m->amount % 12 == 0 && m->amount >= 24;
	char h[HOURS_TEXT];

	switch ((enum limit_kind)m->kind) {
	case LIMIT_FIRST_HOURS:
		g_string_append(out, "first at ");
		/* fall through */
	case LIMIT_HOURS:
		g_string_append(out, hours_exact(m->hours, h));
		g_string_append(out, " h");
		if (!brief && m->salt_hours != NONE)
			g_string_append_printf(out, ", %s h in salt water", hours_exact(m->salt_hours, h));
		return;
	case LIMIT_MONTHS:
		if (years)
			add_count(out, m->amount / 12, "", brief ? " y" : " years");
		else
			add_count(out, m->amount, brief ? " mo" : " month", brief ? " mo" : " months");
		if (!brief && m->salt != NONE)
			g_string_append_printf(out, ", %d %s in salt water", (int)m->salt, m->salt == 1 ? "month" : "months");
		return;
	case LIMIT_OUTINGS:
		if (m->amount == 1)
			g_string_append(out, "each outing");
		else
			add_count(out, m->amount, "", " outings");
		return;
	case LIMIT_SEASONS:
		if (m->amount == 1)
			g_string_append(out, "each season");
		else
			add_count(out, m->amount, "", " seasons");
		return;
	case LIMIT_EVENT:
		g_string_append(out, "each ");
		g_string_append(out, word_of(&words_season_event, m->event));
		return;
	case LIMIT_HAPPENING:
		g_string_append(out, "after ");
		g_string_append(out, word_of(&words_happening, m->happening));
		return;
	case LIMIT_CONDITION:
		g_string_append(out, "on condition");
		if (m->measured && !brief) {
			g_string_append(out, ": ");
			g_string_append(out, m->measured);
		}
		return;
	case LIMIT_KIND_COUNT:
		break;
	}
	g_assert_not_reached();
}

char *
limit_words(const struct limit *m)
{
	GString *out = g_string_new(NULL);

	add_words(out, m, FALSE);
	return g_string_free(out, FALSE);
}

char *
source_words(gint64 standing, const char *source)
{
	static const char *const words[] = { "manual", "published", "common practice", "memory", "owner", "assumption" };
	const char *begin = standing == NONE ? "" : words[standing];

	return g_str_has_prefix(source, begin) ? g_strdup(source) : g_strdup_printf("%s: %s", begin, source);
}

char *
limit_source(const struct limit *m)
{
	return source_words(m->standing, m->source);
}

/* What a line's list column shows: the limit that governs, and the other clock beside it. */
void
due_add_limits(GString *out, const struct due_line *d)
{
	int governs = d->out.governing;
	const struct limit *m = d->limit;
	gboolean any = FALSE;

	if (governs >= 0 && m[governs].kind != LIMIT_HOURS && m[governs].kind != LIMIT_MONTHS) {
		add_words(out, &m[governs], TRUE);
		return;
	}
	for (int i = 0; i < d->in.n_limits; i++) {
		if (m[i].kind != LIMIT_HOURS && m[i].kind != LIMIT_MONTHS)
			continue;
		if (any)
			g_string_append_c(out, '/');
		add_words(out, &m[i], TRUE);
		any = TRUE;
	}
	if (!any && d->in.n_limits)
		add_words(out, &m[0], TRUE);
}
