#include "logbook/names.h"

#include "base/err.h"
#include "logbook/inside.h"

#include <string.h>

/* A name of two kinds is put by each in its own field, and in free text as the first kind that has it. */
enum kind { NAME_BOAT, NAME_PERSON, NAME_PLACE, NAME_SUPPLIER, NAME_KINDS };

struct names {
	GHashTable *known[NAME_KINDS]; /* name -> what stands for it */
	GHashTable *folded; /* the same of all kinds, whatever the case of its letters; what stands for it is of known */
	GRegex *any; /* any of them as a whole word; NULL: there is none */
};

static gboolean
is_role(const char *who)
{
	static const char *const role[] = { "owner", "yard", "owner before", NULL };

	return g_strv_contains(role, who);
}

static void
learn(struct names *n, enum kind kind, const char *name)
{
	static const char *const word[NAME_KINDS] = { "boat", "person", "place", "supplier" };
	GHashTable *known = n->known[kind];

	if (!name || !name[strspn(name, " ")] || (kind == NAME_PERSON && is_role(name)) || g_hash_table_contains(known, name))
		return;
	g_hash_table_insert(known, g_strdup(name), g_strdup_printf("%s %u", word[kind], g_hash_table_size(known) + 1));
}

/* Which kind of name a field of a record holds; FALSE: none, as where in the stores a thing lies. */
static gboolean
holds_name(enum record r, const struct field *f, enum kind *kind)
{
	if (f->kind != FIELD_TEXT)
		return FALSE;
	if (!strcmp(f->name, "who"))
		*kind = NAME_PERSON;
	else if (!strcmp(f->name, "supplier"))
		*kind = NAME_SUPPLIER;
	else if ((!strcmp(f->name, "place") && r != RECORD_LOT) || (r == RECORD_PLACE && !strcmp(f->name, "name")))
		*kind = NAME_PLACE;
	else if (r == RECORD_BOAT && !strcmp(f->name, "name"))
		*kind = NAME_BOAT;
	else
		return FALSE;
	return TRUE;
}

static void
learn_record(struct names *n, enum record r, void *record)
{
	const struct record_type *type = record_type(r);
	enum kind kind;

	for (int i = 0; i < type->n_fields; i++)
		if (holds_name(r, &type->field[i], &kind))
			learn(n, kind, *field_text(&type->field[i], record));
}

/* One record in memory at a time; kinds without any name are not read. */
static gboolean
learn_records(struct names *n, struct book *b, enum record r, GError **err)
{
	const struct record_type *type = record_type(r);
	g_autofree void *record = g_malloc(type->size);
	gboolean any = FALSE;
	struct cells *c;
	enum kind kind;

	for (int i = 0; i < type->n_fields; i++)
		any = any || holds_name(r, &type->field[i], &kind);
	if (!any)
		return TRUE;
	c = cells_open(b->db, sql_all(r));
	record_init(r, record);
	while (cells_next_record(c, r, record))
		learn_record(n, r, record);
	record_clear(r, record);
	return cells_close(c, err);
}

static gboolean
learn_journal(struct names *n, struct book *b, GError **err)
{
	g_autoptr(GArray) all = book_history(b, 0, err);

	for (guint i = all ? all->len : 0; i-- > 0;)
		learn(n, NAME_PERSON, ((const struct book_entry *)(const void *)all->data)[i].who);
	return all != NULL;
}

static gint
longest_first(gconstpointer x, gconstpointer y)
{
	const char *a = *(const char *const *)x, *b = *(const char *const *)y;
	gsize m = strlen(a), n = strlen(b);

	return m != n ? (m < n ? 1 : -1) : strcmp(a, b);
}

static void
fold(struct names *n, const char *name, char *word)
{
	g_autofree char *low = g_utf8_casefold(name, -1);

	if (!g_hash_table_contains(n->folded, low))
		g_hash_table_insert(n->folded, g_steal_pointer(&low), word);
}

