# shellcheck shell=sh
# How share/try.sh and tests/run.sh build: in a folder of the user's cache, from a copy of the sources, so that the
# checkout stays as it is.  The folder is kept; a second run builds what has changed.  Needs $top, the checkout.

# The folder for that purpose and this checkout, made when missing, and held until the script ends: $build_home.
build_in()
{
	build_cache=${XDG_CACHE_HOME:-${HOME:+$HOME/.cache}}
	{ [ -n "$build_cache" ] && mkdir -p "$build_cache/splitpin" 2>/dev/null && [ -w "$build_cache/splitpin" ]; } ||
		build_cache=${TMPDIR:-/tmp}/user-$(id -u)
	build_home=$build_cache/splitpin/$1-$(printf '%s' "$top" | cksum | cut -d ' ' -f 1)
	(umask 077 && mkdir -p "$build_home/src") || exit 1
	[ -O "$build_home" ] || build_stop "$build_home belongs to someone else"
	if command -v flock >/dev/null; then
		exec 9>"$build_home/lock"
		flock -n 9 || { echo "Waiting for another run of this in $build_home..."; flock 9; }
	fi
}

build_stop() { printf '%s: %s\n' "$(basename "$0")" "$*" >&2; exit 1; }

# Every file of the checkout that belongs to it, a line each.
build_sources()
{
	if [ "$(git -C "$top" rev-parse --show-toplevel 2>/dev/null)" = "$top" ]; then
		git -C "$top" ls-files --cached --others --exclude-standard
	else
		(cd "$top" && find . -name .git -prune -o -name autom4te.cache -prune -o -name .deps -prune -o -type f \
			! -name '*.o' ! -name '*.a' ! -name '*.log' ! -name '*.trs' ! -name config.status \
			! -name .dirstamp ! -path ./Makefile -print | sed 's,^\./,,')
	fi | sort -u | while read -r build_file; do
		[ ! -f "$top/$build_file" ] || printf '%s\n' "$build_file"
	done
}

# Bring the copy in $build_home/src up to date: what has changed is copied, what is gone is removed.
build_copy()
{
	build_sources >"$build_home/sources.new" || exit 1
	[ -s "$build_home/sources.new" ] || build_stop "no sources found in $top"
	rm -rf "$build_home/new"
	mkdir -p "$build_home/new" "$build_home/src" || exit 1
	(cd "$top" && tar -c -f - -T "$build_home/sources.new") | (cd "$build_home/new" && tar -x -f -) ||
		build_stop "the sources could not be copied to $build_home/new"
	# By content, not by time: what was changed while an earlier build ran is older than what that made of it.
	while read -r build_file; do
		cmp -s "$build_home/new/$build_file" "$build_home/src/$build_file" && continue
		mkdir -p "$(dirname "$build_home/src/$build_file")" &&
			cp "$build_home/new/$build_file" "$build_home/src/$build_file" ||
			build_stop "the sources could not be copied to $build_home/src"
	done <"$build_home/sources.new"
	rm -rf "$build_home/new"
	if [ -f "$build_home/sources" ]; then
		comm -23 "$build_home/sources" "$build_home/sources.new" | while read -r build_file; do
			rm -f "$build_home/src/$build_file"
		done
	fi
	# A folder left empty would be shipped as if it held something.
	find "$build_home/src" -depth -type d -exec rmdir {} + 2>/dev/null
	mv "$build_home/sources.new" "$build_home/sources"
}

# What went wrong in the last build_make, in short.
build_why()
{
	grep -E '(^configure: |: (fatal )?)error: |: undefined reference|^make.*\*\*\* ' "$build_log" | head -n 40 ||
		tail -n 40 "$build_log"
	echo "All it said is in $build_log.  To start afresh, remove $build_home"
}

# build_make NAME TARGET [CONFIGURE-ARGUMENT...]: configure $build_home/NAME if need be, and make TARGET there.  The
# output goes to $build_home/NAME.log.
build_make()
{
	build_dir=$build_home/$1
	build_log=$build_home/$1.log
	build_target=$2
	shift 2
	(
		[ -f "$build_home/src/configure" ] || (cd "$build_home/src" && autoreconf -i) || exit 1
		mkdir -p "$build_dir" && cd "$build_dir" || exit 1
		[ -f Makefile ] || ../src/configure "$@" || exit 1
		make -k -j "$(nproc 2>/dev/null || echo 2)" "$build_target"
	) >"$build_log" 2>&1 9>&-
}
