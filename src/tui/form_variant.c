/* Which design of a fitting the boat has: it decides which tasks there are. */
#include "base/err.h"
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
		f->heading = g_strdup_printf("%s: %s", fitting.title, fitting.variants);
		form_add(f, "variant", "Design", "one of those above", fitting.variant);
	}
	record_clear(RECORD_FITTING, &fitting);
	return ok;
}

static char *
check(struct app *a, struct form *f)
{
	const char *variant = form_text(f, "variant"), *colon = strstr(f->heading, ": ");
	g_auto(GStrv) known = g_strsplit(colon + 2, " ", -1);
	GError *err = NULL;

	(void)a;
	if (!g_strv_contains((const char *const *)known, variant))
		err_set(&err, ERR_INPUT, "one of: %s", colon + 2);
	form_wrong(f, "variant", &err);
	return g_strdup_printf("%s. The tasks follow from it.", f->heading);
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
