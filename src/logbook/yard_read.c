/* The filled sheet back: which line of the log a row of the file is. */
#include "logbook/yard_read.h"

#include "base/amount.h"
#include "base/date.h"
#include "base/err.h"
#include "base/text.h"
#include "exchange/csv_out.h"
#include "exchange/table.h"

#include <string.h>

/* As enum yard_cell has them; before them what must be there. */
enum { COLUMN_ID, COLUMN_NO, COLUMN_ANSWER, WANTED = 3 };
static const char *const columns[] = { "id", "line_no", "yard_result", "yard_hours", "yard_cost", "yard_notes", "yard_date",
				       "yard_initials", "yard_meter", "currency", NULL };

/* "3=NAME" of --also or --variant, and how many answered lines have that number. */
struct mapped {
	gint64 no;
	const char *option, *text;
	int lines; /* that were to be taken */
	gboolean refused; /* one was refused: what is wrong is said there */
};

struct reading {
	struct book *b;
	const struct boat *boat;
	const struct yard_read_form *form;
	struct table *table;
	GArray *mapped; /* struct mapped */
	GHashTable *refused; /* row + 1 to why, of those that the log refused while they were taken */
	struct yard_said *said;
};

static void
clear_took(gpointer p)
{
	g_free(((struct yard_took *)p)->words);
}

void
yard_said_clear(struct yard_said *s)
{
	g_clear_pointer(&s->lines, g_array_unref);
}

/* Currencies are not added to each other, nor to what is in none that was said. */
char *
yard_said_costs(const struct yard_said *s)
{
	const struct yard_took *t = (const void *)s->lines->data;
	g_autoptr(GHashTable) told = g_hash_table_new(g_str_hash, g_str_equal);
	GString *out = g_string_new(NULL);
	char money[MONEY_TEXT];

	for (guint i = 0; i < s->lines->len; i++) {
		gint64 sum = 0;

		if (t[i].cost == NONE || !g_hash_table_add(told, (gpointer)(guintptr)t[i].currency))
			continue;
		for (guint k = i; k < s->lines->len; k++)
			if (t[k].cost != NONE && !strcmp(t[k].currency, t[i].currency))
				sum += t[k].cost;
		g_string_append_printf(out, "%s%s%s%s", out->len ? ", " : "", money_exact(sum, money), *t[i].currency ? " " : "",
				       t[i].currency);
	}
	return g_string_free(out, FALSE);
}

static void
row_begin(const struct reading *g, struct yard_row *r)
{
	*r = (struct yard_row){ .b = g->b, .boat = g->boat, .date = NONE, .also = g_array_new(FALSE, FALSE, sizeof(gint64)) };
	record_init(RECORD_SHEETLINE, &r->line);
	record_init(RECORD_SHEET, &r->sheet);
	record_init(RECORD_TASK, &r->task);
	record_init(RECORD_FINDING, &r->finding);
}

static void
row_clear(struct yard_row *r)
{
	yard_answer_clear(&r->answer);
	record_clear(RECORD_SHEETLINE, &r->line);
	record_clear(RECORD_SHEET, &r->sheet);
	record_clear(RECORD_TASK, &r->task);
	record_clear(RECORD_FINDING, &r->finding);
	g_array_unref(r->also);
}

static gboolean
map_words(struct reading *g, const char *option, char **given, GError **err)
{
	for (int i = 0; given && given[i]; i++) {
		const char *is = strchr(given[i], '=');
		struct mapped m = { .no = NONE, .option = option, .text = is ? is + 1 : "" };
		gsize digits = strspn(given[i], "0123456789");

		if (!is || !digits || digits > 6 || given[i] + digits != is || !*m.text)
			return err_set(err, ERR_USE, "--%s: \"%.40s\" is not the line's number, = and a word, as 3=WORD", option,
				       given[i]);
		m.no = (gint64)g_ascii_strtoull(given[i], NULL, 10);
		g_array_append_val(g->mapped, m);
	}
	return TRUE;
}

static struct mapped *
mapped_at(const struct reading *g, guint i)
{
	return &((struct mapped *)(void *)g->mapped->data)[i];
}

/* Every one must be of one answered line: else it would be passed over in silence, or taken twice. */
static gboolean
check_mapped(const struct reading *g, GError **err)
{
	for (guint i = 0; i < g->mapped->len; i++) {
		const struct mapped *m = mapped_at(g, i);

		if (m->lines > 1 || (!m->lines && !m->refused))
			return err_set(err, ERR_NOT_FOUND, "--%s %d=%s: %s", m->option, (int)m->no, m->text,
				       m->lines ? "the file holds several lines of that number"
						: "no line of that number is answered, and new");
	}
	return TRUE;
}

static void
count_mapped(const struct reading *g, const struct yard_row *r, enum yard_state state)
{
	for (guint i = 0; i < g->mapped->len; i++) {
		struct mapped *m = mapped_at(g, i);

		if (r->line.id == NONE || m->no != r->line.no)
			continue;
		m->lines += state == YARD_TAKEN;
		m->refused |= state == YARD_REFUSED;
	}
}

