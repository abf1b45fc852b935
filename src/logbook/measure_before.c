/* How a reading stands to the one before it: two that were read in different ways are no trend. */
#include "logbook/measure.h"

#include "base/date.h"

#include <string.h>

const struct measurement *
measure_before(const GArray *readings, const struct measurement *m)
{
	const struct measurement *r = (const void *)readings->data, *before = NULL;

	for (guint i = 0; i < readings->len && (m->id == NONE || r[i].id != m->id); i++)
		if (r[i].fitting == m->fitting && r[i].date <= m->date && !g_strcmp0(r[i].what, m->what))
			before = &r[i];
	return before;
}

gboolean
measure_another_way(const struct measurement *m, const struct measurement *before)
{
	g_autofree char *x = g_utf8_casefold(m->method ? m->method : "", -1),
			*y = g_utf8_casefold(before->method ? before->method : "", -1);

	return strcmp(g_strstrip(x), g_strstrip(y)) != 0;
}

static const char *
way(const struct measurement *m)
{
	return m->method ? m->method : "not said";
}

char *
measure_before_words(const struct measurement *m, const struct measurement *before)
{
	char day[16];

	day_words(before->date, day);
	if (!measure_another_way(m, before))
		return g_strdup_printf("before: %s on %s", before->as_read, day);
	return g_strdup_printf("read another way (%s; before: %s): not compared with %s on %s%s", way(m), way(before),
			       before->as_read, day, m->method ? "" : ". How was this one read?");
}
