#!/bin/sh
# No file bears a path of one machine, a note to come back to, or a mark of an unfinished merge.

set -u
export LC_ALL=C
cd "${top_srcdir:-.}" || exit 99
status=0

files=$(find README.md DEVELOPERS.md configure.ac Makefile.am .ci .clang-format .clang-tidy .editorconfig .gitignore \
	src tests share man -type f \( -name '.*' -o -name '*.*' -o -name run -o -name _splitpin \) \
	! -name '*.o' ! -name '*.a' ! -name '*.log' ! -name '*.trs' ! -name '*.P*' ! -name '.dirstamp' ! -name '*.pyc')

none()	# what, pattern
{
	# shellcheck disable=SC2086
	found=$(grep -nIE -e "$2" $files /dev/null) || return
	echo "$1:"
	printf '%s\n' "$found" | cut -c 1-160 | sed 's/^/\t/'
	status=1
}

# The brackets keep the patterns from finding themselves.
none "a path of one machine" '(^|[^A-Za-z0-9._}-])/(wor[k]|roo[t]|home/[a-z]+|User[s]/[A-Za-z]+)/'
none "a path that leads out of the checkout" '[.]\./share[d]/'
none "left over" '(^|[^A-Za-z0-9_])(TOD[O]|FIXM[E]|HAC[K])([^A-Za-z0-9_]|$)|(^|[ *#/])XX[X]([: ]|$)'
none "an unfinished merge" '^(<<<<<<[<]|>>>>>>[>]|======[=]$)'
exit $status
