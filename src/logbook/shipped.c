#include "logbook/shipped.h"

#include "base/err.h"
#include "logbook/inside.h"

struct table *
shipped_table(const char *folder, const char *file, const char *const *columns, GError **err)
{
	g_autofree char *path = folder ? g_build_filename(folder, file, NULL) : NULL;

	if (path)
		return table_read(path, columns, err);
	err_set(err, ERR_SYSTEM, "%s is wanted, and no folder of what is shipped is known: SPLITPIN_DATA names it", file);
	return NULL;
}

gboolean
shipped_row_is_whole(const struct table *t, guint row, const char *const *columns, const int *wanted, GError **err)
{
	for (; *wanted >= 0; wanted++)
		if (!table_cell(t, row, *wanted)) {
			err_set(err, ERR_INPUT, "%s: it can't be empty", columns[*wanted]);
			return table_prefix(t, row, err);
		}
	return TRUE;
}

char *
book_catalogue(const struct book *b)
{
	return b->who.data ? g_build_filename(b->who.data, "catalogue", NULL) : NULL;
}