/* A task is done once on a line, however it was named. */
static gboolean
add_also(const struct reading *g, struct yard_row *r, const char *text, GError **err)
{
	struct task t;
	gboolean ok = book_find_task(g->b, g->boat->id, text, &t, err) || err_prefix(err, "--also: ");

	if (ok && t.id == r->task.id)
		ok = err_set(err, ERR_CONFLICT, "--also: %s is the line's own task", t.name);
	for (guint i = 0; ok && i < r->also->len; i++)
		if (g_array_index(r->also, gint64, i) == t.id)
			ok = err_set(err, ERR_CONFLICT, "--also: %s is said twice for this line", t.name);
	g_array_append_val(r->also, t.id);
	record_clear(RECORD_TASK, &t);
	return ok;
}

/* The texts of --also and --variant for a line. */
static gboolean
take_mapped(const struct reading *g, struct yard_row *r, GError **err)
{
	for (guint i = 0; i < g->mapped->len; i++) {
		const struct mapped *m = mapped_at(g, i);

		if (m->no != r->line.no)
			continue;
		if (strcmp(m->option, "variant")) {
			if (!add_also(g, r, m->text, err))
				return FALSE;
			continue;
		}
		if (r->variant)
			return err_set(err, ERR_CONFLICT, "--variant: %.40s and %.40s are both said for this line", r->variant,
				       m->text);
		r->variant = m->text;
	}
	return TRUE;
}

/* A cell without blanks around; "" for an empty one. */
static char *
cell(const struct reading *g, guint row, int column)
{
	const char *text = table_cell(g->table, row, column);

	return g_strstrip(g_strdup(text ? guard_strip(text) : ""));
}

/* By key and number; never by what is written beside them. */
static gboolean
match(const struct reading *g, guint row, struct yard_row *r, GError **err)
{
	g_autofree char *id = cell(g, row, COLUMN_ID), *no = cell(g, row, COLUMN_NO), *shown = text_quoted(id);
	g_autofree char *number = NULL;
	gint64 key;

	if (!*id)
		return err_set(err, ERR_NOT_FOUND, "no id: only lines that were written by splitpin yard can be read back");
	if (!book_key(id, &key))
		return err_set(err, ERR_NOT_FOUND, "the id %s is no key", shown);
	if (!row_get(g->b->db, RECORD_SHEETLINE, key, &r->line, err))
		return err_prefix(err, "the id %s is of no line of a sheet: ", shown);
	number = g_strdup_printf("%d", (int)r->line.no);
	if (strcmp(no, number))
		return err_set(err, ERR_CONFLICT, "the id is of line %s, and line_no says \"%.20s\"", number, no);
	if (!row_get(g->b->db, RECORD_SHEET, r->line.sheet, &r->sheet, err))
		return FALSE;
	if (r->sheet.boat != g->boat->id)
		return err_set(err, ERR_CONFLICT, "that line is another boat's");
	if (r->line.task != NONE)
		return row_get(g->b->db, RECORD_TASK, r->line.task, &r->task, err);
	return r->line.finding == NONE || row_get(g->b->db, RECORD_FINDING, r->line.finding, &r->finding, err);
}

/* TRUE with a state that is YARD_TAKEN when it is to be taken; FALSE: refused. */
static gboolean
judge(struct reading *g, guint row, struct yard_row *r, enum yard_state *state, GError **err)
{
	const char *cells[ANSWER_CELLS];
	g_autofree char *digest = NULL;
	char d[DAY_TEXT];

	for (int i = 0; i < ANSWER_CELLS; i++)
		cells[i] = table_cell(g->table, row, COLUMN_ANSWER + i);
	if (!match(g, row, r, err))
		return FALSE;
	*state = YARD_UNANSWERED;
	if (!yard_answered(cells))
		return TRUE;
	if (!yard_answer_read(cells, g->b->who.today, &r->answer, err))
		return FALSE;
	digest = yard_answer_digest(&r->answer);
	*state = YARD_AS_BEFORE;
	if (!g_strcmp0(digest, r->line.answer))
		return TRUE;
	if (r->line.answer)
		return err_set(err, ERR_CONFLICT,
			       "answered otherwise when it was read on %s: what is on record stays, and splitpin did "
			       "--instead-of corrects it",
			       day_iso(r->line.answered, d));
	*state = YARD_TAKEN;
	r->date = r->answer.date == NONE ? g->form->date : r->answer.date;
	return take_mapped(g, r, err) && yard_may_take(r, err);
}

/* A row that holds nothing of ours, as a spreadsheet leaves below the list. */
static gboolean
is_blank(const struct reading *g, guint row)
{
	for (int i = 0; columns[i]; i++) {
		g_autofree char *text = cell(g, row, i);

		if (*text)
			return FALSE;
	}
	return TRUE;
}

/* What the log refused while it was taken; NULL: nothing of that row. */
static const char *
refused_before(const struct reading *g, guint row)
{
	return g_hash_table_lookup(g->refused, GUINT_TO_POINTER(row + 1));
}

