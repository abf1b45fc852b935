/* Which design of a fitting the boat has: it decides which tasks there are. */
#include "base/err.h"
#include "base/text.h"
#include "logbook/found.h"
#include "logbook/page.h"
#include "tui/app.h"
#include "tui/form.h"

#include <string.h>

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	struct fitting fitting;
	gboolean ok = book_record(a->book, RECORD_FITTING, f->subject, &fitting, err);

	if (ok && !fitting.variants)
		ok = err_set(err, ERR_INPUT, "%s comes in one design only", fitting.title);
	if (ok) {
		g_auto(GStrv) design = g_strsplit(fitting.variants, " ", -1);
		g_autofree char *designs = g_strjoinv(", ", design);

		f->heading = g_strdup_printf("%s: %s", fitting.title, designs);
		form_add(f, "variant", "Design", "one of those above", fitting.variant);
	}
	record_clear(RECORD_FITTING, &fitting);
	return ok;
}

static gboolean
is_one_of(const char *words, const char *word)
{
	g_auto(GStrv) all = g_strsplit(words ? words : "", " ", -1);

	return g_strv_contains((const char *const *)all, word);
}

static void
add_task(GString *out, const char *word, const struct task *t)
{
	gboolean first = !strstr(out->str, word);

	g_string_append_printf(out, "%s%s%s", first ? (out->len ? ". " : "") : "; ", first ? word : "", t->title);
}

/* "Comes: ...; .... Goes: ..."; the caller's. */
static char *
what_changes(struct app *a, const struct fitting *f, const char *variant)
{
	g_autoptr(GArray) tasks = book_records(a->book, RECORD_TASK, a->boat.id, NULL);
	GString *out = g_string_new(NULL);

	for (int comes = 1; comes >= 0; comes--)
		for (guint i = 0; tasks && i < tasks->len; i++) {
			const struct task *t = &((const struct task *)(const void *)tasks->data)[i];
			/* While nobody knows the design, it has the tasks of all. */
			gboolean was = !f->variant || is_one_of(t->variants, f->variant), will = is_one_of(t->variants, variant);

			if (t->fitting == f->id && t->variants && t->retired != 1 && was != will && will == comes)
				add_task(out, comes ? "Comes: " : "Goes: ", t);
		}
	return g_string_free(out, FALSE);
}

static char *
sum_of(struct app *a, const struct fitting *f, const char *variant)
{
	g_autofree char *changes = what_changes(a, f, variant);

	if (f->variant && !strcmp(f->variant, variant))
		return g_strdup_printf("%s: %s, as it is on record.", f->title, variant);
	return g_strdup_printf("%s: %s%s%s. %s.", f->title, variant, f->variant ? " in place of " : "",
			       f->variant ? f->variant : "", *changes ? changes : "The tasks stay as they are");
}

static char *
check(struct app *a, struct form *f)
{
	const char *variant = form_text(f, "variant");
	struct fitting fitting;
	GError *err = NULL;
	char *sum = NULL;

	if (book_record(a->book, RECORD_FITTING, f->subject, &fitting, &err)) {
		g_autofree char *shown = text_quoted(variant);

		if (!*variant)
			err_set(&err, ERR_INPUT, "wanted: which design is it?");
		else if (!is_one_of(fitting.variants, variant))
			err_set(&err, ERR_INPUT, "%s is none of its designs: one of those above", shown);
		else
			sum = sum_of(a, &fitting, variant);
	}
	form_wrong(f, "variant", &err);
	record_clear(RECORD_FITTING, &fitting);
	return sum;
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	struct fitting fitting;
	gboolean ok = book_record(a->book, RECORD_FITTING, f->subject, &fitting, err)
		   && book_set_variant(a->book, &fitting, form_text(f, "variant"), err);

	if (ok)
		app_say(a, STYLE_STRONG, "%s: %s; u takes it back", fitting.title, fitting.variant);
	record_clear(RECORD_FITTING, &fitting);
	return ok;
}

const struct form_kind form_variant = {
	.name = "variant", .title = "Which design it is", .button = "Enter records it",
	.begin = begin, .check = check, .save = save,
};
