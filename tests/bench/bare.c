/* The floor that screens are measured against: open a SQLite file, draw one query, move a line with j and k, end with q.
 *
 *	bare FILE SQL */
#include <curses.h>
#include <locale.h>
#include <sqlite3.h>
#include <stdio.h>

enum { ROWS = 20 };

int
main(int argc, char **argv)
{
	sqlite3 *db;
	sqlite3_stmt *s;
	int n = 0, at = 0, key;

	setlocale(LC_ALL, "");
	if (argc != 3 || sqlite3_open_v2(argv[1], &db, SQLITE_OPEN_READONLY, NULL) ||
	    sqlite3_prepare_v2(db, argv[2], -1, &s, NULL) || !newterm(NULL, stdout, stdin))
		return 2;
	cbreak();
	noecho();
	keypad(stdscr, TRUE);
	for (; n < ROWS && sqlite3_step(s) == SQLITE_ROW; n++)
		mvprintw(n + 1, 2, "%s", (const char *)sqlite3_column_text(s, 0));
	sqlite3_finalize(s);
	mvaddstr(ROWS + 3, 0, "? help");
	do {
		mvaddch(at + 1, 0, '>');
		refresh();
		key = getch();
		mvaddch(at + 1, 0, ' ');
		at = key == 'j' && at + 1 < n ? at + 1 : key == 'k' && at ? at - 1 : at;
	} while (key != 'q');
	endwin();
	sqlite3_close(db);
	return 0;
}
