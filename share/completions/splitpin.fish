# fish completion for splitpin: the program itself tells its commands and options.
function __splitpin_command
	set -l words (commandline -opc)
	set -e words[1]
	set -l skip 0
	for w in $words
		if test $skip = 1
			set skip 0
		else if contains -- $w --file --boat --today --who
			set skip 1
		else if not string match -q -- '-*' $w
			echo $w
			return 0
		end
	end
	return 1
end
function __splitpin_options
	splitpin help --options (__splitpin_command) 2>/dev/null | string replace -r '^' -- --
end
complete -c splitpin -n 'not __splitpin_command' -f -a '(splitpin help --commands 2>/dev/null)'
complete -c splitpin -n 'string match -q -- "-*" (commandline -ct)' -f -a '(__splitpin_options)'
complete -c splitpin -n 'contains -- (__splitpin_command) did why plan' -f -a '(splitpin plan --names 2>/dev/null)'
complete -c splitpin -n 'contains -- (__splitpin_command) fitting found figure' -f -a '(splitpin fitting --names 2>/dev/null)'
complete -c splitpin -n 'contains -- (__splitpin_command) place' -f -a '(splitpin place --names 2>/dev/null)'
complete -c splitpin -n 'contains -- (__splitpin_command) help' -f -a '(splitpin help --commands 2>/dev/null)'
complete -c splitpin -n 'contains -- (__splitpin_command) figure' -f -a '(splitpin figure --names 2>/dev/null)'
complete -c splitpin -n 'contains -- (__splitpin_command) measure' -f -a '(splitpin measure --names 2>/dev/null)'
complete -c splitpin -n 'contains -- (__splitpin_command) season' -f -a 'commissioning first-day mid-season haul-out lay-up sea-trial sheet'
complete -c splitpin -n 'contains -- (__splitpin_command) stay' -f -a 'afloat trailer ashore roof'
complete -c splitpin -n 'contains -- (__splitpin_command) import export' -a 'boats engines meters fittings parts stays seasons outings happenings tasks limits services measurements bounds rates places climates'
complete -c splitpin -n 'contains -- (__splitpin_command) export' -a everything
