#!/bin/sh
# Every source and test that is there is built and run: it stands in src/local.mk or tests/local.mk.  A test forgotten
# there would never run, and nobody would notice.

set -u
export LC_ALL=C
cd "${top_srcdir:-.}" || exit 99
status=0
listed=$(sed 's/[\\ \t]/\n/g' src/local.mk tests/local.mk)

for file in $(find src tests -name '*.[ch]' -o -name '*.sh' -o -name '*.py' -o -name '*.sql' -o -name '*.awk' | sort); do
	case $file in
	src/store/sql.[ch]) continue ;;	# made from the .sql files
	tests/data/*|tests/*/data/*) continue ;;	# taken whole
	tests/*/test_*.c) entry=${file%.c} ;;	# the program, whose one source it is
	*) entry=$file ;;
	esac
	printf '%s\n' "$listed" | grep -qxF -e "$entry" -e "$file" && continue
	echo "$file is in no list of ${file%%/*}/local.mk"
	status=1
done
exit $status
