#!/bin/sh
# How quick the program is, as ratios to other programs on the same file in the same run, and as exact counts:
#
#	make bench
#	BENCH_ROUNDS=3 BENCH_LARGE=no make bench
#
# Every ratio is the median of BENCH_ROUNDS (9) rounds in which both commands take turns, so that it holds on a busy
# machine too; milliseconds do not.  The marks judge nothing: the exit code is 0 whatever they say.  BENCH_LARGE=no
# leaves the logbook of 1,000,000 outings out.  Instructions are counted where valgrind is, syncs and pages where strace
# is.
. "${top_srcdir:-.}/tests/lib.sh"

tools=${BENCH_TOOLS:-$top_builddir/tests/bench}
rounds=${BENCH_ROUNDS:-9}
today=2026-03-20
export SPLITPIN_DATA="$top_srcdir/share"
for tool in "$SPLITPIN" "$tools/pair" "$tools/make_logbook"; do
	[ -x "$tool" ] || fail "$tool is not there: make bench builds it"
done
command -v sqlite3 >/dev/null || skip 'the sqlite3 shell is what all is measured against'

have() { command -v "$1" >/dev/null; }
at_most() { awk -v a="$1" -v b="$2" 'BEGIN { exit !(a + 0 <= b + 0) }'; }
mark()
{
	[ "$2" = - ] && { echo; return; }
	if at_most "$1" "$2"; then echo met; else echo missed; fi
}

# logbook SIZE FILE [CSV]
logbook()
{
	"$tools/make_logbook" "$@" || fail "make_logbook $*"
	run 0 "$SPLITPIN" --file "$2" import rates "$top_srcdir/share/catalogue/rates.csv"
}

header() { printf '%-46s %6s %6s %-15s %6s %9s %9s %6s %s\n' "$@"; }

# compare WHAT TARGET OPTIONS... -- A ... ::: B ...: one line of the table
compare()
{
	what=$1 target=$2
	shift 2
	options=
	while [ "$1" != -- ]; do
		options="$options $1"
		shift
	done
	shift
	# shellcheck disable=SC2086 # options are words
	line=$("$tools/pair" -n "$rounds" $options ${before:+-b "$before"} "$@") || fail "$what"
	# shellcheck disable=SC2086 # so is the line
	set -- $line
	header "$what" "$target" "$1" "[$2..$3]" "$4" "$5" "$6" "$9" "$(mark "$1" "$target")"
	case $what in
	import*) ;;
	*) at_most "$9" "$most_kib" || most_kib=$9 ;;
	esac
}

# screens WHAT FRAME-TARGET KEY-TARGET FILE [OPTION...]: against a bare ncurses program that opens the same file and draws
# one query.
screens()
{
	what=$1 first=$2 key=$3 file=$4
	shift 4
	line=$("$tools/screen" -n "$rounds" -m help "$SPLITPIN" --file "$file" --today $today "$@" \
		::: "$tools/bare" "$file" 'SELECT name FROM task LIMIT 20') || fail "$what"
	# shellcheck disable=SC2086 # words
	set -- $line
	header "$what, first frame : bare" "$first" "$1" "[$2..$3]" - "$4" "$5" "$6" "$(mark "$1" "$first")"
	header "$what, key to screen : bare" "$key" "$8" "95th ${11} ms" - "$9" "${10}" - "$(mark "$8" "$key")"
}

count() { printf '%-46s %15s %15s %7s %s\n' "$@"; }

instructions()
{
	valgrind --tool=callgrind --callgrind-out-file=/dev/null "$@" 2>&1 >/dev/null |
		sed -n 's/.*I *refs: *//p' | tr -d ,
}

# calls REGEX COMMAND...: how many lines of its trace match
calls()
{
	regex=$1
	shift
	strace -f -o trace "$@" >/dev/null 2>&1
	grep -cE "$regex" trace
}

counted()
{
	what=$1 target=$2 ours=$3 others=$4
	[ -n "$ours" ] || return 0
	count "$what" "$ours" "$others" "$target" "$(mark "$ours" "$target")"
}

due() { echo "$SPLITPIN --file $1.splitpin --today $today due"; }
scan='SELECT count(*), sum(hours), sum(length(remark)), max(date) FROM outing NOT INDEXED'
add="PRAGMA synchronous = EXTRA; INSERT INTO outing SELECT max(id) + 1, boat, max(date) + 1, engine, hours, water,
	rinsed, trip, meter, reading, estimated, place, remark FROM outing"

# The shell can't write NULL: 0 and '' instead, which take no more room, in the same table with the same indexes.
shell_import()
{
	sqlite3 L.splitpin "SELECT sql || ';' FROM sqlite_schema WHERE name = 'outing'" >table.sql
	sqlite3 L.splitpin "SELECT replace(sql, 'IS NOT NULL', '<> 0') || ';' FROM sqlite_schema
		WHERE type = 'index' AND tbl_name = 'outing' AND sql IS NOT NULL" >index.sql
	sqlite3 -csv L.splitpin "SELECT id, boat, date, engine, hours, ifnull(water, ''), ifnull(rinsed, 0), ifnull(trip, 0),
		ifnull(meter, 0), ifnull(reading, 0), ifnull(estimated, 0), ifnull(place, ''), ifnull(remark, '')
		FROM outing" >shell.csv
}

