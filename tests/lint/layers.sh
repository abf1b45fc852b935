#!/bin/sh
# The floors: a file includes only what stands below it, and each foreign header, the clock, the output and the end
# of the program have one home.

set -u
export LC_ALL=C
cd "${top_srcdir:-.}/src" || exit 99

find . -name '*.[ch]' -o -name '*.sql' | sed 's,^\./,,' | sort | xargs "${AWK:-awk}" '
function floor(layer, below) { allowed[layer] = " " below " " layer " " }
# What the pattern finds in the text of that kind stands in no file but those whose names begin with a home.
function home(kind, homes, why, pattern) { n++; of[n] = kind; homes_of[n] = homes; why_of[n] = why; pattern_of[n] = pattern }
function call(names) { return "(^|[^A-Za-z0-9_])(" names ")[ \t]*\\(" }

BEGIN {
	floor("base", "")
	floor("engine", "base")
	floor("model", "base engine")
	floor("store", "base engine model")
	floor("exchange", "base engine model")
	floor("logbook", "base engine model store exchange")
	floor("pdf", "base logbook")
	floor("cli", "base engine model logbook")
	floor("tui", "base engine model logbook")
	floor("main", "base engine model logbook cli tui")

	home("include", "store/", "SQLite belongs in store/", "<sqlite3")
	home("include", "exchange/", "libcsv belongs in exchange/", "<csv\\.h>")
	home("include", "exchange/", "jansson belongs in exchange/", "<jansson")
	home("include", "exchange/", "libical belongs in exchange/", "<(libical/)?ical")
	home("include", "engine/", "GSL belongs in engine/", "<gsl/")
	home("include", "tui/term_curses.c", "curses belongs in tui/term_curses.c",
	     "<(ncursesw?/)?(n?curses|term|panel|form|menu)\\.h>")

	home("include", "pdf/pdf.c", "Pango and Cairo belong in pdf/pdf.c", "<(pango/)?pango|<(cairo/)?cairo")
	home("include", "logbook/paper_pdf.c", "GModule belongs in logbook/paper_pdf.c", "<gmodule")

	clock = "the clock is read in main.c"
	home("include", "main.c", clock, "<(sys/)?(time|timeb)\\.h>")
	home("code", "main.c", clock, call("time|clock|clock_gettime|gettimeofday|timespec_get|ftime|localtime(_r)?"))
	home("code", "main.c", clock, call("gmtime(_r)?|mktime|strftime|g_get_(real|monotonic|current)_time"))
	home("code", "main.c", clock, call("g_date_time_new_now[a-z_]*|g_date_set_time[a-z_]*|g_timer_new"))
	home("sql", "main.c", clock, "CURRENT_(DATE|TIME)|\047now\047|(unixepoch|julianday|date|time|datetime)[ \t]*\\([ \t]*\\)")

	output = "only the front ends print"
	home("code", "main.c cli/ tui/", output, call("v?printf|puts|putchar(_unlocked)?|perror|psignal|g_print|g_printerr"))
	home("code", "main.c cli/ tui/", output, call("g_message|g_warning|g_debug|g_info|g_critical|g_log"))
	home("code", "main.c cli/ tui/", output, "(^|[^A-Za-z0-9_])std(out|err)([^A-Za-z0-9_]|$)")

	ending = "only main.c ends the program"
	home("code", "main.c", ending, call("_?exit|_Exit|quick_exit|abort|g_error|g_abort"))
	home("include", "main.c", ending, "<err\\.h>")
}

function breach(what) { print "src/" FILENAME ":" FNR ": " what ": " $0; bad = 1 }

# The line without comments and the insides of strings.
function code(line,   out, end, found)
{
	out = ""
	while (line != "") {
		if (comment) {
			end = index(line, "*/")
			if (!end) break
			line = substr(line, end + 2)
			comment = 0
		} else if (match(line, /\/\*|\/\/|"([^"\\]|\\.)*"|\047([^\047\\]|\\.)+\047/)) {
			out = out substr(line, 1, RSTART - 1)
			found = substr(line, RSTART, 2)
			if (found == "//") return out
			comment = found == "/*"
			if (!comment) out = out "\"\""
			line = substr(line, RSTART + (comment ? 2 : RLENGTH))
		} else {
			return out line
		}
	}
	return out
}

function at_home(homes,   i, count, part)
{
	count = split(homes, part, " ")
	for (i = 1; i <= count; i++)
		if (index(FILENAME, part[i]) == 1) return 1
	return 0
}

FNR == 1 {
	layer = FILENAME
	if (!sub(/\/.*/, "", layer)) sub(/\..*/, "", layer)
	comment = 0
	if (!(layer in allowed)) breach(layer " is no layer of the design")
}
{ kind = "code"; text = $0 }
FILENAME ~ /\.sql$/ { kind = "sql"; sub(/--.*/, "", text) }
FILENAME !~ /\.sql$/ && /^[ \t]*#[ \t]*include/ { kind = "include" }
kind == "include" && match($0, /"[^"]*"/) {
	used = substr($0, RSTART + 1, RLENGTH - 2)
	sub(/\/.*/, "", used)
	if (!index(allowed[layer], " " used " ")) breach(layer " must not include that")
}
kind == "code" { text = code($0) }
text != "" {
	for (i = 1; i <= n; i++)
		if (of[i] == kind && text ~ pattern_of[i] && !at_home(homes_of[i])) breach(why_of[i])
}
END { exit bad }'
