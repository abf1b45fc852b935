/* What work took of the stores, as --used says it. */
#include "cli/stores_text.h"

#include "base/err.h"

#include <string.h>

/* "ITEM" or "ITEM=N"; an item that has that very text among its numbers comes first. */
static gboolean
read_use(const struct cli *c, const struct stores *s, const char *text, struct store_use *use, GError **err)
{
	const char *eq = strrchr(text, '=');
	g_autofree char *name = eq ? g_strndup(text, (gsize)(eq - text)) : g_strdup(text);
	const struct item *i;

	use->quantity = STOCK_ONE;
	if (eq && !stock_parse(eq + 1, &use->quantity, err))
		return FALSE;
	i = stores_named(c, s, name, err);
	use->item = i ? i->id : NONE;
	return i && (use->quantity > 0 || err_set(err, ERR_INPUT, "%s: none of it is nothing used: leave it out", name));
}

gboolean
stores_used(const struct cli *c, struct book *b, const struct args *a, struct service_form *f, GArray *used, GError **err)
{
	struct stores *s;
	gboolean ok;

	if (!args_flag(a, "used"))
		return TRUE;
	f->used_none = !strcmp(args_value(a, "used"), "none");
	if (f->used_none)
		return !args_nth(a, "used", 1) || err_set(err, ERR_USE, "--used none, and something used: one of the two");
	s = book_stores(b, err);
	ok = s != NULL;
	for (int k = 0; ok && args_nth(a, "used", k); k++) {
		struct store_use use;

		ok = read_use(c, s, args_nth(a, "used", k), &use, err) || err_prefix(err, "--used: ");
		g_array_append_val(used, use);
	}
	stores_free(s);
	f->used = (const void *)used->data;
	f->n_used = (int)used->len;
	return ok;
}
