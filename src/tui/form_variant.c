/* Which design of a fitting the boat has: it decides which tasks there are. */
#include "base/err.h"
#include "logbook/page.h"
#include "logbook/variant.h"
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
		g_autofree char *designs = variant_words(fitting.variants);

		f->heading = g_strdup_printf("%s: %s", fitting.title, designs);
		form_add(f, "variant", "Design", "one of those above", fitting.variant);
	}
	record_clear(RECORD_FITTING, &fitting);
	return ok;
}

static char *
sum_of(struct app *a, const struct fitting *f, const char *variant)
{
	g_autofree char *changes = book_variant_changes(a->book, f, variant, NULL);

	if (f->variant && !strcmp(f->variant, variant))
		return g_strdup_printf("%s: %s, as it is on record.", f->title, variant);
	return g_strdup_printf("%s: %s%s%s. %s.", f->title, variant, f->variant ? " in place of " : "",
			       f->variant ? f->variant : "", changes && *changes ? changes : "The tasks stay as they are");
}

static char *
check(struct app *a, struct form *f)
{
	const char *variant = form_text(f, "variant");
	struct fitting fitting;
	GError *err = NULL;
	char *sum = NULL;

	if (book_record(a->book, RECORD_FITTING, f->subject, &fitting, &err)) {
		if (!*variant)
			err_set(&err, ERR_INPUT, "wanted: which design is it?");
		else if (book_check_variant(&fitting, variant, &err))
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
