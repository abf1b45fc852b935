#!/bin/sh
# make_libreoffice.sh SPLITPIN DATA OUT: the filled sheets that tests/cli/yard.sh reads, as LibreOffice Calc writes them.
#
# Those beside this script were made with LibreOffice 7.4.7.2 of Debian 12 (libreoffice-calc-nogui), in American and in German
# settings: the yard's answers are typed in as text, Calc reads the file, taking what looks like a date or a number for one, keeps
# it as a spreadsheet, and saves that as CSV with semicolons, cells as they are shown.  A build needs none of this.
set -eu

splitpin=$1 data=$2 out=$3
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
export HOME="$work" LC_ALL=C.UTF-8 SPLITPIN_DATA="$data" SPLITPIN_FILE="$work/boat.splitpin"

# As tests/cli/yard.sh does it: the lines' numbers must be the same.
sp() { "$splitpin" --today 2026-11-25 --who tester "$@" >>sp.out; }
sp new --demo
sp found drive/transom/gimbal-bearing "rough, growls in turns" --level hold
sp yard sheet.csv --task bellows-ujoint.renew --task gimbal-bearing.grease --task steering.cable-grease --task cover.inspect

# settings LOCALE: a profile of Calc's own, as a user of that country has it.
settings()
{
	rm -rf profile
	mkdir -p profile/user
	cat >profile/user/registrymodifications.xcu <<END
<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema"
	xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>$1</value></prop></item>
</oor:items>
END
}

calc() { soffice "-env:UserInstallation=file://$work/profile" --headless --convert-to "$@" >>calc.log 2>&1; }

# convert LOCALE NUMBER DECIMAL DATE1 DATE2 NAME: the number is the locale's in the filters' options.
convert()
{
	python3 -B "$here/../../cli/yard_fill.py" sheet.csv "$6.csv" comma \
		1 "done; sheds water, vents open" "" "" "" "$4" JW \
		2 "not done" "" "" "no gun, spring" "$5" JW \
		3 "done" "0${3}5" "20${3}25" "" "$5" JW \
		4 "replaced; all folds sound, clamps doubled" "2${3}5" "1185${3}50" 'alt: Öl war trüb; "milky"' "$4" JW
	settings "$1"
	calc ods --infilter="CSV:44,34,76,1,,$2,false,true" "$6.csv"
	rm "$6.csv"
	calc "csv:Text - txt - csv (StarCalc):59,34,76,1,,$2,false,true,false" "$6.ods"
	cp "$6.csv" "$out/$6.csv"
}

convert en-US 1033 . 11/20/2026 11/21/2026 libreoffice
convert de-DE 1031 , 20.11.2026 21.11.2026 libreoffice-de
