/* Findings for other programs. */
#include "logbook/finding_inside.h"

#include "base/date.h"
#include "exchange/csv_out.h"
#include "exchange/json.h"
#include "logbook/transfer.h"

enum { SEASON = 13, COLUMNS = 16 };

static const char *const names[COLUMNS] = { "finding", "date",	"level",   "proposed", "raised", "rule",   "fitting", "words",
					    "task",    "makes-due", "until", "allowed",  "who",	   "season", "mended",	"left-as" };

static void
clear_cells(char **cell)
{
	for (int i = 0; i < COLUMNS; i++)
		g_clear_pointer(&cell[i], g_free);
}

/* What is not known is NULL. */
static void
fill(struct book *b, const struct finding *f, const GArray *seasons, char *cell[COLUMNS])
{
	char date[DAY_TEXT], until[DAY_TEXT], mended[DAY_TEXT];
	const char *const text[] = {
		day_iso(f->date, date), word_of(&words_level, f->level), word_of(&words_level, f->proposed), f->raised, f->rule,
	};
	int at = 0;

	cell[at++] = book_key_text(f->id);
	for (guint i = 0; i < G_N_ELEMENTS(text); i++)
		cell[at++] = g_strdup(text[i]);
	cell[at++] = g_strdup(f->fitting == NONE ? NULL : book_name_of(b, RECORD_FITTING, f->fitting));
	cell[at++] = g_strdup(f->words);
	cell[at++] = g_strdup(f->task == NONE ? NULL : book_name_of(b, RECORD_TASK, f->task));
	cell[at++] = g_strdup(f->makes_due);
	cell[at++] = g_strdup(f->until == NONE ? NULL : day_iso(f->until, until));
	cell[at++] = g_strdup(f->allowed);
	cell[at++] = g_strdup(f->who);
	cell[at++] = g_strdup_printf("%d", finding_season(f, seasons, b->who.today));
	cell[at++] = g_strdup(f->mended == NONE ? NULL : day_iso(f->mended, mended));
	cell[at++] = g_strdup(f->left_as);
}

/* A function of one finding's cells. */
typedef void put_cells(void *user, char *const *cell);

static gboolean
each(struct book *b, const GArray *findings, put_cells *put, void *user, GError **err)
{
	const struct finding *f = (const void *)findings->data;
	g_autoptr(GArray) seasons = findings->len ? book_records(b, RECORD_SEASON, f->boat, err) : NULL;

	for (guint i = 0; seasons && i < findings->len; i++) {
		char *cell[COLUMNS];

		fill(b, &f[i], seasons, cell);
		put(user, cell);
		clear_cells(cell);
	}
	return seasons || !findings->len;
}

static void
put_csv(void *user, char *const *cell)
{
	for (int i = 0; i < COLUMNS; i++)
		csvout_text(user, cell[i] && *cell[i] ? cell[i] : NULL);
	csvout_row(user);
}

char *
findings_csv(struct book *b, const GArray *findings, GError **err)
{
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	struct csv_out *csv = csvout_new(&sink, NULL);
	gboolean ok;

	csvout_names(csv, names, COLUMNS);
	ok = each(b, findings, put_csv, csv, err);
	csvout_close(csv, NULL);
	return g_string_free(text, !ok);
}

static void
put_json(void *user, char *const *cell)
{
	jsonout_next(user);
	for (int i = 0; i < COLUMNS; i++)
		if (i == SEASON)
			jsonout_int(user, names[i], g_ascii_strtoll(cell[i], NULL, 10));
		else
			jsonout_text(user, names[i], cell[i] && *cell[i] ? cell[i] : NULL);
}

char *
findings_json(struct book *b, const GArray *findings, GError **err)
{
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	struct json_out *json = jsonout_new();
	gboolean ok = each(b, findings, put_json, json, err) && jsonout_write(json, &sink, TRUE, err);

	jsonout_free(json);
	return g_string_free(text, !ok);
}
