#!/bin/sh
# Try splitpin: install what is missing, build, make a demo logbook and show what is due at its coming launch; on a terminal
# open its screens, too.
#
#	sh share/try.sh
#
# Nothing is installed but packages that are missing, and the checkout is left as it is.  Run again, it builds what has
# changed and shows the same logbook.

set -u
unset CDPATH
top=$(cd "$(dirname "$0")/.." && pwd -P) || exit 1
. "$top/share/packages.sh"
. "$top/share/build.sh"

# shellcheck disable=SC2086  # the lists are words
packages_install $packages_build || { echo "Going on with what is there."; packages_look_build; } ||
	build_stop "install what is missing, then run this again"

build_in try
build_copy
echo "Building in $build_home (a minute the first time)..."
build_make build all || {
	build_why
	build_stop "the build failed"
}
prog=$build_home/build/splitpin
book=$build_home/demo.splitpin
SPLITPIN_DATA=$build_home/src/share
export SPLITPIN_DATA

# ---- The demo: the commands that are shown stand here and nowhere else. ----
if [ ! -f "$book" ]; then
	"$prog" --file "$book" new --demo || { rm -f "$book"; build_stop "the demo logbook could not be made"; }
fi
echo
echo "\$ splitpin --file $book --today 2026-11-25 due --at launch"
"$prog" --file "$book" --today 2026-11-25 due --at launch ||
	build_stop "that did not work; to start with a new demo logbook, remove $book"
# ---- End of the demo. ----

cat <<END

The program is $prog
The demo logbook is $book; remove it to start anew.
To go on with them in this shell:
    export SPLITPIN_DATA='$SPLITPIN_DATA' SPLITPIN_FILE='$book'
    alias splitpin='$prog'
    splitpin help
END
if [ -t 0 ] && [ -t 1 ]; then
	printf '\nEnter opens the screens; q ends them. '
	read -r _ && exec "$prog" --file "$book" --today 2026-11-25
fi
