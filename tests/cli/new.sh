#!/bin/sh
# A new logbook: its folder is made for it and for nothing else, and the boat says which catalogue its tasks came from.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
unset SPLITPIN_FILE

about "what makes no logbook makes no folder"
run 0 sp help
run 0 sp --version
run 0 sp help due
run 4 sp due
says_err "there is no logbook"
run 2 sp nonsense
[ ! -e "$HOME/.local" ] || fail "a folder was made"
run 0 sp --file here.splitpin new Heron --kind jet
[ ! -e "$HOME/.local" ] || fail "a folder was made"

about "a new logbook gets its folder, for its owner alone"
run 0 sp new Heron --kind petrol-sterndrive
[ -s "$XDG_DATA_HOME/splitpin/boat.splitpin" ] || fail "no logbook"
is drwx------ "$(ls -ld "$XDG_DATA_HOME/splitpin" | cut -c 1-10)" "mode"
rm -r "$HOME/.local"
run 0 sp new --demo
run 0 sp due

about "the boat says which catalogue its tasks came from"
rm -r "$HOME/.local"
run 0 sp new Heron --kind petrol-sterndrive
run 0 sp_bare boat Jane --kind jet
run 0 sp export boats
says ",petrol-sterndrive,"
is 1 "$(grep -c ',petrol-sterndrive,.*,petrol-sterndrive,' out)" "boats with a catalogue"
run 0 sp verify

about "without its files the demo says where they were looked for, and makes nothing"
rm -r "$HOME/.local"
SPLITPIN_DATA=$test_dir/nowhere run 4 sp new --demo
says_err "$test_dir/nowhere/demo"
[ ! -e "$XDG_DATA_HOME/splitpin/boat.splitpin" ] || fail "something was made"
