/* A sheet that the yard filled in: which file, and what its lines do not say themselves.  A page of what would be taken follows. */
#include "base/date.h"
#include "base/err.h"
#include "tui/form.h"
#include "tui/yard_page.h"

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	(void)a, (void)err;
	form_add(f, "file", "File", "the CSV that came back, filled in", NULL);
	form_add(f, "date", "Date", "the day of answers that say none; empty: such are refused", NULL);
	form_add(f, "also", "Also", "3=TASK: what was done on line 3 was that task, too; several with blanks between", NULL);
	form_add(f, "variant", "Design", "3=WORD: the design that line 3 put in; several with blanks between", NULL);
	return TRUE;
}

static char **
words_in(const char *text)
{
	g_auto(GStrv) part = g_strsplit(text, " ", -1);
	g_autoptr(GStrvBuilder) all = g_strv_builder_new();

	for (int i = 0; part[i]; i++)
		if (*part[i])
			g_strv_builder_add(all, part[i]);
	return g_strv_builder_end(all);
}

static char *
check(struct app *a, struct form *f)
{
	g_autofree char *path = yard_path(form_text(f, "file"));
	GError *err = NULL;
	gint64 day;

	if (!*path)
		form_refuse(f, "file", "wanted: which file did the yard fill in?");
	else if (!g_file_test(path, G_FILE_TEST_IS_REGULAR))
		form_refuse(f, "file", "no such file is there");
	if (*form_text(f, "date") && day_parse(form_text(f, "date"), app_today(a), &day, &err) && day > app_today(a))
		err_set(&err, ERR_INPUT, "that lies ahead");
	form_wrong(f, "date", &err);
	return g_strdup("Nothing is recorded yet: a page says what would be taken of each line.");
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	g_autofree char *path = yard_path(form_text(f, "file"));
	g_auto(GStrv) also = words_in(form_text(f, "also")), variant = words_in(form_text(f, "variant"));
	struct yard_read_form form = { .path = path, .date = NONE, .also = also, .variant = variant };

	return (!*form_text(f, "date") || day_parse(form_text(f, "date"), app_today(a), &form.date, err))
	    && yard_read_show(a, &form, err);
}

const struct form_kind form_yard_read = {
	.name = "yard-read", .title = "A filled sheet", .button = "Enter shows what would be taken", .begin = begin, .check = check,
	.save = save,
};
