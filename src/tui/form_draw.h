/* How a form looks: what it is about, as many fields as there is room for around the one that is typed in, what is wrong or
 * what will be recorded, and the button. */
#ifndef TUI_FORM_DRAW_H
#define TUI_FORM_DRAW_H

#include "tui/grid.h"

struct form;

/* data: a struct form. */
void form_draw(const void *data, const struct area *screen);
/* Which field is at row y of a screen of that size: f->n is the button, -1 neither. */
int form_at_row(const struct form *f, int h, int w, int y);

#endif
