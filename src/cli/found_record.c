/* found FITTING "words": recording, and what it says then. */
#include "cli/found_text.h"

#include "base/date.h"
#include "base/err.h"
#include "cli/show.h"
#include "logbook/due.h"
#include "logbook/page.h"

#include <stdio.h>

/* The fittings it could be are numbered; a number, a path or words are an answer. */
static gboolean
ask_fitting(const struct cli *c, struct book *b, gint64 boat, const GPtrArray *near, struct fitting *f, GError **err)
{
	char buf[200];
	gint64 n;

	for (guint i = 0; i + 1 < near->len; i += 2)
		cli_say(c, 4, "%u  %s (%s)", i / 2 + 1, (char *)near->pdata[i], (char *)near->pdata[i + 1]);
	printf("On which? A number, or words: ");
	fflush(stdout);
	if (!fgets(buf, sizeof buf, stdin) || !*g_strstrip(buf))
		return err_set(err, ERR_INPUT, "on what? Nothing was recorded");
	n = g_ascii_strtoll(buf, NULL, 10);
	return book_find_fitting(b, boat, n >= 1 && n <= near->len / 2 ? near->pdata[2 * n - 1] : buf, f, err);
}

/* The fitting of a sentence without one. */
static gboolean
fitting_of_words(struct cli *c, struct book *b, gint64 boat, const char *words, struct fitting *f, GError **err)
{
	g_autoptr(GPtrArray) near = g_ptr_array_new_with_free_func(g_free);
	g_autoptr(GError) why = NULL;

	if (book_fitting_meant(b, boat, words, near, f, &why))
		return TRUE;
	if (c->ask && near->len)
		return ask_fitting(c, b, boat, near, f, err);
	g_propagate_error(err, g_steal_pointer(&why));
	return FALSE;
}

/* The words and the fitting: the first word is one, or all of them are a sentence about one. */
static gboolean
read_words(struct cli *c, struct book *b, const struct args *a, struct finding *f, GError **err)
{
	g_autofree char *all = args_join(a, 0);
	struct fitting on;
	gboolean ok;

	if (!*all)
		return f->words || err_set(err, ERR_USE, "what was found? splitpin found \"gimbal bearing\" \"rough, growls\"");
	g_clear_pointer(&f->words, g_free);
	if (args_word(a, 1) && book_find_fitting(b, f->boat, args_word(a, 0), &on, NULL)) {
		f->words = args_join(a, 1);
	} else if (f->task != NONE || args_flag(a, "instead-of")) {
		f->words = g_steal_pointer(&all);
		return TRUE;
	} else {
		ok = fitting_of_words(c, b, f->boat, all, &on, err);
		if (!ok)
			return FALSE;
		f->words = g_steal_pointer(&all);
	}
	f->fitting = on.id;
	record_clear(RECORD_FITTING, &on);
	return TRUE;
}

static gboolean
read_outing(struct book *b, const struct args *a, struct finding *f, GError **err)
{
	const char *text = args_value(a, "outing");
	struct outings_page last = { f->boat, NONE, 0, 0, 1 };
	g_autoptr(GArray) all = NULL;

	if (!text)
		return TRUE;
	if (g_ascii_strcasecmp(text, "last"))
		return key_parse(text, &f->outing, err) || err_prefix(err, "--outing: ");
	all = book_outings_page(b, &last, err);
	if (!all)
		return FALSE;
	if (!all->len)
		return err_set(err, ERR_NOT_FOUND, "--outing last: no outing is on record");
	f->outing = ((const struct outing *)(const void *)all->data)->id;
	return TRUE;
}

static gboolean
read_task(struct book *b, const struct args *a, struct finding *f, GError **err)
{
	struct task t;

	if (!args_value(a, "task"))
		return TRUE;
	if (!book_find_task(b, f->boat, args_value(a, "task"), &t, err))
		return err_prefix(err, "--task: ");
	f->task = t.id;
	f->fitting = t.fitting;
	record_clear(RECORD_TASK, &t);
	return TRUE;
}

/* Names of tasks, or words that only one has. */
static gboolean
read_due(struct book *b, const struct args *a, struct finding *f, GError **err)
{
	g_autoptr(GString) names = g_string_new(f->makes_due ? f->makes_due : "");
	const char *v;

	for (int k = 0; (v = args_nth(a, "due", k)); k++) {
		struct task t;

		if (!book_find_task(b, f->boat, v, &t, err))
			return err_prefix(err, "--due: ");
		g_string_append_printf(names, "%s%s", names->len ? " " : "", t.name);
		record_clear(RECORD_TASK, &t);
	}
	g_free(f->makes_due);
	f->makes_due = names->len ? g_strdup(names->str) : NULL;
	return TRUE;
}

