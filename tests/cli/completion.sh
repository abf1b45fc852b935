#!/bin/sh
# What the shells offer for a job: its names, its templates, and the numbers of what is open in it.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
files=$top_srcdir/share/completions

new_heron
run 0 sp job start --name off --template drive-off
run 0 sp job start --name leak "Find the leak"
run 0 sp job leak --off "6 nuts 5/8 tray 2"
run 0 sp job leak --off "1 hose"
run 0 sp job leak --back 1 --count 6

# The shells run splitpin by its name.
mkdir -p "$test_dir/bin"
printf '#!/bin/sh\nexec "%s" --today %s "$@"\n' "$SPLITPIN" "$today" >"$test_dir/bin/splitpin"
chmod +x "$test_dir/bin/splitpin"
PATH=$test_dir/bin:$PATH
export PATH

about "names and numbers are told a line each"
run 0 sp job --names
says leak
says off
run 0 sp job templates --names
says drive-off
says_not ":"
run 0 sp job leak --list --names
is 2 "$(cat out)" "open lines"
run 0 sp job off --steps --names
is 39 "$(head -n 1 out)" "the first open step"
run 2 sp job leak --names
run 2 sp job --off "1 bolt" --names

offers()
{
	about "$1 offers $2"
	case " $(tr '\n' ' ' <out) " in *" $2 "*) ;; *) fail "it offers $(cat out)" ;; esac
}

in_bash()
{
	bash -c '. "$0"; COMP_WORDS=("$@" ""); COMP_CWORD=$#; COMPREPLY=(); _splitpin; printf "%s\n" "${COMPREPLY[@]}"' \
		"$files/splitpin.bash" "$@" >out
}

in_fish() { fish --no-config -c 'source $argv[1]; complete -C "$argv[2] " | cut -f 1' "$files/splitpin.fish" "$*" >out; }

for shell in bash fish; do
	command -v $shell >/dev/null || continue
	"in_$shell" splitpin job
	offers $shell templates
	offers $shell leak
	"in_$shell" splitpin job start --template
	offers $shell drive-off
	"in_$shell" splitpin job leak --back
	offers $shell 2
	"in_$shell" splitpin job off --step
	offers $shell 39
	"in_$shell" splitpin job off --done
	offers $shell coupler.grease
done
if command -v zsh >/dev/null; then
	about "zsh can read its file"
	run 0 zsh -n "$files/_splitpin"
fi
