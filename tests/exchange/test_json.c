#include "exchange/json.h"

#include "base/err.h"
#include "base/value.h"

#include <check.h>
#include <jansson.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static struct json_out *
two_lines(void)
{
	struct json_out *out = jsonout_new();

	jsonout_next(out);
	jsonout_text(out, "task", "gimbal-bearing.grease");
	jsonout_int(out, "minutes", 15);
	jsonout_real(out, "share", 0.1);
	jsonout_yes(out, "estimated", 1);
	jsonout_open_array(out, "limits");
	jsonout_open_object(out, NULL);
	jsonout_text(out, "kind", "hours");
	jsonout_close(out);
	jsonout_int(out, NULL, -3);
	jsonout_close(out);
	jsonout_null(out, "due");
	jsonout_next(out);
	jsonout_text(out, "task", NULL);
	jsonout_int(out, "minutes", NONE);
	jsonout_real(out, "share", (double)NAN);
	jsonout_yes(out, "estimated", NONE);
	jsonout_open_object(out, "open");
	return out;
}

static const char *const forms[] = {
	"[{\"task\":\"gimbal-bearing.grease\",\"minutes\":15,\"share\":0.1,\"estimated\":true,"
	"\"limits\":[{\"kind\":\"hours\"},-3],\"due\":null},"
	"{\"task\":null,\"minutes\":null,\"share\":null,\"estimated\":null,\"open\":{}}]\n",
	"[\n  {\n    \"task\": \"gimbal-bearing.grease\",\n    \"minutes\": 15,\n    \"share\": 0.1,\n"
	"    \"estimated\": true,\n    \"limits\": [\n      {\n        \"kind\": \"hours\"\n      },\n  "
	"    -3\n    ],\n"
	"    \"due\": null\n  },\n  {\n    \"task\": null,\n    \"minutes\": null,\n    \"share\": null,\n"
	"    \"estimated\": null,\n    \"open\": {}\n  }\n]\n",
};

START_TEST(a_list_is_written_in_order)
{
	g_autoptr(GString) got = g_string_new(NULL);
	struct json_out *out = two_lines();
	struct sink sink = sink_string(got);

	ck_assert(jsonout_write(out, &sink, _i, NULL));
	ck_assert_str_eq(got->str, forms[_i]);
	jsonout_free(out);
}
END_TEST

START_TEST(an_empty_list_is_a_list)
{
	g_autoptr(GString) got = g_string_new(NULL);
	struct json_out *out = jsonout_new();
	struct sink sink = sink_string(got);

	ck_assert(jsonout_write(out, &sink, FALSE, NULL));
	ck_assert_str_eq(got->str, "[]\n");
	jsonout_free(out);
}
END_TEST

static const struct {
	const char *text, *want;
} texts[] = {
	{ "plain", "plain" }, { "", "" }, { "say \"hi\"\\\n\t\x1b", "say \"hi\"\\\n\t\x1b" },
	{ "\xC3\xA4\xE2\x82\xAC\xF0\x9F\x9A\xA2", "\xC3\xA4\xE2\x82\xAC\xF0\x9F\x9A\xA2" },
	{ "caf\xE9", "caf\xEF\xBF\xBD" },
};

/* Read by the library's own parser: what a text holds comes back, and stays UTF-8. */
START_TEST(any_text_comes_back)
{
	g_autoptr(GString) got = g_string_new(NULL);
	struct json_out *out = jsonout_new();
	struct sink sink = sink_string(got);
	json_t *root;

	jsonout_next(out);
	jsonout_text(out, "remark", texts[_i].text);
	ck_assert(jsonout_write(out, &sink, FALSE, NULL));
	ck_assert_ptr_null(strstr(got->str, "\\u00e4"));
	root = json_loads(got->str, JSON_REJECT_DUPLICATES, NULL);
	ck_assert_str_eq(json_string_value(json_object_get(json_array_get(root, 0), "remark")),
			 texts[_i].want);
	json_decref(root);
	jsonout_free(out);
}
END_TEST

START_TEST(a_full_disk_is_told)
{
	struct json_out *out = two_lines();
	FILE *f = fopen("/dev/full", "w");
	struct sink sink = sink_file(f);
	GError *err = NULL;

	if (f) {
		ck_assert(!jsonout_write(out, &sink, FALSE, &err));
		ck_assert(g_error_matches(err, ERR_DOMAIN, ERR_SYSTEM));
		g_error_free(err);
		fclose(f);
	}
	jsonout_free(out);
}
END_TEST

int
main(void)
{
	Suite *s = suite_create("JSON: a list of objects, unknown as null, UTF-8");
	TCase *t = tcase_create("writing");
	SRunner *runner = srunner_create(s);
	int failed;

	tcase_add_loop_test(t, a_list_is_written_in_order, 0, 2);
	tcase_add_test(t, an_empty_list_is_a_list);
	tcase_add_loop_test(t, any_text_comes_back, 0, G_N_ELEMENTS(texts));
	tcase_add_test(t, a_full_disk_is_told);
	suite_add_tcase(s, t);
	srunner_run_all(runner, CK_NORMAL);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
