/* Tables of published and recomputed figures, tests/data/published/ *.csv: each row names its source. */
#ifndef TESTS_ENGINE_PUBLISHED_H
#define TESTS_ENGINE_PUBLISHED_H

#include <check.h>
#include <glib.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct published {
	char **head, ***row;
	int n;
};

/* A field may stand in quotes; none of these tables has a quote within. */
static inline char **
published_fields(const char *line)
{
	GPtrArray *all = g_ptr_array_new();

	for (gboolean more = TRUE; more;) {
		gboolean quoted = *line == '"';
		gsize n = strcspn(line + quoted, quoted ? "\"" : ",");

		g_ptr_array_add(all, g_strndup(line + quoted, n));
		line += n + 2 * (gsize)quoted;
		more = *line == ',';
		line += more;
	}
	g_ptr_array_add(all, NULL);
	return (char **)g_ptr_array_free(all, FALSE);
}

static inline void
published_read(struct published *p, const char *name)
{
	const char *top = g_getenv("top_srcdir");
	g_autofree char *path = g_build_filename(top ? top : ".", "tests", "data", "published", name, NULL);
	g_autofree char *text = NULL;
	g_auto(GStrv) lines = NULL;

	if (!g_file_get_contents(path, &text, NULL, NULL)) {
		fprintf(stderr, "cannot read %s\n", path);
		exit(99);
	}
	lines = g_strsplit(g_strstrip(text), "\n", -1);
	p->n = (int)g_strv_length(lines) - 1;
	p->head = published_fields(lines[0]);
	p->row = g_new(char **, (gsize)p->n);
	for (int i = 0; i < p->n; i++)
		p->row[i] = published_fields(lines[i + 1]);
}

static inline void
published_clear(struct published *p)
{
	g_strfreev(p->head);
	for (int i = 0; i < p->n; i++)
		g_strfreev(p->row[i]);
	g_free(p->row);
}

static inline const char *
published_text(const struct published *p, int i, const char *column)
{
	for (guint k = 0; p->head[k] && k < g_strv_length(p->row[i]); k++)
		if (!strcmp(p->head[k], column))
			return p->row[i][k];
	ck_abort_msg("row %d has no column %s", i, column);
	return "";
}

/* NAN when the field is empty. */
static inline double
published_number(const struct published *p, int i, const char *column)
{
	const char *text = published_text(p, i, column);

	return *text ? g_ascii_strtod(text, NULL) : (double)NAN;
}

static inline void
published_check(const struct published *p, int i, double got)
{
	double want = published_number(p, i, "expected"), most = published_number(p, i, "tolerance");

	ck_assert_msg(fabs(got - want) <= most, "%s: %.15g, not %.15g within %g (%s)",
		      published_text(p, i, "name"), got, want, most, published_text(p, i, "source"));
}

static inline void
published_check_text(const struct published *p, int i, const char *got)
{
	ck_assert_msg(!strcmp(got, published_text(p, i, "expected")), "%s: %s, not %s (%s)",
		      published_text(p, i, "name"), got, published_text(p, i, "expected"),
		      published_text(p, i, "source"));
}

/* The seed is printed; SEED=number repeats a run. */
static inline GRand *
seeded(const char *what)
{
	const char *given = g_getenv("SEED");
	guint32 seed = given ? (guint32)strtoul(given, NULL, 10) : g_random_int();

	printf("%s: SEED=%u\n", what, seed);
	fflush(stdout);
	return g_rand_new_with_seed(seed);
}

static inline int
run_all(Suite *suite)
{
	SRunner *runner = srunner_create(suite);
	int failed;

	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}

#endif
