/* Reads boats as boat_text.h writes them, each ended by a line "end"; a task follows its boat's lines, and its limits
 * the task.  Prints the spans of a boat, and for each task its answer and a line for each limit. */
#include "boat_text.h"

static void
print_spans(const struct timeline *t)
{
	const struct span *span;
	int n = timeline_spans(t, &span);

	for (int i = 0; i < n; i++) {
		g_autofree char *says = span_says(&span[i]);

		printf("span %s\n", says);
	}
}

static void
print_task(const struct timeline *t, const struct boat_text *b)
{
	struct limit_out used[MOST_FEW];
	struct due_out out;
	g_autofree char *says = NULL;
	char day[DAY_TEXT], early[DAY_TEXT], late[DAY_TEXT];

	due_work_out(t, b->in.today, &b->task, &out, used);
	says = due_says(&out);
	printf("task %s\n", says);
	for (int i = 0; i < b->task.n_limits; i++)
		printf("limit %s %s %s %.6f %.6f %.6f %.6f\n", day_or_dash(used[i].due, day),
		       day_or_dash(used[i].early, early), day_or_dash(used[i].late, late), used[i].raw, used[i].rated,
		       used[i].allowed, used[i].share);
}

static void
print_boat(struct timeline *t, struct boat_text *b, gboolean *shown)
{
	if (!*shown) {
		boat_timeline(b, t);
		print_spans(t);
	}
	if (b->task.n_limits)
		print_task(t, b);
	*shown = TRUE;
}

int
main(void)
{
	struct boat_text *b = g_new0(struct boat_text, 1);
	struct timeline *t = timeline_new();
	gboolean shown = FALSE;
	char line[200];

	boat_text_init(b);
	while (fgets(line, sizeof line, stdin)) {
		gboolean end = g_str_has_prefix(line, "end");

		if (end || (g_str_has_prefix(line, "task") && b->task.n_limits))
			print_boat(t, b, &shown);
		if (end) {
			puts("end");
			boat_text_init(b);
			shown = FALSE;
		} else {
			boat_text_read(b, line);
		}
	}
	timeline_free(t);
	wear_rates_free(b->in.rates);
	g_free(b);
	return 0;
}
