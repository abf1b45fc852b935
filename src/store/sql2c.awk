# Turns .sql files into one enum and two tables of strings (mode=h or mode=c).  "--! NAME" begins a statement;
# comments stay in the .sql file.
function c_string(s)
{
	gsub(/\\/, "\\\\", s)
	gsub(/"/, "\\\"", s)
	gsub(/\t/, "\\t", s)
	return "\"" s "\\n\""
}

/^--!/ {
	if ($0 !~ /^--! [A-Z][A-Z0-9_]*$/ || seen[$2]++) {
		print FILENAME ":" FNR ": not a new name: " $0 >"/dev/stderr"
		bad = 1
		exit 1
	}
	name[++n] = $2
	next
}

{ sub(/[ \t]*--.*$/, "") }

n && NF { text[n] = text[n] "\n\t\t" c_string($0) }

END {
	if (bad)
		exit 1
	for (i = 1; i <= n; i++)
		if (text[i] == "") {
			print name[i] ": no statement" >"/dev/stderr"
			exit 1
		}
	print "/* Made from the .sql files by sql2c.awk: edit those. */"
	if (mode == "h") {
		print "#ifndef STORE_SQL_H\n#define STORE_SQL_H\n\nenum sql_id {"
		for (i = 1; i <= n; i++)
			print "\tSQL_" name[i] ","
		print "\tSQL_COUNT\n};\n"
		print "extern const char *const sql_text[SQL_COUNT];\nextern const char *const sql_name[SQL_COUNT];\n\n#endif"
	} else {
		print "#include \"store/sql.h\"\n\nconst char *const sql_text[SQL_COUNT] = {"
		for (i = 1; i <= n; i++)
			print "\t[SQL_" name[i] "] =" text[i] ","
		print "};\n\nconst char *const sql_name[SQL_COUNT] = {"
		for (i = 1; i <= n; i++)
			print "\t[SQL_" name[i] "] = \"" name[i] "\","
		print "};"
	}
}
