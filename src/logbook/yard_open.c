/* Which sheets are out, and what came back of them. */
#include "logbook/yard_read.h"

#include "base/amount.h"
#include "base/date.h"
#include "logbook/service.h"
#include "logbook/transfer.h"

#include <string.h>

/* Of logs written before the mark had the sheet's key; two sheets of one day have the same. */
static char *
old_mark(const struct sheet *sheet, const struct sheetline *line)
{
	char day[DAY_TEXT];

	return g_strdup_printf("yard sheet of %s, line %d: ", day_iso(sheet->date, day), (int)line->no);
}

char *
yard_mark(const struct sheet *sheet, const struct sheetline *line)
{
	g_autofree char *key = book_key_text(sheet->id);
	char day[DAY_TEXT];

	return g_strdup_printf("yard sheet of %s, line %d (%s): ", day_iso(sheet->date, day), (int)line->no, key);
}

GArray *
book_yard_sheets(struct book *b, gint64 boat, GError **err)
{
	g_autoptr(GArray) sheets = book_records(b, RECORD_SHEET, boat, err);
	g_autoptr(GArray) lines = sheets ? book_records(b, RECORD_SHEETLINE, boat, err) : NULL;
	GArray *all = lines ? g_array_new(FALSE, TRUE, sizeof(struct yard_sheet)) : NULL;

	for (guint i = lines ? sheets->len : 0; i-- > 0;) {
		const struct sheet *sheet = &((const struct sheet *)(const void *)sheets->data)[i];
		struct yard_sheet one = { .id = sheet->id, .date = sheet->date };

		for (guint k = 0; k < lines->len; k++) {
			const struct sheetline *line = &((const struct sheetline *)(const void *)lines->data)[k];

			one.lines += line->sheet == sheet->id;
			one.owners += line->sheet == sheet->id && line->whose == LINE_OWNER;
			one.answered += line->sheet == sheet->id && line->answer;
		}
		g_array_append_val(all, one);
	}
	return all;
}

/* What is looked through for what became of the lines of a boat's sheets. */
struct came {
	struct book *b;
	GArray *sheets, *lines, *findings, *skips;
};

static gboolean
came_read(struct came *c, struct book *b, gint64 boat, GError **err)
{
	*c = (struct came){ .b = b };
	return (c->sheets = book_records(b, RECORD_SHEET, boat, err)) && (c->lines = book_records(b, RECORD_SHEETLINE, boat, err))
	    && (c->findings = book_records(b, RECORD_FINDING, boat, err)) && (c->skips = book_records(b, RECORD_SKIP, boat, err));
}

static void
came_clear(struct came *c)
{
	g_clear_pointer(&c->sheets, g_array_unref);
	g_clear_pointer(&c->lines, g_array_unref);
	g_clear_pointer(&c->findings, g_array_unref);
	g_clear_pointer(&c->skips, g_array_unref);
}

/* How a line's answer is marked in remarks: now, and in old logs. */
struct marks {
	char *mark, *old;
};

static const struct finding *
finding_at(const struct came *c, guint i)
{
	return &((const struct finding *)(const void *)c->findings->data)[i];
}

/* What stands behind a mark in a remark, up to the mark of another; NULL: it is not there.  The caller's. */
static char *
behind_one(const char *remark, const char *mark)
{
	const char *from = remark ? strstr(remark, mark) : NULL, *to;

	if (!from)
		return NULL;
	from += strlen(mark);
	to = strstr(from, "; yard sheet of ");
	return to ? g_strndup(from, (gsize)(to - from)) : g_strdup(from);
}

static char *
behind(const char *remark, const struct marks *m)
{
	char *answer = behind_one(remark, m->mark);

	return answer ? answer : behind_one(remark, m->old);
}

static char *
mended_words(const struct finding *f)
{
	char day[16];

	return f->mended == NONE ? g_strdup("open")
				 : g_strdup_printf("mended on %s, left as %s", day_words(f->mended, day), f->left_as);
}

/* "renewed on 20 Nov 2026 by JW, all folds sound, 85.00 EUR"; and what was found at it. */
static gboolean
say_service(const struct came *c, const struct marks *m, const struct task *task, struct yard_shown *s, GError **err)
{
	struct service done;
	GString *out = g_string_new(NULL);
	char day[16], money[MONEY_TEXT];
	gboolean ok;

	record_init(RECORD_SERVICE, &done);
	ok = row_get(c->b->db, RECORD_SERVICE, s->line.service, &done, err);
	if (ok) {
		s->answer = behind(done.remark, m);
		s->settled = service_restarts(task->rule, task->consequence, done.outcome);
		g_string_append_printf(out, "%s on %s%s%s%s%s", word_of(&words_outcome, done.outcome), day_words(done.date, day),
				       done.who ? " by " : "", done.who ? done.who : "", done.seen ? ", " : "",
				       done.seen ? done.seen : "");
		if (done.cost != NONE)
			g_string_append_printf(out, ", %s%s%s", money_exact(done.cost, money), done.currency ? " " : "",
					       done.currency ? done.currency : "");
	}
	record_clear(RECORD_SERVICE, &done);
	for (guint i = 0; i < c->findings->len; i++) {
		const struct finding *f = finding_at(c, i);

		if (s->line.task != NONE && f->task == s->line.task && f->remark
		    && (g_str_has_prefix(f->remark, m->mark) || g_str_has_prefix(f->remark, m->old))) {
			g_autofree char *how = mended_words(f);

			g_string_append_printf(out, "; found: %s (%s), %s", f->words, word_of(&words_level, f->level), how);
		}
	}
	s->became = g_string_free(out, FALSE);
	return ok;
}

