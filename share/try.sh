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

# What the demo's owner did in the shed this autumn: looked for the shake, and counted the parts.
in_the_shed()
{
	broken=no
	on() { day=$1; shift; "$prog" --file "$book" --who owner --today "$day" "$@" || broken=yes; }
	on 2026-10-10 found drive/transom/gimbal-ring "a little more play in the steering than two years ago" --level mend
	on 2026-11-07 found propeller "cotter wasted, nut finger tight" --task propeller.grease
	on 2026-11-07 job start "Find the shake at cruising speed" --name shake-2026 \
		--task propeller.inspect --task propeller-shaft.runout
	for line in "1 cotter 1/8 x 1-1/2 bag 1 renew" "1 propeller nut 1-1/16 tray 1 found finger tight" \
		"1 spline washer tray 1 cup to the nut" "1 propeller, paint mark at 12 o'clock" \
		"1 thrust washer tray 1 taper to the case" "end play of the shaft 1/64 in"; do
		on 2026-11-07 job --off "$line"
	done
	on 2026-11-08 job --pause "tray 1 and bag 1 on the shelf over the bench, propeller behind the door"
	on 2025-03-29 stores add "impeller, six vanes" --number RB-120@Quay --rubber --shelf 60 --lead 7 --keep 1
	on 2025-03-29 stores bought impeller 1 --price "48.10 USD" --made 2024-11 --place "under the seat"
	on 2026-11-14 stores add "bellows, U-joint, with clamps" --number RB-103@Quay --rubber --shelf 48 --lead 14
	on 2026-11-14 stores add "cotter, 1/8 x 1-1/2 in, stainless" --number RB-131@Quay --lead 3 --keep 4
	on 2026-11-14 stores bought cotter 10 --price "4.50 USD" --place "bench, drawer 2"
	on 2026-11-14 stores need bellows-ujoint.renew bellows
	on 2026-11-14 stores need seawater-pump.renew impeller
	on 2026-11-14 stores need propeller.grease cotter
	[ $broken = no ]
}

# ---- The demo: the commands that are shown stand here and nowhere else. ----
if [ ! -f "$book" ]; then
	"$prog" --file "$book" new --demo && in_the_shed >/dev/null || {
		rm -f "$book"
		build_stop "the demo logbook could not be made"
	}
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
