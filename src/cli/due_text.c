#include "cli/due_text.h"

#include "base/date.h"
#include "base/text.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* From this width on a line has room for the task's name, which did and why take. */
enum { WIDE = 110, NARROW = 70, NAME_COLUMNS = 30, FACTS = 9 + 15 + 13 + 7, FEW_FACTS = 9 + 12 };

static void
heading(const struct cli *c, const char *left, const char *right)
{
	int gap = c->columns - text_width(left) - text_width(right);

	if (gap >= 2) {
		printf("\n%s%*s%s\n", left, gap, "", right);
		return;
	}
	puts("");
	cli_say(c, 2, "%s", left);
	cli_say(c, 2, "  %s", right);
}

static void
add_share(GString *out, const struct due_line *d)
{
	gsize at = out->len;

	if (isnan(d->out.share) || d->out.when == OPP_NO_RECORD)
		return;
	if (d->out.estimated)
		g_string_append_c(out, '~');
	text_add_int(out, lrint(fmin(d->out.share, 9.99) * 100));
	g_string_append(out, " %");
	for (gsize n = out->len - at; n < 7; n++)
		g_string_insert_c(out, (gssize)at, ' ');
}

/* One line, built up in out. */
static void
print_line(const struct cli *c, const struct due_line *d, GString *out)
{
	gboolean wide = c->columns >= WIDE, narrow = c->columns < NARROW;
	int label = c->columns - 2 - (wide ? NAME_COLUMNS + 2 : 0) - (narrow ? FEW_FACTS : FACTS);
	g_autoptr(GString) limits = g_string_sized_new(32);
	char day[20];

	due_day_words(&d->out, day);
	g_string_assign(out, d->out.past ? "! " : "  ");
	if (wide) {
		text_add_fit(out, d->name, NAME_COLUMNS);
		g_string_append(out, "  ");
	}
	text_add_fit(out, d->label, MAX(label, 12));
	g_string_append_c(out, ' ');
	text_add_fit(out, word_of(&words_consequence, d->in.consequence), 8);
	if (!narrow) {
		due_add_limits(limits, d);
		text_add_fit(out, limits->str, 15);
		g_string_append_c(out, ' ');
	}
	for (gsize n = strlen(day); n < 12; n++)
		g_string_append_c(out, ' ');
	g_string_append(out, day);
	if (!narrow)
		add_share(out, d);
	puts(g_strchomp(out->str));
}

/* What is printed of a group without being asked for it: before the launch, what is wanted before it and in the season;
 * under way, what is wanted up to the lay-up; of what nobody knows, a summary. */
static int
shown_of(const struct due_list *l, int from, int to, gboolean all)
{
	if (all)
		return to - from;
	switch (due_at(l, from)->out.when) {
	case OPP_LAY_UP:
		return due_year(l)->afloat ? to - from : 0;
	case OPP_NEXT_SPRING:
	case OPP_LATER:
	case OPP_EACH_OUTING:
	case OPP_ON_CONDITION:
	case OPP_NO_RECORD:
		return 0;
	case OPP_NOW:
	case OPP_BEFORE_LAUNCH:
	case OPP_FIRST_DAY:
	case OPP_MID_SEASON:
	case OPP_THIS_SEASON:
	case OPPORTUNITY_COUNT:
		break;
	}
	return to - from;
}

/* What must come off for line i, with the minutes of that alone: the group's sum counts each thing once. */
static void
say_access(const struct cli *c, const struct due_list *l, int i)
{
	g_autofree char *words = due_access_words(l, i);

	cli_say(c, 4, "  %s", words);
}

static void
say_while_open(const struct cli *c, const struct due_list *l, const struct due_line *d)
{
	g_autofree char *more = due_while_open(l, d->access, d->out.when);

	if (*more)
		cli_say(c, 4, "  while it is open: %s", more);
}

/* What to look at, and what it costs when it fails; whole also what proves that it was seen. */
static void
say_survey(const struct cli *c, const struct due_line *d, gboolean whole)
{
	const char *cost = word_of(&words_consequence, d->in.consequence);

	if (!whole)
		cli_say(c, 10, "  %-7s %s: %s", cost, d->fitting, d->title);
	else
		cli_say(c, 10, "  %-7s %s: %s.%s%s%s%s", cost, d->name, d->title, d->off ? " First off: " : "",
			d->off ? d->off : "", d->proof ? (d->off ? "; seen: " : " Seen: ") : "", d->proof ? d->proof : "");
}

static void
say_found(const struct cli *c, const struct due_line *d)
{
	for (int i = 0; i < d->n_found; i++) {
		g_autofree char *words = due_finding_words(&d->found[i]);

		cli_say(c, 4, "    %s", words);
	}
}

static void
print_lines(const struct cli *c, const struct due_list *l, int from, int to)
{
	g_autoptr(GString) line = g_string_sized_new(256);
	int access = -1;

	for (int i = from; i < to; i++) {
		const struct due_line *d = due_at(l, i);

		if (d->access != access && access >= 0)
			say_while_open(c, l, due_at(l, i - 1));
		if (d->access != access)
			say_access(c, l, i);
		access = d->access;
		print_line(c, d, line);
		say_found(c, d);
	}
	if (access >= 0)
		say_while_open(c, l, due_at(l, to - 1));
}

