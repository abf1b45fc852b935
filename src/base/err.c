#include "base/err.h"

#include <stdarg.h>

GQuark
err_domain(void)
{
	return g_quark_from_static_string("splitpin-error");
}

gboolean
err_set(GError **err, enum err_code code, const char *format, ...)
{
	g_autofree char *raw = NULL, *message = NULL;
	va_list ap;

	if (!err)
		return FALSE;
	va_start(ap, format);
	raw = g_strdup_vprintf(format, ap);
	va_end(ap);
	/* The words may come from a damaged file, and what shows a message expects UTF-8. */
	message = g_utf8_make_valid(raw, -1);
	g_set_error_literal(err, ERR_DOMAIN, (int)code, message);
	return FALSE;
}

gboolean
err_prefix(GError **err, const char *format, ...)
{
	g_autofree char *raw = NULL, *prefix = NULL;
	char *message;
	va_list ap;

	if (!err || !*err)
		return FALSE;
	va_start(ap, format);
	raw = g_strdup_vprintf(format, ap);
	va_end(ap);
	prefix = g_utf8_make_valid(raw, -1);
	message = g_strconcat(prefix, (*err)->message, NULL);
	g_free((*err)->message);
	(*err)->message = message;
	return FALSE;
}
