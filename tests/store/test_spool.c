#include "fixture.h"
#include "store/spool.h"
#include "store/sqlite.h"

#include <signal.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <unistd.h>

static struct spool *s;

static void
setup(void)
{
	g_autofree char *folder = NULL;

	fixture_setup();
	folder = g_path_get_dirname(fixture_path("x"));
	s = spool_new(folder);
}

static void
teardown(void)
{
	spool_free(s);
	fixture_teardown();
}

/* Bytes that repeat at no power of two. */
static guint8 *
made_up(gint64 size)
{
	guint8 *bytes = g_malloc((gsize)size + 1);

	for (gint64 i = 0; i < size; i++)
		bytes[i] = (guint8)(i * 7919 >> 3);
	return bytes;
}

static void
fill(const guint8 *bytes, gint64 size, gint64 piece)
{
	for (gint64 at = 0; at < size; at += piece) {
		gsize n = (gsize)MIN(piece, size - at);

		memcpy(spool_room(s, n), bytes + at, n);
		spool_took(s, n);
	}
}

static const struct {
	gint64 size, piece;
} sizes[] = {
	{ 0, 1 }, { 1, 1 }, { 1000, 17 },
	{ SPOOL_MEMORY - 1, 4096 }, { SPOOL_MEMORY, 4096 }, { SPOOL_MEMORY + 1, 4096 },
	{ 3 * SPOOL_MEMORY + 5, 100003 }, { 4 * SPOOL_MEMORY, SPOOL_MEMORY },
};

START_TEST(what_goes_in_comes_out_with_the_right_sum)
{
	gint64 size = sizes[_i].size, at = 0;
	g_autofree guint8 *bytes = made_up(size), *piece = g_malloc(65536);
	g_autofree char *wanted = g_compute_checksum_for_data(G_CHECKSUM_SHA256, bytes, (gsize)size);
	g_autoptr(GString) hex = g_string_new(NULL);
	guint8 sum[SUM_BYTES];
	gssize got;

	fill(bytes, size, sizes[_i].piece);
	ck_assert_int_eq(spool_size(s), size);
	ck_assert(spool_good(s, NULL));
	for (int round = 0; round < 2; round++) {
		spool_rewind(s);
		for (at = 0; (got = spool_read(s, piece, 65536)) > 0; at += got)
			ck_assert_mem_eq(piece, bytes + at, (size_t)got);
		ck_assert_int_eq(at, size);
	}
	spool_sum(s, sum);
	for (int i = 0; i < SUM_BYTES; i++)
		g_string_append_printf(hex, "%02x", sum[i]);
	ck_assert_str_eq(hex->str, wanted);
	ck_assert_int_eq(fixture_files(), 0);
}
END_TEST

START_TEST(it_serves_as_a_stream_of_sqlite)
{
	int size = 2 * SPOOL_MEMORY + 10, n;
	g_autofree guint8 *bytes = made_up(size), *back = g_malloc(65536);

	ck_assert_int_eq(spool_output(s, bytes, size), SQLITE_OK);
	spool_rewind(s);
	for (int at = 0;; at += n) {
		n = 65536;
		ck_assert_int_eq(spool_input(s, back, &n), SQLITE_OK);
		if (!n)
			break;
		ck_assert_mem_eq(back, bytes + at, (size_t)n);
	}
}
END_TEST

START_TEST(a_full_disk_is_remembered_and_told)
{
	g_autofree guint8 *bytes = made_up(4 * SPOOL_MEMORY);
	struct rlimit limit;
	GError *err = NULL;
	char byte;
	int n = 1;

	signal(SIGXFSZ, SIG_IGN);
	ck_assert_int_eq(getrlimit(RLIMIT_FSIZE, &limit), 0);
	limit.rlim_cur = 1500000;
	ck_assert_int_eq(setrlimit(RLIMIT_FSIZE, &limit), 0);
	fill(bytes, 4 * SPOOL_MEMORY, 4096);
	fixture_fails(spool_good(s, &err), err, ERR_STORE, "File too large");
	ck_assert_int_eq(spool_read(s, &byte, 1), -1);
	ck_assert_int_ne(spool_input(s, &byte, &n), SQLITE_OK);
	ck_assert_int_ne(spool_output(s, "x", 1), SQLITE_OK);
}
END_TEST

START_TEST(no_folder_to_write_in_is_told)
{
	g_autofree guint8 *bytes = made_up(2 * SPOOL_MEMORY);
	GError *err = NULL;

	spool_free(s);
	s = spool_new(fixture_path("nowhere"));
	fill(bytes, 2 * SPOOL_MEMORY, 4096);
	fixture_fails(spool_good(s, &err), err, ERR_STORE, "nothing was saved");
}
END_TEST

int
main(void)
{
	Suite *suite = suite_create("store/spool");
	TCase *tc = tcase_create("bytes");
	SRunner *sr = srunner_create(suite);
	int failed;

	tcase_set_timeout(tc, 60);
	tcase_add_checked_fixture(tc, setup, teardown);
	tcase_add_loop_test(tc, what_goes_in_comes_out_with_the_right_sum, 0, G_N_ELEMENTS(sizes));
	tcase_add_test(tc, it_serves_as_a_stream_of_sqlite);
	tcase_add_test(tc, a_full_disk_is_remembered_and_told);
	tcase_add_test(tc, no_folder_to_write_in_is_told);
	suite_add_tcase(suite, tc);
	srunner_run_all(sr, CK_NORMAL);
	failed = srunner_ntests_failed(sr);
	srunner_free(sr);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
