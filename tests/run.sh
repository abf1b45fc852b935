#!/bin/sh
# Run the tests: install what is missing, build with warnings as errors, run every test.
#
#	sh tests/run.sh         with gcc
#	sh tests/run.sh --all   with clang and with the sanitizers, too; the distribution; the man pages; the scripts
#
# The last line is "N passed, N failed".  The checkout is left as it is.

set -u
unset CDPATH MAKEFLAGS MFLAGS DESTDIR
top=$(cd "$(dirname "$0")/.." && pwd -P) || exit 1
. "$top/share/packages.sh"
. "$top/share/build.sh"

all=no
case ${1-} in
--all) all=yes ;;
"") ;;
*) sed -n '2,/^$/s/^# \{0,1\}//p' "$0"; exit 2 ;;
esac

passed=0 failed=0 skipped=0
heading() { printf '\n== %s ==\n' "$*"; }
pass() { passed=$((passed + 1)); printf 'ok: %s\n' "$*"; }
flunk() { failed=$((failed + 1)); printf 'FAILED: %s\n' "$*"; }
pass_over() { skipped=$((skipped + 1)); printf 'skipped: %s\n' "$*"; }

finish()
{
	echo
	[ "$failed" -eq 0 ] || echo "The full output is in $build_home"
	printf '%d passed, %d failed' "$passed" "$failed"
	[ "$skipped" -eq 0 ] || printf ', %d skipped' "$skipped"
	echo
	[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
	exit
}

# Count the tests of a build folder: each single test of a check program, and each shell test.  Of that build alone: a
# distribution that failed its tests lies beside them, results and all, until the next one is made.
tally()
{
	tally_passed=$passed tally_failed=$failed
	find "$1/tests" -name '*.trs' | sort >"$build_home/results"
	while read -r trs; do
		log=${trs%.trs}.log
		result=$(sed -n 's/^:test-result: *//p' "$trs")
		counts=$(awk '/^[0-9]+%: Checks: [0-9]+, Failures: [0-9]+, Errors: [0-9]+$/ {
				gsub(/[^0-9 ]/, ""); checks += $2; bad += $3 + $4
			}
			END { print checks + 0, bad + 0 }' "$log")
		checks=${counts% *} bad=${counts#* }
		case $result in
		PASS|XFAIL)
			[ "$checks" -gt 0 ] || checks=1
			passed=$((passed + checks)) ;;
		SKIP)
			skipped=$((skipped + 1))
			printf 'skipped: %s: %s\n' "${log#"$1"/}" "$(grep -v '^SKIP' "$log" | head -n 1)" ;;
		*)
			passed=$((passed + checks - bad))
			[ "$bad" -gt 0 ] || bad=1
			failed=$((failed + bad))
			printf -- '---- %s: %s ----\n' "$result" "${log#"$1"/}"
			grep -vE '^[^ ]*:[0-9]+:P:' "$log" | tail -n 100 ;;
		esac
	done <"$build_home/results"
	if [ ! -s "$build_home/results" ]; then
		flunk "no test was run"
	else
		printf 'passed %d, failed %d\n' $((passed - tally_passed)) $((failed - tally_failed))
	fi
}

# try_build NAME [CONFIGURE-ARGUMENT...]: build and run the tests.
try_build()
{
	name=$1
	shift
	[ ! -d "$build_home/$name/tests" ] ||
		find "$build_home/$name/tests" \( -name '*.trs' -o -name '*.log' \) -exec rm -f {} +
	if ! build_make "$name" all "$@"; then
		build_why
		flunk "the build"
		return 1
	fi
	grep -E 'warning: ' "$build_log"
	build_make "$name" check || grep -qE '^# TOTAL:' "$build_log" || {
		build_why
		flunk "make check"
		return 1
	}
	tally "$build_home/$name"
}

# Everything that the checkout holds is in the distribution, which builds, tests, installs and uninstalls by itself.
try_dist()
{
	if ! build_make gcc distcheck; then
		cat "$build_home"/gcc/splitpin-*/_build/sub/test-suite.log 2>/dev/null | tail -n 100
		build_why
		flunk "make distcheck"
		return
	fi
	pass "make distcheck"
	tar -t -f "$build_home"/gcc/splitpin-*.tar.gz | sed 's,^[^/]*/,,' | sort >"$build_home/shipped"
	left_out=$(comm -23 "$build_home/sources" "$build_home/shipped")
	if [ -n "$left_out" ]; then
		printf '%s\n' "$left_out"
		flunk "the distribution: these files are not in it"
	else
		pass "the distribution holds every file"
	fi
}

# try_each WHAT COMMAND... -- FILE...: the command accepts each file.
try_each()
{
	what=$1 command=$2
	shift
	command -v "$command" >/dev/null || { pass_over "$what: $command is not installed"; return; }
	words=
	while [ "$1" != -- ]; do
		words="$words $1"
		shift
	done
	shift
	for file in "$@"; do
		[ -f "$file" ] || continue
		# shellcheck disable=SC2086  # the command and its options are words
		if $words "$file" 9>&-; then pass "$what: $file"; else flunk "$what: $file"; fi
	done
}

try_texts()
{
	cd "$build_home/src" || exit 1
	try_each "man page" mandoc -T lint -W warning -- man/*.[1-9]
	try_each "script" shellcheck -S warning -e SC2154 -- .ci/run share/*.sh tests/*.sh tests/*/*.sh
	try_each "completion" bash -n -- share/completions/splitpin.bash
	try_each "completion" zsh -n -- share/completions/_splitpin
	try_each "completion" fish -n -- share/completions/splitpin.fish
}

build_in test
# shellcheck disable=SC2086  # the lists are words
packages_install $packages_build $packages_test ||
	{ echo "Going on with what is there."; packages_look_build && packages_look_test; } ||
	build_stop "install what is missing, then run this again"
if [ $all = yes ]; then
	# shellcheck disable=SC2086
	packages_install $packages_all || echo "Checks that need what is missing are passed over."
fi
build_copy
CK_VERBOSITY=normal
export CK_VERBOSITY

heading "gcc, warnings as errors"
try_build gcc --enable-werror CC="${CC:-gcc}" || finish
if [ $all = yes ]; then
	heading "clang, warnings as errors"
	if command -v clang >/dev/null; then
		try_build clang --enable-werror CC=clang
	else
		pass_over "clang is not installed"
	fi
	heading "gcc with the address and undefined behaviour sanitizers"
	try_build sanitizers --enable-sanitizers CC="${CC:-gcc}" CFLAGS='-g -O1'
	heading "the distribution"
	try_dist
	heading "man pages and scripts"
	try_texts
fi
finish
