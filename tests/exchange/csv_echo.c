/* For python_csv.sh: read CSV from standard input and write it to standard output.
 *
 *	csv_echo csv [SEPARATOR]	as CSV again, with that separator, or that of the input
 *	csv_echo hex			a line a row: each field's bytes in hex, - for an empty field
 *
 * Exit code 3 when the input is refused; the reason is on standard error. */
#include "exchange/csv_in.h"
#include "exchange/csv_out.h"

#include <string.h>

static void
put_hex(const struct csv_row *row)
{
	for (int i = 0; i < row->n; i++) {
		fputs(i ? " " : "", stdout);
		if (!row->cell[i])
			putchar('-');
		else if (!*row->cell[i])
			putchar('.');
		for (const char *p = row->cell[i]; p && *p; p++)
			printf("%02x", (unsigned char)*p);
	}
	putchar('\n');
}

static gboolean
echo(struct csv_in *in, struct csv_out *out, GError **err)
{
	struct csv_row row;
	enum csv_got got;

	while ((got = csvin_next(in, &row, err)) == GOT_ROW) {
		if (!out) {
			put_hex(&row);
			continue;
		}
		for (int i = 0; i < row.n; i++)
			csvout_text(out, row.cell[i]);
		csvout_row(out);
	}
	return got == GOT_END;
}

int
main(int argc, char **argv)
{
	const gboolean hex = argc > 1 && !strcmp(argv[1], "hex");
	const struct sink sink = sink_file(stdout);
	GError *err = NULL;
	struct csv_in *in = csvin_file(stdin, "input", NULL, &err);
	struct csv_out *out = NULL;
	gboolean good = in != NULL;

	if (in && !hex) {
		struct csv_out_how how = { argc > 2 ? *argv[2] : csvin_found(in)->separator, FALSE, FALSE };

		out = csvout_new(&sink, &how);
	}
	good = in && echo(in, out, &err);
	if (out)
		good &= csvout_close(out, err ? NULL : &err);
	if (!good)
		fprintf(stderr, "%s\n", err->message);
	g_clear_error(&err);
	csvin_free(in);
	return good ? 0 : 3;
}
