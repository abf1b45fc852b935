/* What must come off or be open first, and what else can be done while it is. */
#include "logbook/due_list.h"

#include "base/text.h"
#include "logbook/inside.h"
#include "logbook/variant.h"

#include <string.h>

enum { DEEPEST = 12, CHEAP_MINUTES = 20 };
#define WORTH_SHARE .5 /* of an interval used up: before that it is done anew too early */

static struct access *
access_at(const struct due_list *l, int i)
{
	return &((struct access *)(void *)l->access->data)[i];
}

/* The access that a path is, asked of the file once for each path of a boat; -1: there is none. */
static int
access_of(struct book *b, struct due_list *l, gint64 boat, const char *path, int depth, GError **err)
{
	struct access new = { .path = path, .minutes = NONE, .outer = -1 };
	const char *title = NULL, *needs = NULL;
	struct cells *c;

	if (!path || depth == DEEPEST)
		return -1;
	for (guint i = 0; i < l->access->len; i++)
		if (!strcmp(access_at(l, (int)i)->path, path))
			return (int)i;
	c = cells_open(b->db, SQL_DUE_OFF);
	cells_bind(c, 1, boat);
	cells_bind_text(c, 2, path);
	if (cells_next(c)) {
		title = due_keep(l, c, 0);
		needs = variant_first_off(cells_text(c, 1), cells_text(c, 3));
		new.minutes = cells_int(c, 2);
	}
	if (!cells_close(c, err) || !title)
		return -1;
	new.outer = access_of(b, l, boat, needs, depth + 1, err);
	new.words = title;
	if (new.outer >= 0) {
		g_autofree char *both = g_strconcat(access_at(l, new.outer)->words, ", ", title, NULL);

		new.words = g_string_chunk_insert(l->chunk, both);
	}
	g_array_append_val(l->access, new);
	return (int)l->access->len - 1;
}

gboolean
due_read_access(struct book *b, struct due_list *l, gint64 boat, GError **err)
{
	struct due_line *line = (void *)l->lines->data;
	GError *failed = NULL;

	for (guint i = 0; i < l->lines->len && !failed; i++) {
		line[i].access = access_of(b, l, boat, line[i].off, 0, &failed);
		line[i].off = line[i].access < 0 ? NULL : access_at(l, line[i].access)->words;
	}
	if (failed)
		g_propagate_error(err, failed);
	return !failed;
}

gint64
due_access_minutes(const struct due_list *l, int from, int to)
{
	g_autofree gboolean *open = g_new0(gboolean, l->access->len + 1);
	gint64 minutes = 0;

	for (int i = from; i < to; i++)
		for (int a = due_at(l, i)->access; a >= 0 && !open[a]; a = access_at(l, a)->outer) {
			open[a] = TRUE;
			minutes += access_at(l, a)->minutes == NONE ? 0 : access_at(l, a)->minutes;
		}
	return minutes;
}

/* Work that waits for a later opportunity, not for a cause. */
static gboolean
waits(const struct due_line *d, enum opportunity now)
{
	switch (d->out.when) {
	case OPP_NOW:
	case OPP_BEFORE_LAUNCH:
	case OPP_FIRST_DAY:
	case OPP_MID_SEASON:
	case OPP_THIS_SEASON:
	case OPP_LAY_UP:
	case OPP_NEXT_SPRING:
	case OPP_LATER:
		return d->out.when > now;
	case OPP_NO_RECORD:
		return TRUE;
	case OPP_EACH_OUTING:
	case OPP_ON_CONDITION:
	case OPPORTUNITY_COUNT:
		break;
	}
	return FALSE;
}

char *
due_while_open(const struct due_list *l, int access, enum opportunity now)
{
	GString *out = g_string_new(NULL);

	for (int i = 0; access >= 0 && i < due_count(l); i++) {
		const struct due_line *d = due_at(l, i);

		if (d->access != access || d->minutes == NONE || d->minutes > CHEAP_MINUTES)
			continue;
		if (d->out.share < WORTH_SHARE || !waits(d, now))
			continue;
		g_string_append_printf(out, "%s%s (%d min)", out->len ? "; " : "", d->label, (int)d->minutes);
	}
	return g_string_free(out, FALSE);
}
