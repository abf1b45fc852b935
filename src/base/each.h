/* A GArray of structs, one after the other. */
#ifndef BASE_EACH_H
#define BASE_EACH_H

#include <glib.h>

/* for (EACH(struct outing, o, outings)): o is each in turn, not to be changed; an array that holds nothing has none. */
#define EACH(type, item, array) \
	const type *item = (const void *)(array)->data, *item##_end = item ? item + (array)->len : NULL; item != item##_end; item++

#endif
