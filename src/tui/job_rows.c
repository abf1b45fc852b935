/* The rows of a job's four sides. */
#include "tui/job_view.h"

#include "logbook/caution.h"
#include "logbook/removal_parse.h"

/* Keys of rows that are no records: records' keys are far beyond. */
enum { KEY_NOTE = 1, KEY_TIME = 2, KEY_CAUTION = 3, KEY_WHILE = 1000, KEY_STORES = 1500, KEY_OFFER = 2000 };

const struct step *
job_step_at(const struct job_sheet *s, int i)
{
	return &((const struct step *)(const void *)s->steps->data)[i];
}

const struct job_aim *
job_aim_at(const struct job_sheet *s, int i)
{
	return &((const struct job_aim *)(const void *)s->aims->data)[i];
}

const struct removal *
job_removal_at(const struct job_sheet *s, int i)
{
	return &((const struct removal *)(const void *)s->removals->data)[i];
}

const struct job_offer *
job_offer_at(const struct job_sheet *s, int i)
{
	return &((const struct job_offer *)(const void *)s->offers->data)[i];
}

int
job_next_offer(const struct job_sheet *s, int from)
{
	int n = (int)s->offers->len;

	for (int k = 0; k < n; k++)
		if (!job_offer_at(s, (MAX(from, 0) + k) % n)->taken)
			return (MAX(from, 0) + k) % n;
	return -1;
}

int
job_next_unwritten(const struct job_sheet *s, int from)
{
	int n = (int)s->removals->len;

	for (int k = 0; k < n; k++) {
		int i = (MAX(from, 0) + k) % n;
		const struct removal *r = job_removal_at(s, i);

		if (r->kind == REMOVAL_SETTING && !r->as_found && r->back == NONE)
			return i;
	}
	return -1;
}

const struct job_row *
job_row_at(const struct job_data *d, const struct row *row)
{
	return row && row->index >= 0 ? &((const struct job_row *)(const void *)d->row[d->face]->data)[row->index]
				      : NULL;
}

const struct job_row *
job_selected(const struct job_data *d)
{
	return d->sheet ? job_row_at(d, list_row(&d->list[d->face])) : NULL;
}

gboolean
job_row_open(const struct job_data *d, const struct job_row *r)
{
	const struct job_sheet *s = d->sheet;

	switch (r->kind) {
	case ROW_STEP:
		return job_step_at(s, r->at)->done == NONE && !job_step_at(s, r->at)->seen;
	case ROW_AIM:
		return job_aim_at(s, r->at)->state == AIM_OPEN || job_aim_at(s, r->at)->state == AIM_UNPROVED;
	case ROW_REMOVAL:
		return job_removal_at(s, r->at)->back == NONE
		    && (d->face == FACE_REFIT
			|| (job_removal_at(s, r->at)->kind == REMOVAL_SETTING && !job_removal_at(s, r->at)->as_found));
	case ROW_OFFER:
		return !job_offer_at(s, r->at)->taken;
	case ROW_NOTE:
	case ROW_TIME:
	case ROW_STORES:
	case ROW_CAUTION:
	case ROW_WHILE:
		break;
	}
	return FALSE;
}

void
job_select_open(struct job_data *d, enum job_face face, int from)
{
	struct list *l = &d->list[face];
	enum job_face was = d->face;
	int n = (int)l->rows->len;

	d->face = face;
	for (int k = 0; k < n; k++) {
		const struct row *row = &((const struct row *)(const void *)l->rows->data)[(MAX(from, 0) + k) % n];
		const struct job_row *r = job_row_at(d, row);

		if (r && !row->hidden && job_row_open(d, r)) {
			list_select(l, row->key);
			break;
		}
	}
	d->face = was;
}

/* ---- filling ---- */

static void
heading(struct job_data *d, enum job_face face, const char *words)
{
	list_add(&d->list[face], TRUE, -1, NONE, g_strdup(words));
}

/* Takes text over. */
static void
add(struct job_data *d, enum job_face face, struct job_row r, gint64 key, char *text)
{
	g_array_append_val(d->row[face], r);
	list_add(&d->list[face], FALSE, (int)d->row[face]->len - 1, key, text);
}

enum { ALWAYS, ON_CONDITION, EITHER };

static void
add_steps(struct job_data *d, enum job_face face, gint64 kind, int when, const char *words)
{
	gboolean any = FALSE;

	for (int i = 0; i < (int)d->sheet->steps->len; i++) {
		const struct step *p = job_step_at(d->sheet, i);

		if (p->kind != kind || (when != EITHER && (p->on_condition == 1) != (when == ON_CONDITION)))
			continue;
		if (!any)
			heading(d, face, words);
		any = TRUE;
		add(d, face, (struct job_row){ ROW_STEP, i }, p->id, g_strdup(p->text));
	}
}

