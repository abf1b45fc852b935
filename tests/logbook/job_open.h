/* long: what every test of jobs begins with.
 * A sterndrive with the shipped catalogue, and jobs on it. */
#ifndef TESTS_LOGBOOK_JOB_OPEN_H
#define TESTS_LOGBOOK_JOB_OPEN_H

#include "logbook/removal.h"

#include "open.h"

/* A sterndrive with the shipped catalogue. */
static inline void
setup_boat(void)
{
	struct new_boat n = { .engine = { { "main", 100 * H, NONE, FALSE } }, .n_engines = 1 };
	g_autofree char *catalogues = catalogue_folder();
	g_autoptr(GError) err = NULL;

	setup();
	who.data = data_folder();
	book = book_create(path, &who, &err);
	ck_assert_msg(book != NULL, "%s", err ? err->message : "?");
	record_init(RECORD_BOAT, &n.boat);
	n.catalogue = catalogues;
	n.boat.name = g_strdup("Odd Duck");
	n.boat.kind = KIND_PETROL_STERNDRIVE;
	n.boat.berth = STAND_TRAILER;
	n.boat.winter = STAND_ROOF;
	n.boat.water = WATER_FRESH;
	n.boat.launch = 415;
	n.boat.haul_out = 1015;
	n.boat.since = day_from_ymd(2026, 1, 1);
	ck_assert_msg(book_add_boat(book, &n, &err), "%s", err ? err->message : "?");
	ck_assert(book_boat(book, "Odd Duck", &boat, &err));
	record_clear(RECORD_BOAT, &n.boat);
}

static inline void
start(struct job *job, const char *const *templates, const char *const *tasks, const char *title)
{
	struct job_form f = { .templates = templates, .tasks = tasks };
	g_autoptr(GError) err = NULL;

	record_init(RECORD_JOB, &f.what);
	f.what.boat = boat.id;
	f.what.title = g_strdup(title);
	ck_assert_msg(book_job_start(book, &f, &err), "%s", err ? err->message : "?");
	*job = f.what;
}

static const char *const drive_off[] = { "drive-off", NULL };

static inline struct job_sheet *
sheet_of(const struct job *job)
{
	g_autoptr(GError) err = NULL;
	struct job_sheet *s = book_job_sheet(book, job, &err);

	ck_assert_msg(s != NULL, "%s", err ? err->message : "?");
	return s;
}

static inline const struct job_aim *
aim(const struct job_sheet *s, const char *name)
{
	for (guint i = 0; i < s->aims->len; i++)
		if (!strcmp(((const struct job_aim *)(const void *)s->aims->data)[i].name, name))
			return &((const struct job_aim *)(const void *)s->aims->data)[i];
	return NULL;
}

/* How many steps say that. */
static inline int
saying(const struct job_sheet *s, const char *text)
{
	int n = 0;

	for (guint i = 0; i < s->steps->len; i++)
		n += strstr(((const struct step *)(const void *)s->steps->data)[i].text, text) != NULL;
	return n;
}

/* Write a line; its number. */
static inline gint64
off(const struct job *job, const char *line)
{
	struct removal_form f = { .line = line };
	g_autoptr(GError) err = NULL;
	gint64 no;

	ck_assert_msg(book_job_off(book, job, &f, &err), "%s: %s", line, err ? err->message : "?");
	no = f.what.no;
	removal_form_clear(&f);
	return no;
}

/* Close a line; the complaint, the caller's, or NULL. */
static inline char *
back(const struct job *job, gint64 no, gint64 count, const char *left, const char *why)
{
	struct removal_back k = { .count = count, .left = left, .why = why };
	g_autofree char *number = g_strdup_printf("%d", (int)no);
	g_autoptr(GError) err = NULL;
	struct removal r;
	gboolean ok;

	ck_assert(book_find_removal(book, job, number, &r, NULL));
	ok = book_job_back(book, job, &r, &k, &err);
	record_clear(RECORD_REMOVAL, &r);
	g_free(k.note);
	return ok ? NULL : g_strdup(err->message);
}

static inline void
expect_back(const char *complaint, char *got)
{
	if (!complaint)
		ck_assert_msg(!got, "%s", got ? got : "");
	else
		ck_assert_msg(got && strstr(got, complaint), "\"%s\" does not say %s", got ? got : "nothing", complaint);
	g_free(got);
}

/* Do an aim; whether it counts. */
static inline gboolean
done(const struct job *job, const char *name)
{
	struct service_form f = { .dated = TRUE };
	struct service_said said;
	g_autoptr(GError) err = NULL;
	gboolean counts;

	record_init(RECORD_SERVICE, &f.what);
	record_init(RECORD_PART, &f.part);
	f.what.seen = g_strdup("as it should be");
	ck_assert_msg(book_job_done(book, job, name, &f, &said, &err), "%s: %s", name, err ? err->message : "?");
	counts = said.counts;
	service_said_clear(&said);
	record_clear(RECORD_SERVICE, &f.what);
	record_clear(RECORD_PART, &f.part);
	return counts;
}

/* See the proofs of a task. */
static inline void
prove(const struct job *job, const char *name)
{
	struct job_sheet *s = sheet_of(job);
	gint64 task = aim(s, name)->aim.task;

	for (guint i = 0; i < s->steps->len; i++) {
		const struct step *p = &((const struct step *)(const void *)s->steps->data)[i];

		if (p->kind == STEP_PROOF && p->task == task)
			ck_assert(book_job_step(book, job, p->no, "seen", NULL));
	}
	job_sheet_free(s);
}

static inline enum aim_state
state_of(const struct job *job, const char *name)
{
	struct job_sheet *s = sheet_of(job);
	enum aim_state state;

	ck_assert_msg(aim(s, name) != NULL, "no aim %s", name);
	state = aim(s, name)->state;
	job_sheet_free(s);
	return state;
}

#endif
