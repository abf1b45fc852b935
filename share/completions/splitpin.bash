# bash completion for splitpin: the program itself tells its commands and options.
_splitpin()
{
	local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]} cmd='' job='' w i
	local records='boats engines meters fittings parts stays seasons outings happenings tasks limits services measurements bounds rates places climates'
	for ((i = 1; i < COMP_CWORD; i++)); do
		w=${COMP_WORDS[i]}
		case $w in
		--file | --boat | --today | --who) ((i++)) ;;
		-*) ;;
		*) cmd=$w; break ;;
		esac
	done
	# The job meant, where its name was typed.
	if [ "$cmd" = job ] && [ $((i + 1)) -lt "$COMP_CWORD" ]; then
		job=${COMP_WORDS[i+1]}
		case $job in -*) job='' ;; esac
	fi
	case $prev in
	--air) w='c1 c2 c3 c4 c5 cx' ;;
	--water) w='fresh brackish salt' ;;
	--berth | --winter) w='afloat trailer ashore roof' ;;
	--outcome) w='done good bad renewed topped-up not-seen claimed' ;;
	--at | --until) w='launch mid-season haul-out lay-up' ;;
	--fuel) w='petrol diesel' ;;
	--by) w=''; [ "$cmd" = stores ] && w='season fitting hour year' ;;
	--level) w='hold mend watch' ;;
	--waive) w=$(splitpin plan --names 2>/dev/null) ;;
	--kind) w='petrol-sterndrive diesel-sterndrive inboard outboard jet sail' ;;
	--tick | --skip) w=$(splitpin plan --names 2>/dev/null) ;;
	--units) w='inch metric' ;;
	--for) w='yard owner both' ;;
	--paper) w='A4 Letter' ;;
	--fitting) w=$(splitpin fitting --names 2>/dev/null) ;;
	--mine) w=$(splitpin plan --names 2>/dev/null) ;;
	--template | --add-template) w=$(splitpin job templates --names 2>/dev/null) ;;
	--task | --add-task | --done | --undone) w=$(splitpin plan --names 2>/dev/null) ;;
	--back | --correct | --drop)
		[ "$cmd" != job ] || w=$(splitpin job ${job:+"$job"} --list --names 2>/dev/null) ;;
	--step | --skip-step) w=$(splitpin job ${job:+"$job"} --steps --names 2>/dev/null) ;;
	--file) COMPREPLY=($(compgen -f -- "$cur")); return ;;
	*) w='' ;;
	esac
	if [ -z "$w" ]; then
		if [ -z "$cmd" ]; then
			case $cur in
			-*) w=$(splitpin help --options 2>/dev/null | sed 's/^/--/') ;;
			*) w=$(splitpin help --commands 2>/dev/null) ;;
			esac
		else
			case $cur in
			-*) w=$(splitpin help --options "$cmd" 2>/dev/null | sed 's/^/--/') ;;
			*)
				case $cmd in
				help) w=$(splitpin help --commands 2>/dev/null) ;;
				did | why | plan) w=$(splitpin plan --names 2>/dev/null) ;;
				fitting | found) w=$(splitpin fitting --names 2>/dev/null) ;;
				figure)
					if [ "$prev" = "$cmd" ]; then w=$(splitpin fitting --names 2>/dev/null)
					else w=$(splitpin figure --names 2>/dev/null); fi ;;
				job)
					if [ "$prev" = "$cmd" ]; then w="start templates $(splitpin job --all --names 2>/dev/null)"
					else return; fi ;;
				place) w=$(splitpin place --names 2>/dev/null) ;;
				measure) w=$(splitpin measure --names 2>/dev/null) ;;
				season) w='commissioning first-day mid-season haul-out lay-up sea-trial sheet' ;;
				stores) w='add set number bought ordered arrived took count need want costs' ;;
				stay) w='afloat trailer ashore roof' ;;
				import | export)
					if [ "$prev" = "$cmd" ]; then
						w=$records
						[ "$cmd" = import ] || w="$w everything"
					else COMPREPLY=($(compgen -f -- "$cur")); return; fi ;;
				*) COMPREPLY=($(compgen -f -- "$cur")); return ;;
				esac ;;
			esac
		fi
	fi
	COMPREPLY=($(compgen -W "$w" -- "$cur"))
}
complete -F _splitpin splitpin
