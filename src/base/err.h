/* How every function below the front ends says that it failed: a GError with one of these codes. */
#ifndef BASE_ERR_H
#define BASE_ERR_H

#include <glib.h>

enum err_code {
	ERR_USE,	/* something that the command wants is missing, or too much */
	ERR_INPUT,	/* what was typed or read is wrong */
	ERR_NOT_FOUND,	/* it names nothing in this logbook */
	ERR_CONFLICT,	/* it contradicts what the logbook holds */
	ERR_DOUBT,	/* possible but implausible: wants a yes; whole sentences, to be followed by how to say it */
	ERR_STORE,	/* the logbook can't be opened, read or written */
	ERR_SYSTEM,	/* another file, or the machine */
};

#define ERR_DOMAIN (err_domain())
GQuark err_domain(void);

/* Fill *err (which may be NULL) and return FALSE, so that a caller writes `return err_set(...)`. */
gboolean err_set(GError **err, enum err_code code, const char *format, ...) G_GNUC_PRINTF(3, 4);

/* Put words before a message already in *err ("outings.csv:12: "); returns FALSE. */
gboolean err_prefix(GError **err, const char *format, ...) G_GNUC_PRINTF(2, 3);

#endif