small()
{
	logbook S S.splitpin
	logbook M M.splitpin
	# shellcheck disable=SC2046 # words
	compare 'due, 400 outings : true' 4 -r 21 -- $(due S) ::: true
	# shellcheck disable=SC2046
	compare 'due, 400 outings : shell counting them' 1 -r 21 -- $(due S) ::: sqlite3 S.splitpin 'SELECT count(*) FROM outing'
	# shellcheck disable=SC2046
	compare 'due, 10,000 outings of 5 boats : true' - -r 21 -- $(due M) ::: true
	screens 'screens, 400 outings' 2 3 S.splitpin
	before='cp M.splitpin one.splitpin'
	compare 'one outing into 10,000 : shell inserting it' - -r 9 -- "$SPLITPIN" --file one.splitpin --today $today \
		--boat 'Grey Heron 001' outing 2h ::: sqlite3 one.splitpin "$add"
	before=
}

large()
{
	logbook L L.splitpin
	logbook L empty.splitpin outings.csv
	shell_import
	# shellcheck disable=SC2046
	compare 'due, 1,000,000 of 1,000 boats : shell scan' 1 -- $(due L) ::: sqlite3 L.splitpin "$scan"
	# shellcheck disable=SC2046
	compare 'due, one boat of those : shell scan' 1 -- $(due L) --boat 'Grey Heron 500' ::: sqlite3 L.splitpin "$scan"
	screens 'screens, 1,000,000 outings' 2 3 L.splitpin --boat 'Grey Heron 500'
	compare 'export, 1,000,000 : shell -csv' 0.6 -o out.csv -- "$SPLITPIN" --file L.splitpin export outings \
		::: sqlite3 -csv L.splitpin 'SELECT * FROM outing'
	before='cp empty.splitpin full.splitpin; rm -f shell.db'
	compare 'import, 1,000,000 : shell .import and indexes' 1 -- "$SPLITPIN" --file full.splitpin --today $today \
		import outings outings.csv \
		::: sqlite3 shell.db '.read table.sql' '.mode csv' '.import shell.csv outing' '.read index.sql'
	before=
}

count_small()
{
	for size in S M; do
		# shellcheck disable=SC2046
		counted "instructions of due, $size : shell scan" - "$(instructions $(due $size))" \
			"$(instructions sqlite3 $size.splitpin "$scan")"
	done
	counted 'instructions of export, M : shell -csv' - \
		"$(instructions "$SPLITPIN" --file M.splitpin export outings)" \
		"$(instructions sqlite3 -csv M.splitpin 'SELECT * FROM outing')"
}

count_syncs()
{
	cp M.splitpin one.splitpin
	ours=$(calls '(fsync|fdatasync)\(' "$SPLITPIN" --file one.splitpin --today $today --boat 'Grey Heron 001' outing 2h)
	cp M.splitpin one.splitpin
	counted 'syncs of one outing : of the shell' 5 "$ours" "$(calls '(fsync|fdatasync)\(' sqlite3 one.splitpin "$add")"
}

count_large()
{
	if have valgrind; then
		# shellcheck disable=SC2046
		counted 'instructions of due, L : shell scan' - "$(instructions $(due L))" \
			"$(instructions sqlite3 L.splitpin "$scan")"
	fi
	if have strace; then
		# shellcheck disable=SC2046
		counted 'pages read by due, L : shell scan' - "$(calls 'pread64.* = 4096$' $(due L))" \
			"$(calls 'pread64.* = 4096$' sqlite3 L.splitpin "$scan")"
	fi
	counted 'bytes of the logbook, L : of its outings' - "$(wc -c <L.splitpin)" \
		"$(sqlite3 L.splitpin "SELECT sum(pgsize) FROM dbstat WHERE name IN (SELECT name FROM sqlite_schema
			WHERE tbl_name = 'outing')")"
	counted 'bytes exported, L : by the shell' - "$(wc -c <ours.csv)" "$(wc -c <theirs.csv)"
}

most_kib=0 before=
header 'ours : other' target ratio '[least..most]' cpu 'ours ms' 'other ms' KiB ''
small
[ "${BENCH_LARGE:-yes}" = no ] || large
echo
count 'exact' ours other target ''
have valgrind && count_small
have strace && count_syncs
if [ "${BENCH_LARGE:-yes}" != no ]; then
	"$SPLITPIN" --file L.splitpin export outings >ours.csv
	sqlite3 -csv L.splitpin 'SELECT * FROM outing' >theirs.csv
	count_large
fi
counted 'most memory of all but import, KiB' 12288 "$most_kib" ''
exit 0
