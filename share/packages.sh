# shellcheck shell=sh disable=SC2034
# The one list of Debian packages that splitpin is built and tested with, and how what is missing gets installed.
# Sourced by share/try.sh and tests/run.sh.

# To build.
packages_build="autoconf automake make gcc libc6-dev pkg-config libglib2.0-dev libsqlite3-dev libcsv-dev libgsl-dev
	libjansson-dev libncurses-dev"
# To run the tests.
packages_test="check libvterm-dev bash python3 python3-dateutil sqlite3 poppler-utils fonts-dejavu-core"
# For every check that there is: the second compiler, the man pages, the shells whose scripts are checked, sheets as PDF.
packages_all="clang mandoc git shellcheck zsh fish libpango1.0-dev"
# For tests/bench/, which counts instructions.
packages_bench="valgrind"

# Those of the packages named that are not installed.
packages_missing()
{
	packages_have=$(dpkg-query -W -f '${Status} ${Package}\n' "$@" 2>/dev/null | sed -n 's/.* ok installed //p')
	for package in "$@"; do
		printf '%s\n' "$packages_have" | grep -qxF -e "$package" || printf '%s\n' "$package"
	done
}

packages_apt()	# apt-get's arguments; waits when another program is installing
{
	set -- env DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=300 -o Dpkg::Use-Pty=0 -qq "$@"
	[ "$(id -u)" -eq 0 ] || set -- sudo "$@"
	"$@" </dev/null
}

# The lists of packages have a lock for which apt-get does not wait.
packages_update()
{
	for packages_turn in 1 2 3 4 5 6; do
		packages_said=$(packages_apt update 2>&1) && return
		case $packages_said in *lock*) sleep 10 ;; *) break ;; esac
	done
	printf '%s\n' "$packages_said" >&2
	return 1
}

# Install what is missing of the packages named.  Fails, having said why, when they can't all be had.
packages_install()
{
	if ! command -v apt-get >/dev/null || ! command -v dpkg-query >/dev/null; then
		echo "This system has no apt-get.  On Debian the packages wanted are:"
		echo "   " "$@"
		return 1
	fi
	packages_wanted=$(packages_missing "$@" | tr '\n' ' ')
	[ -n "$packages_wanted" ] || return 0
	if [ "$(id -u)" -ne 0 ] && ! command -v sudo >/dev/null; then
		echo "Not installed, and only root may install them:"
		echo "    apt-get install $packages_wanted"
		return 1
	fi
	echo "Installing $packages_wanted..."
	packages_update || echo "apt-get could not bring its lists up to date; going on with those it has." >&2
	# shellcheck disable=SC2086  # the names are words
	packages_apt install --no-install-recommends $packages_wanted >/dev/null || {
		echo "apt-get could not install: $packages_wanted" >&2
		return 1
	}
}

packages_lack() { echo "missing: $1" >&2; packages_ok=1; }
packages_command() { command -v "$1" >/dev/null || packages_lack "the program $1"; }
packages_module() { pkg-config --exists "$1" 2>/dev/null || packages_lack "the library $1 (its development files)"; }

# Whether a build can go ahead with what is there, whoever installed it; names what is missing.
packages_look_build()
{
	packages_ok=0
	for packages_name in autoreconf automake make "${CC:-cc}" pkg-config; do
		packages_command "$packages_name"
	done
	for packages_name in 'glib-2.0 >= 2.70' 'sqlite3 >= 3.37' gsl 'jansson >= 2.9' ncursesw; do
		packages_module "$packages_name"
	done
	echo '#include <csv.h>' | "${CC:-cc}" -E - >/dev/null 2>&1 || packages_lack "the library libcsv (csv.h)"
	return $packages_ok
}

packages_look_test()
{
	packages_ok=0
	packages_module 'check >= 0.15'
	packages_module vterm
	packages_command python3
	python3 -c 'import dateutil' 2>/dev/null || packages_lack "python3's module dateutil"
	packages_command sqlite3
	return $packages_ok
}
