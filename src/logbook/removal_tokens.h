/* A line of the strip-down list as tokens, and what kinds of words there are; for removal_parse.c alone. */
#ifndef LOGBOOK_REMOVAL_TOKENS_H
#define LOGBOOK_REMOVAL_TOKENS_H

#include <glib.h>

enum { MOST_TOKENS = 60 };

struct token {
	char *text, *low; /* as typed; folded */
	gboolean quoted;
	gboolean comma; /* a comma stands before it */
	gboolean used; /* understood: it is no part of `what` */
};

struct tokens {
	struct token at[MOST_TOKENS + 1];
	int n;
};

/* FALSE: more than MOST_TOKENS.  line is UTF-8.  tokens_clear is due either way. */
gboolean tokens_read(const char *line, struct tokens *t);
void tokens_clear(struct tokens *t);

/* Whether the token there is one of the words, is not used, and is not quoted; past the end it is not. */
gboolean token_is(const struct tokens *t, int i, const char *const *words);
gboolean token_free(const struct tokens *t, int i);
/* The texts of [from, to) joined by blanks, and the tokens used up; the caller's. */
char *tokens_take(struct tokens *t, int from, int to);
/* Those that are not used, joined by blanks, and by the commas between them; NULL: none. */
char *tokens_rest(const struct tokens *t);

/* What the words tell of the kind: words_removal_kind but REMOVAL_SETTING; NONE: no word of those. */
gint64 tokens_kind(const struct tokens *t);
/* Whether a retainer, a plug or a fastener is named there. */
gboolean tokens_counted_at(const struct tokens *t, int i);
/* Whether a clamp is named: counted it is a fastener, else perhaps the position of its screw. */
gboolean tokens_clamp(const struct tokens *t);
/* Whether something that is set is named: a lever, a gear, a valve, a gap. */
gboolean tokens_setting(const struct tokens *t);

#endif
