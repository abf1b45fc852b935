/* One line of the strip-down list as it is typed with greasy hands.
 *
 *	[COUNT] WHAT [FIGURE] [ORIENTATION] [STATE] [TRAY]
 *
 * The parts may stand in any order.  Commas and blanks separate words; case does not count.
 *
 *	count		a whole number that begins the line or stands before a thing to count, "2x", "x2", or one to twelve in
 *			letters; so 1 1/16 at the beginning is one of 1/16: a size there is written 1-1/16
 *	tray		tray, bag, box, tin, jar, cup, tub and its number or letter; tray and bag also alone at the end
 *	state		renew, renewed, replace, new at the end; missing, gone, lost; reuse, reused; left over, extra
 *	figure		5/8, 1-1/16, 1 1/16, 2.4, each with in, ", mm, cm or nothing; M8, M10x1.25, 3/8-16, #10;
 *			a length after x: 1/8 x 1-1/2, M8 x 30
 *	as found	a figure and how it stands: proud, deep, high, low, out, recessed, up, down, turns, threads, deg, %;
 *			4 o'clock; what stands in quotes; what follows at, found, found at, or is; a position (neutral, forward,
 *			open, ...) that ends the line of a lever, a gear, a valve or the like
 *	orientation	thick side out, arrow forward, lip facing aft, upside down; up, down, forward or aft at the end
 *
 * A figure that is no "as found" is the size of a fastener or of its tool; where neither a count nor a thing to count was named
 * it is how a setting was found.  What is none of these stays in `what`, in its order: nothing that was typed is dropped.
 *
 * Kind, by the words: retainer (cotter, clip, split pin, roll pin, E-ring, snap ring, retainer, tab washer, lock wire) before plug
 * (plug, drain; not a spark plug) before fastener (bolt, nut, stud, screw, washer); setting without a count and with a figure or a
 * position; else part, or fastener of clamps that are counted.  So what has to be counted back is counted, also when its line
 * names something else as well. */
#ifndef LOGBOOK_REMOVAL_PARSE_H
#define LOGBOOK_REMOVAL_PARSE_H

#include "logbook/book.h"

/* Fill kind, what, count, size, as_found, orientation, tray, state of r, which was initialised.  Without words for it state is
 * reuse.  With what NULL afterwards the line named no thing, which is right where another is corrected.  ERR_INPUT: nothing was
 * typed, it is no text, or a number is left that is no count. */
gboolean removal_parse(const char *line, struct removal *r, GError **err);

/* A word of its name that looks like a misspelt retainer, plug or fastener, which would not be counted out and in, or like what
 * tells the state or the tray; and what is perhaps meant: "cotter" for coter, "missing" for mising.  FALSE: none does. */
gboolean removal_doubt(const struct removal *r, char **word, const char **meant);

/* What was understood, in full: "6 bolts; fastener, size 5/8 in, tray 2, goes back"; the caller's. */
char *removal_understood(const struct removal *r);
/* In short, as a list has it: "6 bolts 5/8 in"; the caller's. */
char *removal_words(const struct removal *r);

#endif
