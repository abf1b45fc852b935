/* Sharing a lot's price out among what was taken of it. */
#include "logbook/stores_cost.h"

/* What has a claim on a lot's price: a taking, or what is left of it. */
struct claim {
	guint taken; /* index; G_MAXUINT: what is left */
	gint64 quantity, cents, rest;
};

/* a * b / of with the remainder, rounded down, of 0 < of <= STOCK_MOST and |b| <= STOCK_MOST, without overflow. */
static gint64
part(gint64 a, gint64 b, gint64 of, gint64 *rest)
{
	gint64 whole = a / of, low = a % of * b, down = low / of;

	*rest = low % of;
	if (*rest < 0) {
		*rest += of;
		down--;
	}
	return whole * b + down;
}

static int
larger_rest(const void *x, const void *y)
{
	const struct claim *a = x, *b = y;

	if (a->rest != b->rest)
		return a->rest < b->rest ? 1 : -1;
	return (a->taken > b->taken) - (a->taken < b->taken);
}

/* quantities add up to of. */
static void
share_out(GArray *claims, gint64 price, gint64 of)
{
	gint64 left = price;

	for (guint i = 0; i < claims->len; i++) {
		struct claim *c = &g_array_index(claims, struct claim, i);

		c->cents = part(price, c->quantity, of, &c->rest);
		left -= c->cents;
	}
	g_array_sort(claims, larger_rest);
	for (guint i = 0; i < claims->len && left > 0; i++, left--)
		g_array_index(claims, struct claim, i).cents++;
}

static void
share_lot(const struct stores *s, const struct lot *l, GArray *claims, GArray *shares)
{
	struct claim rest = { .taken = G_MAXUINT };
	gint64 sum = 0;

	for (guint i = 0; i < claims->len; i++)
		sum += g_array_index(claims, struct claim, i).quantity;
	rest.quantity = MAX(stock_of(l->quantity) - sum, 0);
	g_array_append_val(claims, rest);
	if (sum + rest.quantity <= 0)
		return;
	share_out(claims, l->price, sum + rest.quantity);
	for (guint i = 0; i < claims->len; i++) {
		const struct claim *c = &g_array_index(claims, struct claim, i);

		if (c->taken < s->taken->len)
			g_array_index(shares, gint64, c->taken) = c->cents;
	}
}

GArray *
stores_shares(const struct stores *s)
{
	GArray *shares = g_array_sized_new(FALSE, FALSE, sizeof(gint64), s->taken->len);
	const struct taken *t = (const void *)s->taken->data;
	const gint64 none = NONE;

	for (guint i = 0; i < s->taken->len; i++)
		g_array_append_val(shares, none);
	/* Takings stand lot by lot. */
	for (guint i = 0, to; i < s->taken->len; i = to) {
		const struct lot *l = stores_lot_of(s, t[i].lot);
		g_autoptr(GArray) claims = g_array_new(FALSE, FALSE, sizeof(struct claim));

		for (to = i; to < s->taken->len && t[to].lot == t[i].lot; to++) {
			const struct claim c = { .taken = to, .quantity = stock_of(t[to].quantity) };

			g_array_append_val(claims, c);
		}
		if (l && l->price != NONE)
			share_lot(s, l, claims, shares);
	}
	return shares;
}
