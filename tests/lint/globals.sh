#!/bin/sh
# No variable at file scope changes: all state is passed.  The one exception is what signal
# handlers must reach (tui/term_signals.c).
# A static inside a function bears a dot in its name and is let through.

set -u
export LC_ALL=C
cd "${top_builddir:-.}/src" || exit 99
status=0
for archive in lib*.a; do
	"${NM:-nm}" -f sysv "$archive" >/dev/null || exit 99
	bad=$("${NM:-nm}" -f sysv "$archive" | awk -F'|' '
		/^Symbols from/ { member = $0; next }
		NF >= 7 && $7 ~ /^(\.t?(data|bss)|\*COM\*)/ && $7 !~ /^\.data\.rel\.ro/ && member !~ /term_signals/ {
			sub(/ *$/, "", $1)
			if ($1 !~ /\./ && $1 !~ /^__/) print "\t" $1
		}')
	[ -z "$bad" ] || { echo "src/$archive: variables at file scope that can change:"; echo "$bad"; status=1; }
done
exit $status
