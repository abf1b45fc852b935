/* Inside the app: what app.c, app_draw.c and app_prompt.c share. */
#ifndef TUI_APP_INSIDE_H
#define TUI_APP_INSIDE_H

#include "tui/app.h"
#include "tui/edit.h"
#include "tui/list.h"

void app_act(struct app *a, enum act act);	/* as if its key had been typed */
const struct view_kind *app_kind(const struct app *a);	/* of the top view */
struct list *app_list(struct app *a);	/* NULL */

/* The line for a filter or a command. */
void prompt_open(struct app *a, gboolean palette);
void prompt_close(struct app *a);
void prompt_key(struct app *a, const struct key_event *k);
void prompt_draw(const struct app *a, const struct area *screen);

#endif