/* One part of the boat: how much of it is unknown, and by name what can sink, burn or hurt, once each. */
static void
say_area(const struct cli *c, const struct due_list *l, int from, int to)
{
	g_autoptr(GPtrArray) grave = g_ptr_array_new();
	g_autofree char *names = NULL;
	const char *area = NULL;
	int rank, of, n = 0;

	due_area(due_at(l, from), &of);
	for (int i = from; i < to; i++) {
		const struct due_line *d = due_at(l, i);

		area = due_area(d, &rank);
		if (strcmp(area, due_area(due_at(l, from), &of)))
			continue;
		n++;
		if (d->in.consequence <= COST_HURTS && !g_ptr_array_find_with_equal_func(grave, d->fitting, g_str_equal, NULL))
			g_ptr_array_add(grave, (gpointer)(guintptr)d->fitting);
	}
	g_ptr_array_add(grave, NULL);
	names = g_strjoinv("; ", (char **)grave->pdata);
	cli_say(c, 17, "  %-10s %3d  %s", due_area(due_at(l, from), &of), n, *names ? names : "nothing that sinks, burns or hurts");
}

/* The parts of the boat as one walks along them. */
static void
print_areas(const struct cli *c, const struct due_list *l, int from, int to)
{
	int last = -1, rank;

	puts("  of each part the number of tasks, and first what can sink, burn or hurt:");
	for (;;) {
		int next = G_MAXINT, at = -1;

		for (int i = from; i < to; i++) {
			due_area(due_at(l, i), &rank);
			if (rank > last && rank < next) {
				next = rank;
				at = i;
			}
		}
		if (at < 0)
			return;
		last = next;
		say_area(c, l, at, to);
	}
}

static void
print_group(const struct cli *c, const struct due_list *l, int from, int to, gboolean all)
{
	gboolean survey = due_at(l, from)->out.when == OPP_NO_RECORD;
	g_autofree char *title = due_group_title(l, from, to);
	g_autofree char *sum = due_group_sum(l, from, to);
	int shown = shown_of(l, from, to, all), rest = to - from - shown;

	heading(c, title, sum);
	for (int i = from; survey && i < from + shown; i++)
		say_survey(c, due_at(l, i), FALSE);
	if (!survey && shown)
		print_lines(c, l, from, from + shown);
	if (survey && rest) {
		print_areas(c, l, from, to);
		puts("  due --survey walks through them, the worst first");
	} else if (rest)
		cli_say(c, 2, "  %d %s not shown: due --all", rest, rest == 1 ? "task" : "tasks");
}

void
due_survey_text(const struct cli *c, const char *head, const struct due_list *l)
{
	int n = 0;

	cli_say(c, 2, "%s", head);
	for (int i = 0; i < due_count(l); i++)
		n += due_at(l, i)->out.when == OPP_NO_RECORD;
	if (!n) {
		puts("\nof everything it is on record when it was last done");
		return;
	}
	printf("\nSURVEY: of %d tasks nobody knows when they were last done; the worst first\n", n);
	for (int i = 0; i < due_count(l); i++)
		if (due_at(l, i)->out.when == OPP_NO_RECORD)
			say_survey(c, due_at(l, i), TRUE);
	cli_say(c, 2, "\nWhat was looked at: splitpin did TASK --seen \"...\"; what is known about when: did TASK --date 2019 or "
		"--hours 300..350.");
}

static gboolean
is_same(const struct due_reading *a, const struct due_reading *b)
{
	return a->kind == b->kind && a->date == b->date && !strcmp(a->as_read, b->as_read);
}

/* One reading can be for several tasks: it is told with the first. */
static gboolean
told(const struct due_list *l, int before, const struct due_reading *r)
{
	for (int i = 0; i < before; i++)
		for (int k = 0; k < due_at(l, i)->n_readings; k++)
			if (is_same(&due_at(l, i)->reading[k], r))
				return TRUE;
	return FALSE;
}

/* Readings that make nothing due yet. */
static void
print_watched(const struct cli *c, const struct due_list *l)
{
	int n = 0;

	for (int i = 0; i < due_count(l); i++)
		for (int k = 0; k < due_at(l, i)->n_readings; k++) {
			const struct due_reading *r = &due_at(l, i)->reading[k];
			g_autofree char *words = r->verdict == VERDICT_WATCH && !told(l, i, r) ? due_reading_words(r) : NULL;

			if (!words)
				continue;
			if (!n++)
				puts("\nWORTH WATCHING, as last read");
			cli_say(c, 4, "  %s (%s)", words, due_at(l, i)->name);
		}
}

void
due_text(const struct cli *c, const char *head, const struct due_list *l, gboolean all)
{
	int n = due_count(l), to;

	cli_say(c, 2, "%s", head);
	if (!n)
		puts("\nnothing is due");
	for (int from = 0; from < n; from = to) {
		to = due_group_end(l, from);
		print_group(c, l, from, to, all);
	}
	print_watched(c, l);
}
