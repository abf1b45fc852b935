/* What an import asks of rows that say who answers for what. */
#include "logbook/import.h"

#include "base/date.h"
#include "base/err.h"
#include "logbook/waiver.h"

#include <string.h>

gboolean
import_not_ahead(const struct importing *in, gint64 date, GError **err)
{
	char d[DAY_TEXT], t[DAY_TEXT];

	return date == NONE || date <= in->b->who.today
	    || err_set(err, ERR_INPUT, "%s lies ahead of today, %s", day_iso(date, d), day_iso(in->b->who.today, t));
}

static gboolean
not_blank(const char *field, const char *text, GError **err)
{
	return (text && text[strspn(text, " \t\n")]) || err_set(err, ERR_INPUT, "%s: it can't be empty", field);
}

gboolean
import_waiver_check(const struct importing *in, const struct waiver *w, GError **err)
{
	return import_not_ahead(in, w->date, err) && waiver_check(w, err)
	    && (w->ended == NONE || w->ended >= w->date || err_set(err, ERR_INPUT, "it was taken back before it began"));
}

gboolean
import_skip_check(const struct importing *in, const struct skip *s, GError **err)
{
	return import_not_ahead(in, s->date, err) && not_blank("reason", s->reason, err);
}

gboolean
import_heeded_check(const struct importing *in, const struct heeded *h, GError **err)
{
	return import_not_ahead(in, h->date, err) && not_blank("work", h->work, err) && not_blank("cautions", h->cautions, err)
	    && not_blank("who", h->who, err);
}
