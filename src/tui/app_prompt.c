#include "tui/app_inside.h"

#include "base/text.h"
#include "tui/form.h"

#include <string.h>

/* What the palette offers for what was typed: a key's act, or a command of the command line. */
struct offer { const struct key_binding *key; const struct app_command *command; };
enum { OFFERS = 100, SHOWN = 8 };	/* at most; at once */

void
prompt_open(struct app *a, gboolean palette)
{
	struct list *l = app_list(a);

	if (!palette && !l)
		return app_say(a, STYLE_PLAIN, "there is nothing to search here");
	prompt_close(a);
	a->prompt = g_new0(struct edit, 1);
	edit_init(a->prompt, !palette && l->filter ? l->filter : "");
	a->palette = palette;
	a->palette_at = 0;
}

void
prompt_close(struct app *a)
{
	if (!a->prompt)
		return;
	edit_clear(a->prompt);
	g_clear_pointer(&a->prompt, g_free);
}

static gboolean
holds(const char *words, const char *name, const char *text)
{
	g_autofree char *both = g_strdup_printf("%s %s", name, text), *all = g_utf8_casefold(both, -1),
			*folded = g_utf8_casefold(words, -1);
	g_auto(GStrv) word = g_strsplit(folded, " ", -1);

	for (int i = 0; word[i]; i++)
		if (!strstr(all, word[i]))
			return FALSE;
	return TRUE;
}

/* A command line: its first word, with something behind it, is a command. */
static const struct app_command *
command_of(const struct app *a, const char *line)
{
	gsize n = strcspn(line, " ");

	for (const struct app_command *c = a->start.command; c && c->name; c++)
		if (strlen(c->name) == n && !strncmp(c->name, line, n))
			return c;
	return NULL;
}

static int
offers_of(const struct app *a, struct offer offer[OFFERS])
{
	const char *line = edit_text(a->prompt);
	const struct app_command *typed = command_of(a, line);
	int n = 0;

	if (typed && strchr(line, ' ')) {
		offer[0] = (struct offer) { NULL, typed };
		return 1;
	}
	for (const struct app_command *c = a->start.command; c && c->name && n < OFFERS; c++)
		if (holds(line, c->name, c->summary))
			offer[n++] = (struct offer) { NULL, c };
	for (int i = 0; i < key_table_length && n < OFFERS; i++) {
		const struct key_binding *b = &key_table[i];

		if (b->act > ACT_LAST && b->act != ACT_COMMAND && b->where & app_kind(a)->where && *line
		    && holds(line, b->hint ? b->hint : "", b->help))
			offer[n++] = (struct offer) { b, NULL };
	}
	return n;
}

static void
run_line(struct app *a)
{
	GError *err = NULL;
	char **words = NULL;

	if (!g_shell_parse_argv(edit_text(a->prompt), NULL, &words, &err))
		return app_complain(a, err);
	g_strfreev(a->run);
	a->run = words;
	a->wish = WISH_RUN;
	prompt_close(a);
}

static void
take_offer(struct app *a)
{
	struct offer offer[OFFERS];
	int n = offers_of(a, offer);
	const struct offer *o = a->palette_at < n ? &offer[a->palette_at] : NULL;

	if (!o)
		return app_say(a, STYLE_ERROR, "no command holds these words: Esc leaves, ? helps");
	if (o->key) {
		prompt_close(a);
		app_act(a, o->key->act);
	} else if (command_of(a, edit_text(a->prompt)) == o->command) {
		run_line(a);
	} else {
		g_autofree char *line = g_strdup_printf("%s ", o->command->name);

		edit_set(a->prompt, line);
		a->palette_at = 0;
	}
}

static void
palette_move(struct app *a, int by)
{
	struct offer offer[OFFERS];
	int n = offers_of(a, offer);

	a->palette_at = CLAMP(a->palette_at + by, 0, MAX(n - 1, 0));
}

void
prompt_key(struct app *a, const struct key_event *k)
{
	struct list *l = app_list(a);

	if (k->pasted && k->key == K_ENTER)
		return;
	switch (k->key) {
	case K_ESC:
	case K_CTRL('c'):
		if (!a->palette && l)
			list_filter(l, NULL);
		return prompt_close(a);
	case K_ENTER:
		return a->palette ? take_offer(a) : prompt_close(a);
	case K_UP:
	case K_DOWN:
		if (a->palette)
			palette_move(a, k->key == K_UP ? -1 : 1);
		else if (l)
			list_act(l, k->key == K_UP ? ACT_UP : ACT_DOWN, 1);
		return;
	case K_TAB:
		if (a->palette && !command_of(a, edit_text(a->prompt)))
			take_offer(a);
		return;
	}
	if (!edit_key(a->prompt, k))
		return;
	a->palette_at = 0;
	if (!a->palette && l)
		list_filter(l, edit_text(a->prompt));
}

static void
draw_offers(const struct app *a, const struct area *screen)
{
	struct offer offer[OFFERS];
	int n = offers_of(a, offer), shown = MIN(n, SHOWN), from = CLAMP(a->palette_at - shown / 2, 0, n - shown);
	struct area box = area_part(screen, screen->h - 3 - shown, 0, shown + 1, screen->w);

	area_repeat(&box, 0, 0, box.w, STYLE_PLAIN, glyph(box.g, GLYPH_RULE));
	for (int i = 0; i < shown; i++) {
		const struct offer *o = &offer[from + i];
		enum style style = from + i == a->palette_at ? STYLE_SELECTED : STYLE_PLAIN;
		g_autofree char *name = o->key ? g_strdup(o->key->hint ? o->key->hint : "")
					       : g_strdup_printf("%s %s", o->command->name, o->command->args);
		char buf[8];

		area_put_in(&box, i + 1, 0, box.w, style, "");
		area_put_in(&box, i + 1, 1, 6, style, o->key ? key_words(o->key->key[0], buf) : ":");
		area_put_in(&box, i + 1, 7, MIN(24, box.w / 3), style, name);
		area_put(&box, i + 1, 8 + MIN(24, box.w / 3), style, o->key ? o->key->help : o->command->summary);
	}
}

void
prompt_draw(const struct app *a, const struct area *screen)
{
	int y = screen->h - 2;

	if (a->palette)
		draw_offers(a, screen);
	if (a->message)
		return;	/* until the next key */
	area_put_in(screen, y, 0, screen->w, STYLE_PLAIN, a->palette ? ":" : "/");
	edit_draw(a->prompt, screen, y, 1, screen->w - 1, TRUE);
}
