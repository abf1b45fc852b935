/* The one mark for "nothing recorded", which is neither zero nor never. */
#ifndef BASE_VALUE_H
#define BASE_VALUE_H

#include <glib.h>

/* An integer that was not recorded: an unknown day, duration, amount or key. */
#define NONE G_MININT64

#endif
