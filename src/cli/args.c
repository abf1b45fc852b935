#include "cli/args.h"

#include "base/err.h"
#include "base/text.h"

#include <getopt.h>
#include <string.h>

void
args_clear(struct args *a)
{
	g_clear_pointer(&a->words, g_ptr_array_unref);
	g_clear_pointer(&a->names, g_ptr_array_unref);
	g_clear_pointer(&a->values, g_ptr_array_unref);
}

static void
add_options(GArray *out, const struct option_def *def)
{
	for (; def && def->name; def++) {
		struct option o = { def->name, def->arg ? required_argument : no_argument, NULL, 0 };

		g_array_append_val(out, o);
	}
}

static gboolean
unknown_option(const GArray *known, const char *typed, GError **err)
{
	const struct option *o = (const void *)known->data;
	g_autofree const char **name = g_new(const char *, known->len);
	g_autofree char *word = g_strndup(typed, strcspn(typed, "="));
	g_autofree char *shown = text_harmless(word, FALSE);
	const char *near, *bare = word + strspn(word, "-");

	for (guint i = 0; i < known->len; i++)
		name[i] = o[i].name ? o[i].name : "";
	for (guint i = 0; i < known->len; i++)
		if (strchr(typed, '=') && !strcmp(name[i], bare))
			return err_set(err, ERR_INPUT, "the option --%s takes no value", bare);
	near = text_nearest(bare, name, (int)known->len - 1);
	if (near)
		return err_set(err, ERR_INPUT, "there is no option %.40s here: is --%s meant?", shown, near);
	return err_set(err, ERR_INPUT, "there is no option %.40s here (a word that begins with - goes after --)",
		       shown);
}

static gboolean
take_option(struct args *a, const GArray *known, int got, int at, char **argv, GError **err)
{
	const struct option *o = (const void *)known->data;

	if (got == ':')
		return err_set(err, ERR_INPUT, "the option %s wants a value after it", argv[optind - 1]);
	if (got == '?') {
		const char *typed = argv[optind - 1];

		/* Within "-1.5" getopt has not gone past the word yet. */
		if (optopt && (typed[0] != '-' || typed[1] == '-') && argv[optind])
			typed = argv[optind];
		return unknown_option(known, typed, err);
	}
	g_ptr_array_add(a->names, (gpointer)(guintptr)o[at].name);
	g_ptr_array_add(a->values, optarg ? optarg : (gpointer)(guintptr) "");
	return TRUE;
}

gboolean
args_parse(struct args *a, int argc, char **argv, const struct option_def *const tables[2], int *rest, GError **err)
{
	g_autoptr(GArray) known = g_array_new(TRUE, TRUE, sizeof(struct option));
	const struct option none = { NULL, 0, NULL, 0 };
	int got, at = 0;

	*a = (struct args){ g_ptr_array_new(), g_ptr_array_new(), g_ptr_array_new() };
	add_options(known, tables[0]);
	add_options(known, tables[1]);
	g_array_append_val(known, none);
	opterr = 0;
	optind = 0; /* glibc and musl: start anew, also after an earlier call */
	while ((got = getopt_long(argc, argv, rest ? "+:" : ":", (const void *)known->data, &at)) != -1)
		if (!take_option(a, known, got, at, argv, err))
			return FALSE;
	if (rest)
		*rest = optind;
	for (int i = optind; !rest && i < argc; i++)
		g_ptr_array_add(a->words, argv[i]);
	return TRUE;
}

const char *
args_nth(const struct args *a, const char *name, int k)
{
	for (guint i = 0; i < a->names->len; i++)
		if (!strcmp(a->names->pdata[i], name) && k-- == 0)
			return a->values->pdata[i];
	return NULL;
}

const char *
args_value(const struct args *a, const char *name)
{
	for (guint i = a->names->len; i-- > 0;)
		if (!strcmp(a->names->pdata[i], name))
			return a->values->pdata[i];
	return NULL;
}

gboolean
args_flag(const struct args *a, const char *name)
{
	return args_value(a, name) != NULL;
}

const char *
args_word(const struct args *a, guint i)
{
	return i < a->words->len ? a->words->pdata[i] : NULL;
}

char *
args_join(const struct args *a, guint i)
{
	GString *out = g_string_new(NULL);

	for (guint first = i; i < a->words->len; i++) {
		if (i > first)
			g_string_append_c(out, ' ');
		g_string_append(out, a->words->pdata[i]);
	}
	return g_string_free(out, FALSE);
}

char **
args_all(const struct args *a, const char *name)
{
	g_autoptr(GStrvBuilder) all = g_strv_builder_new();
	const char *v;

	for (int k = 0; (v = args_nth(a, name, k)); k++)
		g_strv_builder_add(all, v);
	return g_strv_builder_end(all);
}