static void
take_text(const struct args *a, const char *option, char **text)
{
	if (!args_value(a, option))
		return;
	g_free(*text);
	*text = g_strdup(args_value(a, option));
}

/* What is corrected is kept where nothing else is said. */
static gboolean
begin_with(struct book *b, const struct boat *boat, const struct args *a, struct finding *f, GError **err)
{
	const char *key = args_value(a, "instead-of");

	record_init(RECORD_FINDING, f);
	f->boat = boat->id;
	return !key || book_find_finding(b, boat->id, key, f, err);
}

static gboolean
read_form(struct cli *c, struct book *b, const struct args *a, struct finding_form *form, GError **err)
{
	struct finding *f = &form->what;

	form->measured = args_value(a, "measured");
	form->sure = args_flag(a, "yes");
	take_text(a, "allowed", &f->allowed);
	take_text(a, "remark", &f->remark);
	take_text(a, "by", &f->who);
	return read_task(b, a, f, err) && read_outing(b, a, f, err) && opt_date(c, a, "date", &f->date, err)
	    && opt_date(c, a, "until", &f->until, err) && opt_word(a, "level", &words_level, &f->level, err)
	    && read_due(b, a, f, err) && read_words(c, b, a, f, err);
}

/* The tasks that are due because of it, as the due list has them. */
static gboolean
say_due(const struct cli *c, struct book *b, const struct boat *boat, const struct finding *f, GError **err)
{
	struct due_list *l = due_list_new();
	struct due_ask ask = { book_today(b), NONE };
	gboolean ok = book_due(b, boat, &ask, l, err);

	for (int i = 0; ok && i < due_count(l); i++)
		for (int k = 0; k < due_at(l, i)->n_found; k++)
			if (due_at(l, i)->found[k].id == f->id)
				cli_say(c, 4, "  due at once: %s, %s", due_at(l, i)->name, due_at(l, i)->title);
	due_list_free(l);
	return ok;
}

static void
say_next(const struct cli *c, const struct finding *f)
{
	g_autofree char *key = book_key_text(f->id);

	if (f->mended != NONE)
		return;
	if (f->level == LEVEL_HOLD)
		cli_say(c, 4, "  next: it holds the launch until it is mended; what it makes due comes first");
	else if (f->level == LEVEL_WATCH)
		cli_say(c, 4, "  next: look at it, or measure it, again, and record that; worse than now it is to be mended");
	else
		cli_say(c, 4, "  next: mend it this season");
	cli_say(c, 4, "  when it is put right: splitpin found --mend %s \"as left\"", key);
}

static gboolean
said(const struct cli *c, struct book *b, const struct boat *boat, const struct finding *f, const struct finding_proposal *p,
     GError **err)
{
	struct fitting on;
	char day[16];
	gboolean ok;

	record_init(RECORD_FITTING, &on);
	ok = book_record(b, RECORD_FITTING, f->fitting, &on, err);
	if (ok)
		cli_say(c, 2, "%s, %s: %s", on.title, day_words(f->date, day), f->words);
	record_clear(RECORD_FITTING, &on);
	cli_say(c, 4, "  level: %s; %s", word_of(&words_level, f->level), p->why);
	if (p->raised)
		cli_say(c, 4, "  raised: %s", p->raised);
	if (f->level != p->level)
		cli_say(c, 4, "  proposed was %s; your level is taken, and the record keeps both", word_of(&words_level, p->level));
	if (f->allowed)
		cli_say(c, 4, "  until it is mended: %s", f->allowed);
	ok = ok && say_due(c, b, boat, f, err);
	if (ok)
		say_next(c, f);
	return ok;
}

gboolean
found_record(struct cli *c, struct book *b, const struct boat *boat, const struct args *a, GError **err)
{
	g_autoptr(GPtrArray) photos = g_ptr_array_new();
	struct finding_form form = { .measured = NULL };
	struct finding_proposal p = { .level = LEVEL_MEND };
	const char *v;
	gboolean ok;

	for (int k = 0; (v = args_nth(a, "photo", k)); k++)
		g_ptr_array_add(photos, (gpointer)(guintptr)v);
	g_ptr_array_add(photos, NULL);
	form.photos = (const char *const *)photos->pdata;
	ok = begin_with(b, boat, a, &form.what, err) && read_form(c, b, a, &form, err) && book_finding(b, &form, &p, err)
	  && said(c, b, boat, &form.what, &p, err);
	finding_proposal_clear(&p);
	record_clear(RECORD_FINDING, &form.what);
	return ok;
}
