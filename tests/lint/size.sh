#!/bin/sh
# Sizes that keep the code readable.  What must be larger says why in a comment: /* long: the reason */ at the top of
# the file, or between the function before and this one's opening brace.

set -u
export LC_ALL=C
cd "${top_srcdir:-.}" || exit 99

find src tests -name '*.[ch]' ! -name sql.c ! -name sql.h | sort | xargs "${AWK:-awk}" '
BEGIN { FUNCTION = 80; SOURCE = 500; HEADER = 150; COLUMNS = 132; PARAMETERS = 6; NESTING = 4 }

function complain(line, what) { print file ":" line ": " what; bad = 1 }

function columns(s,   n, i, part)	# with a tab every 8 columns; bytes that continue a UTF-8 character do not count
{
	gsub(/[\200-\277]/, "", s)
	n = split(s, part, "\t")
	s = part[1]
	for (i = 2; i <= n; i++)
		s = s substr("        ", 1, 8 - length(s) % 8) part[i]
	return length(s)
}

function parameters(s,   n, i, c, depth, count)
{
	if (s ~ /^START_TEST|\((void)?\)$/) return 0
	n = length(s)
	for (i = 1; i <= n; i++) {
		c = substr(s, i, 1)
		if (c == "(") depth++
		else if (c == ")") depth--
		else if (c == "," && depth == 1) count++
	}
	return count + 1
}

function file_ends()
{
	if (file == "") return
	limit = file ~ /\.h$/ ? HEADER : SOURCE
	if (rows > limit && !file_reason)
		complain(limit + 1, rows " lines; at most " limit ", or a comment /* long: reason */ at the top")
}

FNR == 1 { file_ends(); file = FILENAME; file_reason = reason = inside = 0; signature = name = "" }
{ rows = FNR }
columns($0) > COLUMNS { complain(FNR, columns($0) " columns; at most " COLUMNS) }
/long: *[^ *]/ && (/^ ?\*/ || /\/\*/) { reason = 1; if (FNR <= 20) file_reason = 1 }
/^\{/ { inside = 1; start = FNR; next }
inside && /^\}/ {
	n = FNR - start + 1
	if (file ~ /^src/) length_of[++functions] = n
	if (n > FUNCTION && !reason)
		complain(start, name " has " n " lines; at most " FUNCTION ", or a comment /* long: reason */ before it")
	if (parameters(signature) > PARAMETERS && !reason)
		complain(start, name " has " parameters(signature) " parameters; at most " PARAMETERS ", then a struct")
	inside = reason = 0
	signature = ""
	next
}
inside && /^\t+(if|for|while|do|switch|return|break|continue|goto)([^A-Za-z0-9_]|$)/ {
	match($0, /^\t+/)
	if (RLENGTH - 1 > NESTING)
		complain(FNR, "nested " (RLENGTH - 1) " deep; at most " NESTING)
}
!inside && /^[A-Za-z_][A-Za-z0-9_]*\(/ { name = $0; sub(/\(.*/, "", name); signature = $0; next }
!inside && /^[ \t]/ { signature = signature $0; next }

END {
	file_ends()
	for (i = 2; i <= functions; i++) {	# insertion sort
		n = length_of[i]
		for (j = i - 1; j > 0 && length_of[j] > n; j--) length_of[j + 1] = length_of[j]
		length_of[j + 1] = n
	}
	if (functions)
		printf "%d functions in src/: median %d lines, 9 in 10 at most %d, longest %d\n", functions,
			length_of[int((functions + 1) / 2)], length_of[int(functions * 0.9 + 0.5)], length_of[functions]
	exit bad
}'
