/* The whole boat's story, written to a file. */
#include "base/date.h"
#include "base/err.h"
#include "logbook/dossier.h"
#include "tui/app.h"
#include "tui/form.h"

#include <string.h>

static const char *const told[] = { "told", "left out" };
static const struct words words_told = { "choice", told, G_N_ELEMENTS(told) };
static const char *const papers[] = { "A4", "Letter" };
static const struct words words_paper = { "paper", papers, G_N_ELEMENTS(papers) };

static gboolean
begin(struct app *a, struct form *f, GError **err)
{
	char day[DAY_TEXT];
	g_autofree char *file = g_strdup_printf("dossier-%s.pdf", day_iso(app_today(a), day));

	if (a->boat.id == NONE)
		return err_set(err, ERR_NOT_FOUND, "there is no boat to tell of");
	f->heading = g_strdup("All that is on record of the boat, for a buyer, an insurer or yourself. The logbook is verified "
			      "first.");
	form_add(f, "file", "File", "a new file: one that ends in .pdf is a PDF, any other is text", file);
	form_add_choice(f, "paper", "Paper", &words_paper, PAPER_A4, FALSE);
	form_add(f, "since", "From", "leave out what was before that day; empty: nothing", NULL);
	form_add_choice(f, "names", "Names", &words_told, 0, FALSE);
	form_add_choice(f, "costs", "Costs", &words_told, 0, FALSE);
	form_add_choice(f, "remarks", "Remarks", &words_told, 0, FALSE);
	return TRUE;
}

static gboolean
is_pdf(const char *file)
{
	g_autofree char *small = g_ascii_strdown(file, -1);

	return g_str_has_suffix(small, ".pdf");
}

static void
read_form(struct app *a, struct form *f, struct dossier_form *d)
{
	const char *file = form_text(f, "file"), *since = form_text(f, "since");
	GError *err = NULL;

	*d = (struct dossier_form){ NONE, form_word(f, "names") == 1, form_word(f, "costs") == 1, form_word(f, "remarks") == 1 };
	if (!*file || !strcmp(file, "-"))
		err_set(&err, ERR_INPUT, "a file is wanted");
	else if (g_file_test(file, G_FILE_TEST_EXISTS))
		err_set(&err, ERR_INPUT, "it is there already, and is not written over");
	form_wrong(f, "file", &err);
	if (*since)
		day_parse(since, app_today(a), &d->since, &err);
	form_wrong(f, "since", &err);
}

static char *
check(struct app *a, struct form *f)
{
	struct dossier_form d;
	g_autofree char *path = g_canonicalize_filename(form_text(f, "file"), NULL);

	read_form(a, f, &d);
	return g_strdup_printf("%s into %s.", is_pdf(path) ? "A PDF" : "Text", path);
}

static gboolean
save(struct app *a, struct form *f, GError **err)
{
	const char *file = form_text(f, "file");
	struct dossier_out out = { .paper = (enum paper_size)form_word(f, "paper"), .modules = a->start.modules };
	struct dossier_form d;
	gboolean sound = FALSE;

	read_form(a, f, &d);
	*(is_pdf(file) ? &out.pdf : &out.text) = file;
	if (!book_dossier(a->book, &a->boat, &d, &out, &sound, err))
		return FALSE;
	if (sound)
		app_say(a, STYLE_STRONG, "the dossier is written to %s", file);
	else
		app_say(a, STYLE_ERROR, "written to %s, but this logbook does not verify: page one says so", file);
	return TRUE;
}

const struct form_kind form_dossier = {
	.name = "dossier", .title = "The boat's dossier", .button = "Enter writes it", .begin = begin, .check = check, .save = save,
};
