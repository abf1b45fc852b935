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
complete -c splitpin -n 'contains -- (__splitpin_command) yard' -a read
complete -c splitpin -n 'contains -- (__splitpin_command) history' -a '(splitpin fitting --names 2>/dev/null)'
complete -c splitpin -n 'contains -- (__splitpin_command) stores' -f -a 'add set number bought ordered arrived took count need want costs (splitpin stores --names 2>/dev/null)'
# The job meant, where its name was typed.
function __splitpin_job
	set -l words (commandline -opc)
	set -l at (contains -i -- job $words)
	and set -q words[(math $at + 1)]
	and not string match -q -- '-*' $words[(math $at + 1)]
	and echo $words[(math $at + 1)]
end
function __splitpin_after
	test "$(__splitpin_command)" = job; and contains -- (commandline -opc)[-1] $argv
end
complete -c splitpin -n '__splitpin_after job' -f -a 'start templates (splitpin job --all --names 2>/dev/null)'
complete -c splitpin -n '__splitpin_after --template --add-template' -f -a '(splitpin job templates --names 2>/dev/null)'
complete -c splitpin -n '__splitpin_after --task --add-task --done --undone' -f -a '(splitpin plan --names 2>/dev/null)'
complete -c splitpin -n '__splitpin_after --back --correct --drop' -f -a '(splitpin job (__splitpin_job) --list --names 2>/dev/null)'
complete -c splitpin -n '__splitpin_after --step --skip-step' -f -a '(splitpin job (__splitpin_job) --steps --names 2>/dev/null)'
complete -c splitpin -n 'contains -- (__splitpin_command) stay' -f -a 'afloat trailer ashore roof'
complete -c splitpin -n 'contains -- (__splitpin_command) import export' -a 'boats engines meters fittings parts stays seasons outings happenings tasks limits services measurements bounds rates places climates'
complete -c splitpin -n 'contains -- (__splitpin_command) export' -a everything
