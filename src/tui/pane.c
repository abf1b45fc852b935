#include "tui/pane.h"

struct panes
panes_of(const struct area *a, int list_w, int below)
{
	struct panes p = { area_part(a, 0, 0, a->h, a->w), area_part(a, 0, 0, 0, 0), area_part(a, 0, 0, 0, 0) };

	if (a->w >= PANE_BESIDE_W) {
		p.list.w = list_w;
		p.pane = area_part(a, 0, list_w + 2, a->h, a->w - list_w - 3);
	} else if (a->h >= PANE_BELOW_H) {
		p.list.h -= below + 1;
		p.pane = area_part(a, a->h - below, 1, below, a->w - 2);
		p.rule = area_part(a, p.list.h, 0, 1, a->w);
	}
	return p;
}

struct panes
panes_headed(const void *data, const struct area *a)
{
	(void)data;
	return (struct panes){ .list = area_part(a, 1, 0, a->h - 1, a->w) };
}

void
panes_rule(const struct panes *p)
{
	area_repeat(&p->rule, 0, 0, p->rule.w, STYLE_PLAIN, glyph(p->rule.g, GLYPH_RULE));
}

void
panes_text(const struct panes *p, const char *text)
{
	panes_text_by(p, text, "Enter");
}

void
panes_text_by(const struct panes *p, const char *text, const char *key)
{
	g_auto(GStrv) line = g_strsplit(text, "\n", -1);
	int y = 0;

	for (int i = 0; line[i] && y <= p->pane.h; i++)	/* one row more than there are: so it is known what is cut */
		if (*line[i])
			y = area_wrap(&p->pane, y, 2, STYLE_PLAIN, line[i]);
	if (y > p->pane.h) {
		g_autofree char *more = g_strdup_printf("... %s shows all of it", key);

		area_put_in(&p->pane, p->pane.h - 1, 0, p->pane.w, STYLE_KEY, more);
	}
}
