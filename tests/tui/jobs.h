/* What the tests of jobs on the screen do by keys, over the demo logbook. */
#ifndef TESTS_TUI_JOBS_H
#define TESTS_TUI_JOBS_H

#include "form_keys.h"

#include "tui/job_view.h"

/* To the choice of what a job is for, and tick the line that holds the words. */
static inline void
pick(const char *words)
{
	find(words);
	key(' ');
	find("");
}

/* From the due list: a job of a template, its cautions read. */
static inline void
start_job(const char *template)
{
	key('J');
	key('a');
	pick(template);
	key(K_ENTER);
	ck_assert(in_form());
	key(K_ENTER);
	ck_shows("before the work");
	key(K_ENTER);
	ck_shows("UNDER WAY");
}

static inline void
drive_off(void)
{
	start_job("Take the drive off");
}

static inline struct job_sheet *
sheet(void)
{
	struct job_data *d = job_shown(app);

	ck_assert(d && d->sheet);
	return d->sheet;
}

static inline int
lines(void)
{
	return (int)sheet()->removals->len;
}

/* The last line of the strip-down list. */
static inline const struct removal *
last_line(void)
{
	return job_removal_at(sheet(), lines() - 1);
}

static inline const struct removal *
line_no(gint64 no)
{
	for (int i = 0; i < lines(); i++)
		if (job_removal_at(sheet(), i)->no == no)
			return job_removal_at(sheet(), i);
	ck_abort_msg("no line %d", (int)no);
	return NULL;
}

static inline void
to_side(enum job_face face)
{
	while (job_shown(app)->face != face)
		key(K_TAB);
}

/* A line that came off, typed and written. */
static inline void
off(const char *line)
{
	to_side(FACE_OFF);
	key('a');
	type(line);
	key(K_ENTER);
	key(K_ESC);
}

static inline gboolean
in_line(void)
{
	return app->view[app->depth - 1].kind == &view_job_line;
}

/* The selected line of the strip-down list; NULL: another row. */
static inline const struct removal *
selected_line(void)
{
	const struct job_row *r = job_selected(job_shown(app));

	return r && r->kind == ROW_REMOVAL ? job_removal_at(sheet(), r->at) : NULL;
}

#endif