/* An old mark can be another sheet's: it counts only where none with the key is found. */
static void
say_skip(const struct came *c, const struct marks *m, struct yard_shown *s)
{
	const char *const of[] = { m->mark, m->old };

	for (guint k = 0; k < G_N_ELEMENTS(of); k++)
		for (guint i = 0; i < c->skips->len && !s->answer; i++) {
			const struct skip *skip = &((const struct skip *)(const void *)c->skips->data)[i];

			if (skip->task == s->line.task)
				s->answer = behind_one(skip->reason, of[k]);
		}
	s->became = g_strdup("passed over, and still due");
}

/* What the line is, and what was made of its answer. */
static gboolean
say_line(const struct came *c, const struct sheet *sheet, struct yard_shown *s, GError **err)
{
	g_autofree char *mark = yard_mark(sheet, &s->line), *old = old_mark(sheet, &s->line);
	const struct marks m = { mark, old };
	struct task task;
	gboolean ok;

	for (guint i = 0; i < c->findings->len; i++) {
		const struct finding *f = finding_at(c, i);

		if (f->id != s->line.finding)
			continue;
		s->title = g_strdup(f->words);
		s->answer = s->line.answer ? behind(f->remark, &m) : NULL;
		s->became = s->line.answer ? mended_words(f) : NULL;
		s->settled = f->mended != NONE;
		return TRUE;
	}
	record_init(RECORD_TASK, &task);
	ok = row_get(c->b->db, RECORD_TASK, s->line.task, &task, err);
	s->title = g_steal_pointer(&task.title);
	s->name = g_steal_pointer(&task.name);
	if (ok && s->line.service != NONE)
		ok = say_service(c, &m, &task, s, err);
	else if (ok && s->line.answer)
		say_skip(c, &m, s);
	record_clear(RECORD_TASK, &task);
	return ok;
}

static void
clear_shown(gpointer p)
{
	struct yard_shown *s = p;

	record_clear(RECORD_SHEETLINE, &s->line);
	g_free(s->name);
	g_free(s->title);
	g_free(s->answer);
	g_free(s->became);
}

/* Those of a sheet; its lines' texts go over to what is added. */
static gboolean
add_lines(const struct came *c, const struct sheet *sheet, GArray *all, GError **err)
{
	gboolean ok = TRUE;

	for (guint i = 0; ok && i < c->lines->len; i++) {
		struct sheetline *line = &((struct sheetline *)(void *)c->lines->data)[i];
		struct yard_shown s = { .line = *line };

		if (line->sheet != sheet->id)
			continue;
		record_init(RECORD_SHEETLINE, line); /* its texts are s.line's now */
		ok = say_line(c, sheet, &s, err);
		g_array_append_val(all, s);
	}
	return ok;
}

/* Of one sheet, or with NONE of all. */
static GArray *
lines_of(struct book *b, gint64 boat, gint64 sheet, GError **err)
{
	GArray *all = g_array_new(FALSE, FALSE, sizeof(struct yard_shown));
	struct came c;
	gboolean ok = came_read(&c, b, boat, err);

	g_array_set_clear_func(all, clear_shown);
	for (guint i = 0; ok && i < c.sheets->len; i++) {
		const struct sheet *one = &((const struct sheet *)(const void *)c.sheets->data)[i];

		ok = (sheet != NONE && one->id != sheet) || add_lines(&c, one, all, err);
	}
	came_clear(&c);
	if (!ok)
		g_clear_pointer(&all, g_array_unref);
	return all;
}

GArray *
book_yard_lines(struct book *b, gint64 sheet, GError **err)
{
	struct sheet s;
	GArray *all;

	record_init(RECORD_SHEET, &s);
	all = row_get(b->db, RECORD_SHEET, sheet, &s, err) ? lines_of(b, s.boat, sheet, err) : NULL;
	record_clear(RECORD_SHEET, &s);
	return all;
}

GArray *
book_yard_all_lines(struct book *b, gint64 boat, GError **err)
{
	return lines_of(b, boat, NONE, err);
}

char *
yard_sheet_words(const struct yard_sheet *s)
{
	char day[16];

	return g_strdup_printf("%s: %d %s, %d answered", day_words(s->date, day), s->lines, s->lines == 1 ? "line" : "lines",
			       s->answered);
}

/* "  line 4, steering.cable-grease". */
static void
add_open(GString *out, const GArray *lines, gint64 sheet)
{
	for (guint i = 0; i < lines->len; i++) {
		const struct yard_shown *s = &((const struct yard_shown *)(const void *)lines->data)[i];

		if (s->line.sheet == sheet && !s->line.answer)
			g_string_append_printf(out, "  line %d, %s%s\n", (int)s->line.no, s->name ? s->name : s->title,
					       s->line.whose == LINE_OWNER ? ", the owner's" : "");
	}
}

char *
book_yard_open(struct book *b, gint64 boat, GError **err)
{
	g_autoptr(GArray) sheets = book_yard_sheets(b, boat, err);
	g_autoptr(GArray) lines = sheets ? book_yard_all_lines(b, boat, err) : NULL;
	GString *out = lines ? g_string_new(NULL) : NULL;

	for (guint i = 0; out && i < sheets->len; i++) {
		const struct yard_sheet *s = &((const struct yard_sheet *)(const void *)sheets->data)[i];
		g_autofree char *words = yard_sheet_words(s);

		g_string_append_printf(out, "%s\n", words);
		add_open(out, lines, s->id);
	}
	return out ? g_string_free(out, FALSE) : NULL;
}
