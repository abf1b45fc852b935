#include "logbook/photo.h"

#include "base/err.h"
#include "base/text.h"
#include "logbook/inside.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

static gboolean
refused(const char *path, GError **err)
{
	int why = errno;
	g_autofree char *shown = text_quoted(path);

	return err_set(err, ERR_SYSTEM, "the photo %s can't be read: %s", shown, g_strerror(why));
}

char *
photo_digest(const char *path, GError **err)
{
	g_autoptr(GChecksum) sum = g_checksum_new(G_CHECKSUM_SHA256);
	FILE *f = fopen(path, "rb");
	guchar buf[65536];
	gboolean ok;
	size_t n;

	if (!f) {
		refused(path, err);
		return NULL;
	}
	while ((n = fread(buf, 1, sizeof buf, f)) > 0)
		g_checksum_update(sum, buf, (gssize)n);
	ok = !ferror(f) || refused(path, err);
	fclose(f);
	return ok ? g_strdup(g_checksum_get_string(sum)) : NULL;
}

enum photo_state
photo_state(const struct photo *p)
{
	g_autofree char *now = photo_digest(p->path, NULL);

	return !now ? PHOTO_GONE : strcmp(now, p->digest) ? PHOTO_CHANGED : PHOTO_AS_IT_WAS;
}

const char *
photo_state_words(enum photo_state state)
{
	switch (state) {
	case PHOTO_CHANGED:
		return "the file has changed since it was put on record";
	case PHOTO_GONE:
		return "the file is not there any more, or can't be read";
	case PHOTO_AS_IT_WAS:
		break;
	}
	return "";
}

static void
clear_photo(gpointer p)
{
	record_clear(RECORD_PHOTO, p);
}

GArray *
photos_read(struct book *b, gint64 boat, const char *const *paths, GError **err)
{
	GArray *all = g_array_new(FALSE, FALSE, sizeof(struct photo));

	g_array_set_clear_func(all, clear_photo);
	for (int i = 0; paths && paths[i]; i++) {
		struct photo p;

		record_init(RECORD_PHOTO, &p);
		p.boat = boat;
		p.path = g_canonicalize_filename(paths[i], NULL);
		p.digest = photo_digest(p.path, err);
		p.date = b->who.today;
		g_array_append_val(all, p);
		if (p.digest)
			continue;
		g_array_unref(all);
		return NULL;
	}
	return all;
}

GArray *
book_photos(struct book *b, gint64 finding, GError **err)
{
	return book_gather(b, RECORD_PHOTO, SQL_PHOTOS_OF_FINDING, finding, err);
}