/* A name that holds another is tried before it. */
static gboolean
make_pattern(struct names *n, GError **err)
{
	g_autoptr(GPtrArray) all = g_ptr_array_new_with_free_func(g_free);
	g_autoptr(GString) pattern = g_string_new("(?<!\\w)(?:");

	for (int kind = 0; kind < NAME_KINDS; kind++) {
		GHashTableIter i;
		gpointer name, word;

		g_hash_table_iter_init(&i, n->known[kind]);
		while (g_hash_table_iter_next(&i, &name, &word)) {
			g_ptr_array_add(all, g_regex_escape_string(name, -1));
			fold(n, name, word);
		}
	}
	g_ptr_array_sort(all, longest_first);
	for (guint i = 0; i < all->len; i++)
		g_string_append_printf(pattern, "%s%s", i ? "|" : "", (const char *)all->pdata[i]);
	g_string_append(pattern, ")(?!\\w)");
	if (all->len)
		n->any = g_regex_new(pattern->str, G_REGEX_CASELESS, 0, NULL);
	/* Half of the names left out would be worse than nothing written. */
	return !all->len || n->any || err_set(err, ERR_SYSTEM, "the names in this logbook are too many to be left out");
}

/* A logbook of one boat has no need to number her. */
static void
name_only_boat(GHashTable *boats)
{
	g_autoptr(GList) name = g_hash_table_get_keys(boats);

	if (g_hash_table_size(boats) == 1)
		g_hash_table_insert(boats, g_strdup(name->data), g_strdup("the boat"));
}

struct names *
names_new(struct book *b, GError **err)
{
	struct names *n = g_new0(struct names, 1);
	gboolean ok = TRUE;

	for (int kind = 0; kind < NAME_KINDS; kind++)
		n->known[kind] = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
	n->folded = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
	for (int r = 0; ok && r < RECORD_COUNT; r++)
		ok = learn_records(n, b, (enum record)r, err);
	name_only_boat(n->known[NAME_BOAT]);
	if (ok && learn_journal(n, b, err) && make_pattern(n, err))
		return n;
	names_free(n);
	return NULL;
}

void
names_free(struct names *n)
{
	if (!n)
		return;
	for (int kind = 0; kind < NAME_KINDS; kind++)
		g_hash_table_unref(n->known[kind]);
	g_hash_table_unref(n->folded);
	g_clear_pointer(&n->any, g_regex_unref);
	g_free(n);
}

/* A name that came into the logbook after all were learnt is left out whole. */
static char *
put_otherwise(const struct names *n, enum kind kind, const char *name)
{
	const char *word = n && name ? g_hash_table_lookup(n->known[kind], name) : NULL;

	if (!n || !name || (kind == NAME_PERSON && is_role(name)))
		return g_strdup(name);
	return g_strdup(word);
}

char *
names_boat(const struct names *n, const char *name)
{
	return put_otherwise(n, NAME_BOAT, name);
}

char *
names_person(const struct names *n, const char *who)
{
	return put_otherwise(n, NAME_PERSON, who);
}

char *
names_place(const struct names *n, const char *place)
{
	return put_otherwise(n, NAME_PLACE, place);
}

static gboolean
replace_one(const GMatchInfo *found, GString *out, gpointer user)
{
	const struct names *n = user;
	g_autofree char *name = g_match_info_fetch(found, 0), *low = g_utf8_casefold(name, -1);
	const char *word = NULL;

	for (int kind = 0; kind < NAME_KINDS && !word; kind++)
		word = g_hash_table_lookup(n->known[kind], name);
	if (!word)
		word = g_hash_table_lookup(n->folded, low);
	g_string_append(out, word ? word : "...");
	return FALSE;
}

char *
names_in(const struct names *n, const char *text)
{
	if (!n || !text || !n->any)
		return g_strdup(text);
	return g_regex_replace_eval(n->any, text, -1, 0, 0, replace_one, (gpointer)(guintptr)n, NULL);
}
