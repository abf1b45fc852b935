#include "base/key.h"

#include <check.h>
#include <stdlib.h>

START_TEST(letters_and_keys_are_the_same)
{
	static const gint64 keys[] = {
		0, 1, 15, 16, G_MAXINT64, -1, G_MININT64 + 1, G_GINT64_CONSTANT(0x0123456789ABCDEF)
	};
	char buf[KEY_TEXT];
	gint64 back = 5;

	for (size_t i = 0; i < G_N_ELEMENTS(keys); i++) {
		ck_assert(key_from_letters(key_letters(keys[i], buf), &back));
		ck_assert_int_eq(back, keys[i]);
	}
	ck_assert_str_eq(key_letters(G_GINT64_CONSTANT(0x0123456789ABCDEF), buf), "bcdfghjklmnpqrst");
	ck_assert_str_eq(key_letters(NONE, buf), "");
	ck_assert(key_from_letters("BCDFGHJKLMNPQRST", &back));
	ck_assert(!key_from_letters("bcdfghjklmnpqrs", &back));
	ck_assert(!key_from_letters("bcdfghjklmnpqrstt", &back));
	ck_assert(!key_from_letters("bcdfghjklmnpqrsa", &back));
	ck_assert(!key_from_letters("", &back));
	ck_assert(!key_from_letters("lbbbbbbbbbbbbbbb", &back));	/* the bits of NONE */
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("base/key");
	TCase *t = tcase_create("letters");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_test(t, letters_and_keys_are_the_same);
	suite_add_tcase(s, t);
	srunner_run_all(runner, CK_ENV);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
