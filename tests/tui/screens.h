/* Screens without a terminal: an app over a logbook of its own, keys into it, and its frames against text files. */
#ifndef TESTS_TUI_SCREENS_H
#define TESTS_TUI_SCREENS_H

#include "../logbook/open.h"
#include "logbook/page.h"
#include "tui/app.h"
#include "tui/edit.h"
#include "tui/form.h"
#include "tui/list.h"

static struct app *app;
static struct grid *grid;
static struct app_start start;

static inline void
app_begin(void)
{
	g_autoptr(GError) err = NULL;

	start = (struct app_start) { .program = "splitpin", .file = path, .data = data_folder(), .state = folder, .who = who };
	grid = grid_new(24, 80, FALSE);
	app = app_new(&start, 24, 80, FALSE, &err);
	ck_assert_msg(app != NULL, "%s", err ? err->message : "?");
	app_draw(app, grid);
}

/* Over the demo logbook, as of 25 November 2026. */
static inline void
demo_begin(void)
{
	setup();
	open_demo();
	book_close(book);
	book = NULL;
	app_begin();
}

/* Over no logbook at all. */
static inline void
empty_begin(void)
{
	setup();
	app_begin();
}

/* Drafts lie in the folder too. */
static inline void
app_end(void)
{
	GDir *dir;
	const char *name;

	app_free(app);
	grid_free(grid);
	dir = g_dir_open(folder, 0, NULL);
	while (dir && (name = g_dir_read_name(dir))) {
		g_autofree char *file = g_build_filename(folder, name, NULL);

		g_remove(file);
	}
	g_dir_close(dir);
	teardown();
}

static inline void
key(gunichar k)
{
	app_key(app, &(struct key_event) { .key = k });
	app_draw(app, grid);
}

static inline void
type(const char *text)
{
	for (; *text; text = g_utf8_next_char(text))
		key(g_utf8_get_char(text));
}

static inline gboolean
on_screen(const char *words)
{
	g_autofree char *text = grid_text(grid);

	return strstr(text, words) != NULL;
}

#define ck_shows(words) \
	do { \
		g_autofree char *frame_ = grid_text(grid); \
		ck_assert_msg(on_screen(words), "no \"%s\" on:\n%s", words, frame_); \
	} while (0)
#define ck_hides(words) \
	do { \
		g_autofree char *frame_ = grid_text(grid); \
		ck_assert_msg(!on_screen(words), "\"%s\" on:\n%s", words, frame_); \
	} while (0)

/* Select the line that holds the words. */
static inline void
find(const char *words)
{
	key('/');
	key(K_CTRL('u'));
	type(words);
	key(K_ENTER);
}

/* The sizes that every view is looked at in. */
static const struct golden { int h, w; gboolean ascii; const char *name; } goldens[] = {
	{ 15, 40, FALSE, "40x15" },	{ 24, 80, FALSE, "80x24" },	  { 50, 200, FALSE, "200x50" },
	{ 15, 40, TRUE, "40x15-ascii" }, { 24, 80, TRUE, "80x24-ascii" }, { 50, 200, TRUE, "200x50-ascii" },
};
enum { GOLDENS = G_N_ELEMENTS(goldens) };

/* The frame as it stands, at that size, is the one in tests/data/screens/; SCREENS_WRITE=folder writes it there instead. */
static inline void
same_screen(const char *name, const struct golden *g)
{
	const char *top = g_getenv("top_srcdir"), *write = g_getenv("SCREENS_WRITE");
	g_autofree char *file = g_strdup_printf("%s-%s.txt", name, g->name), *frame = NULL, *want = NULL;
	g_autofree char *golden = g_build_filename(write ? write : top ? top : ".", write ? "" : "tests/data/screens", file, NULL);

	grid->ascii = g->ascii;
	grid_size(grid, g->h, g->w);
	app_draw(app, grid);
	frame = grid_text(grid);
	for (const char *p = frame; g->ascii && *p; p++)
		ck_assert_msg(*p == '\n' || (*p >= ' ' && *p <= '~'), "%s: a byte %02x", file, (unsigned char)*p);
	if (write) {
		ck_assert(g_file_set_contents(golden, frame, -1, NULL));
		return;
	}
	ck_assert_msg(g_file_get_contents(golden, &want, NULL, NULL), "%s is not there; the frame is:\n%s", golden, frame);
	ck_assert_msg(!strcmp(frame, want), "%s shows\n%s\nand not\n%s", file, frame, want);
	ck_assert_msg(grid->cursor_y >= 0, "%s: the cursor is on nothing", file);
}

#endif
