#!/bin/sh
# Every command and option is in the man page and in the program's own help; every word that is stored or typed is in a
# man page.  The lists come from the program's tables.

. "${top_srcdir:-.}/tests/lib.sh"
status=0
missing() { echo "$*"; status=1; }

# mdoc as plain text: options with their dashes, one word after another.
plain() { sed -e 's/\\-/-/g' -e 's/\\&//g' -e 's/Fl -/--/g' -e 's/Fl \([A-Za-z]\)/-\1/g' "$@"; }
plain "$top_srcdir/man/splitpin.1" >page
plain "$top_srcdir"/man/*.[15] >pages

has()	# file, word: it stands there as a word of its own
{
	grep -qE -e "(^|[^A-Za-z0-9-])$2([^A-Za-z0-9-]|\$)" "$1"
}

splitpin help --commands >commands || fail "splitpin help --commands failed"
[ -s commands ] || fail "splitpin help --commands prints nothing"
splitpin --help >overview || fail "splitpin --help failed"

while read -r command; do
	grep -qE -e "^\.(It|Ss|Sh|Ic|Cm) (Ic |Cm )?$command( |\$)" page || has page "$command" ||
		missing "man/splitpin.1: the command $command is missing"
	has overview "$command" || missing "splitpin --help: the command $command is missing"
	if ! splitpin help "$command" >help </dev/null || ! splitpin help --options "$command" >options </dev/null; then
		missing "splitpin help $command, or help --options $command: failed"
		continue
	fi
	while read -r option; do
		option=--${option#--}
		has page "$option" || missing "man/splitpin.1: the option $option of $command is missing"
		has help "$option" || has overview "$option" || missing "splitpin help $command: the option $option is missing"
	done <options
done <commands

grep -oE '"[a-z]+(-[a-z]+)*"' "$top_srcdir/src/model/words.c" | tr -d '"' | sort -u >words
[ -s words ] || fail "no words found in src/model/words.c"
while read -r word; do
	has pages "$word" || missing "man/: the word $word is missing"
done <words

exit $status