static void
fill_carry(struct job_data *d)
{
	const char *notes = d->sheet->job.remark;

	if (notes) {
		heading(d, FACE_CARRY, "NOTES");
		add(d, FACE_CARRY, (struct job_row){ ROW_NOTE, 0 }, KEY_NOTE, g_strdup(notes));
	}
	for (int i = 0; d->cautions && i < (int)d->cautions->len; i++) {
		const struct caution *c = d->cautions->pdata[i];

		if (!i)
			heading(d, FACE_CARRY,
				"CAUTIONS: the maker's manual, local code and licensed technicians come first");
		add(d, FACE_CARRY, (struct job_row){ ROW_CAUTION, i }, KEY_CAUTION + i, g_strdup(c->sentence));
	}
	if (d->sheet->access_minutes || d->sheet->hand_minutes) {
		heading(d, FACE_CARRY, "TIME, of what is known");
		add(d, FACE_CARRY, (struct job_row){ ROW_TIME, 0 }, KEY_TIME, job_minutes_words(d->sheet));
	}
	add_steps(d, FACE_CARRY, STEP_TOOL, ALWAYS, "TOOLS: sizes are usual ones, try before pulling");
	add_steps(d, FACE_CARRY, STEP_TOOL, ON_CONDITION, "TOOLS, IF NEEDED");
	add_steps(d, FACE_CARRY, STEP_PART, ALWAYS, "PARTS, ALWAYS");
	add_steps(d, FACE_CARRY, STEP_PART, ON_CONDITION, "PARTS, IF FOUND BAD");
	add_steps(d, FACE_CARRY, STEP_CONSUMABLE, ALWAYS, "GREASE, SEALER AND WHAT IS USED UP");
	add_steps(d, FACE_CARRY, STEP_CONSUMABLE, ON_CONDITION, "USED UP, IF NEEDED");
	for (int i = 0; d->stores && i < (int)d->stores->len; i++) {
		if (!i)
			heading(d, FACE_CARRY, "OUT OF THE STORES");
		add(d, FACE_CARRY, (struct job_row){ ROW_STORES, i }, KEY_STORES + i, g_strdup(d->stores->pdata[i]));
	}
	for (int i = 0; i < (int)d->sheet->while_open->len; i++) {
		if (!i)
			heading(d, FACE_CARRY,
				"WHILE IT IS OPEN: due behind the same opening; Enter takes it into the job");
		add(d, FACE_CARRY, (struct job_row){ ROW_WHILE, i }, KEY_WHILE + i,
		    g_strdup(d->sheet->while_open->pdata[i]));
	}
}

static void
fill_work(struct job_data *d)
{
	/* In the order of the work, also those that are only where it is so. */
	add_steps(d, FACE_WORK, STEP_STATE, EITHER, "BEFORE STARTING");
	add_steps(d, FACE_WORK, STEP_STEP, EITHER, "STEPS");
	add_steps(d, FACE_WORK, STEP_PROOF, EITHER, "PROOFS: unseen, the work does not count");
	for (int i = 0; i < (int)d->sheet->aims->len; i++) {
		const struct job_aim *a = job_aim_at(d->sheet, i);

		if (!i)
			heading(d, FACE_WORK, "WHAT IT IS FOR");
		add(d, FACE_WORK, (struct job_row){ ROW_AIM, i }, a->aim.id,
		    g_strdup_printf("%s %s", a->title, a->name));
	}
}

static void
add_removal(struct job_data *d, enum job_face face, int i)
{
	const struct removal *r = job_removal_at(d->sheet, i);
	g_autofree char *words = removal_words(r);

	add(d, face, (struct job_row){ ROW_REMOVAL, i }, r->id,
	    g_strdup_printf("%s %s %s", words, r->as_found ? r->as_found : "", r->tray ? r->tray : ""));
}

static void
fill_off(struct job_data *d)
{
	const struct job_sheet *s = d->sheet;
	gboolean any = FALSE;

	for (int i = 0; i < (int)s->removals->len; i++) {
		if (!i)
			heading(d, FACE_OFF, "OFF, AND HOW IT STOOD, in order");
		add_removal(d, FACE_OFF, i);
	}
	for (int i = 0; i < (int)s->offers->len; i++) {
		const struct job_offer *o = job_offer_at(s, i);

		if (o->taken && o->sure)
			continue;
		if (!any)
			heading(d, FACE_OFF, "USUALLY COMES OFF: Enter writes it down, t the first");
		any = TRUE;
		add(d, FACE_OFF, (struct job_row){ ROW_OFFER, i }, KEY_OFFER + o->n, g_strdup(o->what));
	}
}

/* What is still off, the last thing first, and below it what is back: the topmost line is always the next. */
static void
fill_refit(struct job_data *d)
{
	for (int back = 0; back < 2; back++) {
		gboolean any = FALSE;

		for (int i = (int)d->sheet->removals->len; i-- > 0;) {
			if ((job_removal_at(d->sheet, i)->back != NONE) != back)
				continue;
			if (!any)
				heading(d, FACE_REFIT,
					back ? "BACK" : "STILL TO GO BACK, the last off first: begin at the top");
			any = TRUE;
			add_removal(d, FACE_REFIT, i);
		}
	}
}

void
job_fill_rows(struct job_data *d)
{
	static void (*const fill[JOB_FACES])(struct job_data *) = { fill_carry, fill_work, fill_off, fill_refit };

	for (int f = 0; f < JOB_FACES; f++) {
		list_begin(&d->list[f]);
		g_array_set_size(d->row[f], 0);
		if (d->sheet)
			fill[f](d);
		if (f == FACE_OFF)
			list_settle_new(&d->list[f]);
		else
			list_settle(&d->list[f]);
	}
}
