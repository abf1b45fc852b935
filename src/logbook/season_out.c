/* A season's list for other programs. */
#include "logbook/season_list.h"

#include "base/date.h"
#include "exchange/csv_out.h"
#include "exchange/json.h"

char *
season_csv(const struct season_work *w)
{
	static const char *const header[] = { "list", "number", "section",   "task",    "title",   "fitting", "place",	"needs-off",
					      "fails", "minutes", "part", "proof", "state", "date", "who", "words" };
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	struct csv_out *csv = csvout_new(&sink, NULL);

	csvout_names(csv, header, G_N_ELEMENTS(header));
	for (guint i = 0; i < season_lines(w); i++) {
		const struct season_line *line = season_line(w, i);
		char day[DAY_TEXT];

		csvout_word(csv, word_of(&words_season_list, (gint64)w->list));
		csvout_int(csv, i + 1);
		csvout_text(csv, line->section);
		csvout_text(csv, line->due->name);
		csvout_text(csv, line->due->title);
		csvout_text(csv, line->due->path);
		csvout_word(csv, word_of(&words_workplace, line->due->in.place));
		csvout_text(csv, line->due->off);
		csvout_word(csv, word_of(&words_consequence, line->due->in.consequence));
		csvout_int(csv, line->due->minutes);
		csvout_text(csv, line->due->part);
		csvout_text(csv, line->due->proof);
		csvout_word(csv, season_state_word(line->state));
		csvout_word(csv, day_iso(line->when, day));
		csvout_text(csv, line->who);
		csvout_text(csv, line->words);
		csvout_row(csv);
	}
	csvout_close(csv, NULL);
	return g_string_free(text, FALSE);
}

static void
json_line(struct json_out *j, const struct season_line *line, guint number)
{
	char day[DAY_TEXT];

	jsonout_open_object(j, NULL);
	jsonout_int(j, "number", number);
	jsonout_text(j, "section", line->section);
	jsonout_text(j, "heading", line->heading);
	jsonout_text(j, "note", line->note);
	jsonout_text(j, "note-source", line->source);
	jsonout_text(j, "task", line->due->name);
	jsonout_text(j, "title", line->due->title);
	jsonout_text(j, "fitting", line->due->path);
	jsonout_text(j, "place", word_of(&words_workplace, line->due->in.place));
	jsonout_text(j, "needs-off", line->due->off);
	jsonout_text(j, "fails", word_of(&words_consequence, line->due->in.consequence));
	jsonout_int(j, "minutes", line->due->minutes);
	jsonout_text(j, "part", line->due->part);
	jsonout_text(j, "proof", line->due->proof);
	jsonout_text(j, "cautions", line->due->caution);
	jsonout_text(j, "state", season_state_word(line->state));
	jsonout_text(j, "date", line->when == NONE ? NULL : day_iso(line->when, day));
	jsonout_text(j, "who", line->who);
	jsonout_text(j, "words", line->words);
	jsonout_close(j);
}

char *
season_json(const struct season_work *w, const char *boat)
{
	struct json_out *j = jsonout_new();
	GString *text = g_string_new(NULL);
	struct sink sink = sink_string(text);
	char day[DAY_TEXT];

	jsonout_next(j);
	jsonout_text(j, "boat", boat);
	jsonout_text(j, "list", word_of(&words_season_list, (gint64)w->list));
	jsonout_text(j, "event", w->day == NONE ? NULL : day_iso(w->day, day));
	jsonout_text(j, "counts-after", day_iso(w->after, day));
	jsonout_int(j, "lines", season_lines(w));
	jsonout_int(j, "done", w->done);
	jsonout_int(j, "passed-over", w->passed);
	jsonout_open_array(j, "tasks");
	for (guint i = 0; i < season_lines(w); i++)
		json_line(j, season_line(w, i), i + 1);
	jsonout_close(j);
	jsonout_write(j, &sink, TRUE, NULL);
	jsonout_free(j);
	return g_string_free(text, FALSE);
}