static void
say_refused(const struct reading *g, guint row, const struct yard_row *r, struct yard_took *t, GError **why)
{
	t->state = YARD_REFUSED;
	t->cost = NONE;
	if (r->line.id != NONE)
		err_prefix(why, "line %d: ", (int)r->line.no);
	table_prefix(g->table, row, why);
	g_free(t->words);
	t->words = g_strdup((*why)->message);
}

/* FALSE when the logbook can't be read or written, and when the log refused the row half taken: then it is among g->refused, and
 * the file is to be begun again. */
static gboolean
take_row(struct reading *g, guint row, GError **err)
{
	struct yard_took t = { .state = YARD_REFUSED, .cost = NONE };
	const char *before = refused_before(g, row);
	struct yard_row r;
	GError *why = NULL;
	gboolean ok = TRUE;

	row_begin(g, &r);
	if (!judge(g, row, &r, &t.state, &why)) {
		say_refused(g, row, &r, &t, &why);
		ok = !g_error_matches(why, ERR_DOMAIN, ERR_STORE);
	} else if (t.state == YARD_TAKEN && before) {
		t.state = YARD_REFUSED;
		t.words = g_strdup(before);
	} else if (t.state == YARD_TAKEN && !yard_take(&r, &t, &why)) {
		ok = FALSE;
		say_refused(g, row, &r, &t, &why);
		if (!g_error_matches(why, ERR_DOMAIN, ERR_STORE))
			g_hash_table_insert(g->refused, GUINT_TO_POINTER(row + 1), g_strdup(t.words));
	} else if (t.state != YARD_TAKEN) {
		t.words = g_strdup_printf("line %d, %s", (int)r.line.no, r.task.id == NONE ? r.finding.words : r.task.name);
	}
	count_mapped(g, &r, t.state);
	if (!ok)
		g_propagate_error(err, g_steal_pointer(&why));
	g_clear_error(&why);
	g->said->count[t.state]++;
	g_array_append_val(g->said->lines, t);
	row_clear(&r);
	return ok;
}

static gboolean
take_rows(struct reading *g, GError **err)
{
	g_array_set_size(g->said->lines, 0);
	memset(g->said->count, 0, sizeof g->said->count);
	for (guint i = 0; i < g->mapped->len; i++) {
		mapped_at(g, i)->lines = 0;
		mapped_at(g, i)->refused = FALSE;
	}
	for (guint i = 0; i < table_rows(g->table); i++)
		if (!is_blank(g, i) && !take_row(g, i, err))
			return FALSE;
	return check_mapped(g, err);
}

/* Within a command that is under way, also when it ends with FALSE.  A row that the log refuses when some of it is written is taken
 * out of it with all before, and those are taken again without it. */
static gboolean
take_all(struct reading *g, GError **err)
{
	for (;;) {
		guint refused = g_hash_table_size(g->refused);
		GError *why = NULL;

		if (take_rows(g, &why))
			return TRUE;
		if (g_hash_table_size(g->refused) == refused) {
			g_propagate_error(err, why);
			return FALSE;
		}
		g_clear_error(&why);
		db_rollback(g->b->db);
		if (!book_begin(g->b, err))
			return FALSE;
	}
}

static gboolean
read_table(struct reading *g, GError **err)
{
	g_autofree char *name = g_path_get_basename(g->form->path);
	gboolean ok;

	if (!book_begin(g->b, err))
		return FALSE;
	ok = take_all(g, err);
	if (ok && g->form->dry_run) {
		db_rollback(g->b->db);
		return TRUE;
	}
	return book_end(g->b, ok, err, "yard sheet %s read: %d %s taken", name, g->said->count[YARD_TAKEN],
			g->said->count[YARD_TAKEN] == 1 ? "line" : "lines");
}

gboolean
book_yard_read(struct book *b, const struct boat *boat, const struct yard_read_form *form, struct yard_said *said, GError **err)
{
	struct reading g = { .b = b, .boat = boat, .form = form, .said = said };
	char d[DAY_TEXT];
	gboolean ok;

	*said = (struct yard_said){ .lines = g_array_new(FALSE, FALSE, sizeof(struct yard_took)) };
	g_array_set_clear_func(said->lines, clear_took);
	g.mapped = g_array_new(FALSE, FALSE, sizeof(struct mapped));
	g.refused = g_hash_table_new_full(g_direct_hash, g_direct_equal, NULL, g_free);
	if (form->date != NONE && form->date > b->who.today)
		ok = err_set(err, ERR_INPUT, "--date: %s lies ahead of today", day_iso(form->date, d));
	else
		ok = map_words(&g, "also", form->also, err) && map_words(&g, "variant", form->variant, err);
	g.table = ok ? table_read_foreign(form->path, columns, WANTED, err) : NULL;
	ok = g.table && read_table(&g, err);
	table_free(g.table);
	g_array_unref(g.mapped);
	g_hash_table_unref(g.refused);
	return ok;
}
