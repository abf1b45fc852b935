# shellcheck shell=sh
# What every shell test begins with:
#
#	. "${top_srcdir:-.}/tests/lib.sh"
#	about "a new logbook is refused over an existing file"
#	run 0 splitpin --file a.splitpin new "Grey Heron" --kind petrol-sterndrive
#	run 4 splitpin --file a.splitpin new "Grey Heron" --kind petrol-sterndrive
#	says_err "exists"
#
# The test stands in an empty folder of its own, which is also its HOME, and which is removed when it ends.  Nothing
# of the caller's settings is seen.  The first claim that does not hold ends the test and shows what was there.

set -u

top_srcdir=$(cd "${top_srcdir:-$(dirname "$0")/../..}" && pwd) || exit 99
top_builddir=$(cd "${top_builddir:-.}" && pwd) || exit 99
SPLITPIN=${SPLITPIN:-$top_builddir/splitpin}
export top_srcdir top_builddir SPLITPIN
export SPLITPIN_DATA="$top_srcdir/share"

test_dir=$(mktemp -d "${TMPDIR:-/tmp}/splitpin-test.XXXXXX") || exit 99
trap 'cd / && chmod -R u+rwX "$test_dir" && rm -rf "$test_dir"' EXIT
trap 'exit 129' HUP
trap 'exit 130' INT
trap 'exit 143' TERM
cd "$test_dir" || exit 99
mkdir home tmp || exit 99

export HOME="$test_dir/home" TMPDIR="$test_dir/tmp"
export XDG_DATA_HOME="$HOME/.local/share" XDG_CONFIG_HOME="$HOME/.config" XDG_CACHE_HOME="$HOME/.cache"
export XDG_STATE_HOME="$HOME/.local/state" XDG_RUNTIME_DIR="$test_dir/tmp"
export SPLITPIN_FILE="$test_dir/home/boat.splitpin"
export TZ=UTC LC_ALL=C.UTF-8 TERM=dumb
unset LANG LANGUAGE COLUMNS LINES NO_COLOR EDITOR VISUAL PAGER MANPAGER CDPATH 2>/dev/null

# The system's own Python is the one that the system's packages serve.
if [ -d /usr/lib/python3/dist-packages/dateutil ]; then
	python3() { /usr/bin/python3 "$@"; }
fi

test_title=
about() { test_title=$1; }

fail()
{
	printf 'FAILED: %s\n' "${test_title:+$test_title: }$*"
	for test_file in out err; do
		[ -s "$test_dir/$test_file" ] || continue
		printf -- '--- std%s\n' "$test_file"
		head -n 60 "$test_dir/$test_file"
	done
	exit 1
}

skip() { printf 'skipped: %s\n' "$*"; exit 77; }

splitpin() { "$SPLITPIN" "$@"; }

# run CODE COMMAND...: the command ends with that exit code; what it prints stays in the files out and err.
run()
{
	test_want=$1
	shift
	test_got=0
	"$@" >"$test_dir/out" 2>"$test_dir/err" || test_got=$?
	[ "$test_got" -eq "$test_want" ] || fail "exit code $test_got, not $test_want, of: $*"
}

# Claims on what the last run printed: a text that stands in it, or does not.
says() { grep -qF -e "$1" "$test_dir/out" || fail "stdout does not say: $1"; }
says_not() { ! grep -qF -e "$1" "$test_dir/out" || fail "stdout says: $1"; }
says_err() { grep -qF -e "$1" "$test_dir/err" || fail "stderr does not say: $1"; }
says_nothing() { [ ! -s "$test_dir/out" ] || fail "stdout is not empty"; }
quiet() { [ ! -s "$test_dir/err" ] || fail "stderr is not empty"; }
# As many lines on stdout.
lines() { [ "$(wc -l <"$test_dir/out")" -eq "$1" ] || fail "$(wc -l <"$test_dir/out") lines on stdout, not $1"; }

# same EXPECTED ACTUAL: two files are equal, byte by byte.
same()
{
	cmp -s "$1" "$2" && return
	diff -u "$1" "$2" | head -n 40
	fail "$2 is not as $1"
}

# is EXPECTED ACTUAL [WHAT]: two words are equal.
is() { [ "$1" = "$2" ] || fail "${3:-value}: '$2', not '$1'"; }
