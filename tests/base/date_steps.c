/* Date arithmetic for a comparison from outside: of each line "YYYY-MM-DD months" print the day that many
 * months later, of each line "YYYY-MM-DD YYYY-MM-DD" the whole months between. */
#include "base/date.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static gboolean
answer(const char *first, const char *second)
{
	gint64 from, to, months;
	char buf[DAY_TEXT];

	if (!day_parse(first, NONE, &from, NULL))
		return FALSE;
	if (day_parse(second, NONE, &to, NULL)) {
		printf("%d\n", day_months_between(from, to));
		return TRUE;
	}
	if (!g_ascii_string_to_signed(second, 10, -200000, 200000, &months, NULL))
		return FALSE;
	puts(day_iso(day_add_months(from, (int)months), buf));
	return TRUE;
}

int
main(void)
{
	char line[64];

	while (fgets(line, sizeof line, stdin)) {
		g_auto(GStrv) words = g_strsplit(g_strchomp(line), " ", 2);

		if (g_strv_length(words) != 2 || !answer(words[0], words[1])) {
			fprintf(stderr, "date_steps: cannot read \"%s\"\n", line);
			return EXIT_FAILURE;
		}
	}
	return EXIT_SUCCESS;
}
