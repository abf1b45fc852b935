#!/bin/sh
# The engine computes, values in and values out: its archive calls no I/O, clock, locale, chance or process.  What
# it calls in base/ is held to the same, with the text functions of GLib besides.

set -u
export LC_ALL=C
builddir=${top_builddir:-.}

undefined() { "${NM:-nm}" -u "$1" | awk '$1 == "U" { print $2 }' | sed 's/@.*//' | sort -u; }
defined() { "${NM:-nm}" -g --defined-only "$@" | awk 'NF == 3 { print $3 }' | sort -u; }

# What the compiler itself calls, memory, sorting, mathematics, GLib's containers.
compiler='__stack_chk_.*|__(asan|ubsan|sanitizer|gcov|llvm|aeabi)_.*|_GLOBAL_OFFSET_TABLE_|__[a-z]+[sdt]i[0-9]?'
memory='mem(chr|cmp|cpy|move|set)|bcmp|str(chr|cmp|cspn|n?len|ncmp|pbrk|rchr|spn|str)|__(mem|str)[a-z]+_chk|qsort|bsearch'
math='acosh?|asinh?|atan[2h]?|cbrt|ceil|copysign|cosh?|erfc?|exp|exp2|expm1|fabs|fdim|floor|fma|fmax|fmin|fmod|frexp'
math="$math|hypot|ldexp|lgamma(_r)?|log|log10|log1p|log2|l?l?r(int|ound)|modf|nan|nearbyint|pow|remainder|scalbl?n"
math="$math|sinh?|sqrt|tanh?|tgamma|trunc|__(isnan|isinf|finite|fpclassify|signbit)"
glib='(try_)?(malloc|realloc)(0|_n|0_n)?|free|free_sized|clear_pointer|memdup2?|slice_[a-z_0-9]+|qsort_with_data'
glib="$glib|(array|ptr_array|byte_array|hash_table|queue|s?list|tree|sequence)_[a-z_]+|(direct|int|int64|double|str)_(hash|equal)"
glib="$glib|assertion_message(_expr)?|return_if_fail_warning|strdup|strndup|strcmp0|strlcpy"
glib="$glib|ascii_(dtostr|formatd|strtod|strtoll|strtoull|digit_value|table)"
common="$compiler|$memory|($math)f?|g_($glib)"

# Text and messages, without a locale.
text='strdup_v?printf|v?snprintf|strconcat|strjoinv?|strsplit(_set)?|strfreev|strv_[a-z_]+|str_has_(prefix|suffix)|strchug'
text="$text|strchomp|strlcat|strrstr|strstr_len|str_is_ascii|string_[a-z_]+|ascii_[a-z_]+|utf8_[a-z_0-9]+|unichar_[a-z_]+"
text="$text|unicode_[a-z_]+|(set|propagate|propagate_prefixed|prefix|clear)_error(_literal)?|error_[a-z_]+"
text="$text|quark_(from_(static_)?|to_)string|date_(valid|clear|set|get|add|subtract|is|days|new|free)[a-z_]*"

status=0
check()	# archive, allowed names
{
	[ -f "$builddir/src/$1" ] || { echo "src/$1 is not built"; status=1; return; }
	"${NM:-nm}" -u "$builddir/src/$1" >/dev/null || exit 99
	bad=$(undefined "$builddir/src/$1" | grep -vxF -e "$ours" | grep -vE "^($2)\$")
	[ -z "$bad" ] || { echo "src/$1 calls what it must not:"; printf '%s\n' "$bad" | sed 's/^/\t/'; status=1; }
}

ours=$(defined "$builddir/src/libengine.a" "$builddir/src/libbase.a")
check libengine.a "$common|gsl_[A-Za-z0-9_]+"
check libbase.a "$common|v?snprintf|g_($text)"
exit $status
