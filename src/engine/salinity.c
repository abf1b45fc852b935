/* Salinity, density and what hangs on them.  Symbols and the order of coefficients as in UNESCO 44. */
#include "engine/salinity.h"

#include <glib.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_poly.h>
#include <gsl/gsl_roots.h>
#include <math.h>

/* Conductivity of sea water of 35 PSU at 15 C, mS/cm.  The scale is a ratio and does not fix it; this is
 * the usual figure. */
#define STANDARD 42.914

static const double salinity_a[] = { .0080, -.1692, 25.3851, 14.0941, -7.0261, 2.7081 };
static const double salinity_b[] = { .0005, -.0056, -.0066, -.0375, .0636, -.0144 };
static const double ratio_c[] = { .6766097, 2.00564e-2, 1.104259e-4, -6.9698e-7, 1.0031e-9 };
static const double pressure_e[] = { 0, 2.070e-5, -6.370e-10, 3.989e-15 };
static const double pressure_d[] = { 3.426e-2, 4.464e-4, 4.215e-1, -3.107e-3 };

#define POLY(c, x) gsl_poly_eval((c), G_N_ELEMENTS(c), (x))

double
temperature_68(double t90)
{
	return 1.00024 * t90;
}

/* Conductivity of standard sea water at t to that at 15 C. */
static double
ratio_t(double t68)
{
	return POLY(ratio_c, t68);
}

static double
away_from_15(double t68)
{
	return (t68 - 15) / (1 + .0162 * (t68 - 15));
}

double
pss78_salinity(double ratio, double t68, double dbar)
{
	double grows = 1 + (pressure_d[0] + pressure_d[1] * t68) * t68
		     + (pressure_d[2] + pressure_d[3] * t68) * ratio;
	double root = sqrt(ratio / ((1 + POLY(pressure_e, dbar) / grows) * ratio_t(t68)));

	return POLY(salinity_a, root) + away_from_15(t68) * POLY(salinity_b, root);
}

/* Newton's method on the square root of the ratio at t and no pressure, where the scale is a polynomial
 * that rises and bends upward over all of the range asked for. */
static double
root_at_no_pressure(double psu, double t68)
{
	double c[G_N_ELEMENTS(salinity_a)], value[2], root = sqrt(psu / 35) + .1, step = 1;

	for (guint i = 0; i < G_N_ELEMENTS(c); i++)
		c[i] = salinity_a[i] + away_from_15(t68) * salinity_b[i];
	for (int i = 0; i < 50 && fabs(step) > 1e-9 * root; i++) {
		gsl_poly_eval_derivs(c, G_N_ELEMENTS(c), root, value, G_N_ELEMENTS(value));
		step = (value[0] - psu) / value[1];
		root -= step;
	}
	return root;
}

double
pss78_ratio(double psu, double t68, double dbar)
{
	double root, at_t, a, b, pressure;

	if (isnan(psu))
		return NAN;
	root = root_at_no_pressure(fmax(psu, PSU_LEAST), t68);
	/* Pressure raises the ratio by 1 + pressure / (b + a ratio): a quadratic. */
	at_t = root * root * ratio_t(t68);
	pressure = POLY(pressure_e, dbar);
	a = pressure_d[2] + pressure_d[3] * t68;
	b = 1 + (pressure_d[0] + pressure_d[1] * t68) * t68;
	b -= a * at_t;
	return (sqrt(b * b + 4 * a * at_t * (b + a * at_t + pressure)) - b) / (2 * a);
}

double
salinity_of_conductivity(double ms_cm, double t90)
{
	double psu;

	if (!(ms_cm >= 0) || !(t90 >= -2) || t90 > 40)
		return NAN;
	psu = ms_cm > 0 ? pss78_salinity(ms_cm / STANDARD, temperature_68(t90), 0) : 0;
	return psu <= PSU_MOST ? fmax(psu, 0) : NAN;
}

double
salinity_of_compensated(double ms_cm_25)
{
	return salinity_of_conductivity(ms_cm_25, 25);
}

double
conductivity_to_25(double ms_cm, double t90)
{
	return ms_cm * ratio_t(temperature_68(25)) / ratio_t(temperature_68(t90));
}

double
conductivity_from_25(double ms_cm_25, double t90)
{
	return ms_cm_25 * ratio_t(temperature_68(t90)) / ratio_t(temperature_68(25));
}

double
water_resistivity(double psu, double t90)
{
	return 10 / (STANDARD * pss78_ratio(psu, temperature_68(t90), 0));
}

static const double density_w[] = { 999.842594,  6.793952e-2,  -9.095290e-3,
				    1.001685e-4, -1.120083e-6, 6.536332e-9 };
static const double density_a[] = { 8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9 };
static const double density_b[] = { -5.72466e-3, 1.0227e-4, -1.6546e-6 };

double
water_density(double psu, double t68)
{
	return POLY(density_w, t68)
	     + (POLY(density_a, t68) + POLY(density_b, t68) * sqrt(psu) + 4.8314e-4 * psu) * psu;
}

struct wanted {
	double kg_m3, t68;
};

static double
too_dense(double psu, void *wanted)
{
	const struct wanted *w = wanted;

	return water_density(psu, w->t68) - w->kg_m3;
}

static double
brent(gsl_function *f, double low, double high)
{
	gsl_root_fsolver *s = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
	double root = NAN;

	/* Only where the ends bracket a root, so that no error handler is called. */
	gsl_root_fsolver_set(s, f, low, high);
	for (int i = 0; i < 100; i++) {
		if (gsl_root_fsolver_iterate(s) != GSL_SUCCESS)
			break;
		root = gsl_root_fsolver_root(s);
		if (gsl_root_test_interval(gsl_root_fsolver_x_lower(s), gsl_root_fsolver_x_upper(s), 1e-12, 0)
		    == GSL_SUCCESS)
			break;
	}
	gsl_root_fsolver_free(s);
	return root;
}

double
salinity_of_density(double kg_m3, double t68)
{
	struct wanted wanted = { kg_m3, t68 };
	gsl_function f = { too_dense, &wanted };

	if (!(t68 >= -2) || t68 > 40 || !(too_dense(PSU_MOST, &wanted) >= 0))
		return NAN;
	if (too_dense(0, &wanted) >= 0)
		return too_dense(0, &wanted) <= .5 * POLY(density_a, t68) ? 0 : NAN;
	return brent(&f, 0, PSU_MOST);
}

double
salinity_of_hydrometer(double gravity, double t68)
{
	return salinity_of_density(gravity * water_density(0, 20) * (1 - 25e-6 * (t68 - 20)), t68);
}

double
water_freezing(double psu, double dbar)
{
	return -.0575 * psu + 1.710523e-3 * psu * sqrt(psu) - 2.154996e-4 * psu * psu - 7.53e-4 * dbar;
}

double
water_oxygen(double celsius, double psu)
{
	static const double fresh[] = { -139.34411, 1.575701e5, -6.642308e7, 1.243800e10, -8.621949e11 };
	static const double salt[] = { 1.7674e-2, -10.754, 2140.7 };
	double inverse = 1 / (celsius + 273.15);

	return exp(POLY(fresh, inverse) - psu * POLY(salt, inverse));
}

enum venice
venice_class(double psu)
{
	static const double from[] = { .5, 5, 18, 30, 40 };
	guint found = VENICE_FRESH;

	if (isnan(psu))
		return VENICE_COUNT;
	while (found < G_N_ELEMENTS(from) && psu >= from[found])
		found++;
	return found;
}

enum water
water_class(double psu)
{
	enum venice class = venice_class(psu);

	if (class == VENICE_COUNT)
		return WATER_COUNT;
	if (class == VENICE_FRESH)
		return WATER_FRESH;
	return class < VENICE_EUHALINE ? WATER_BRACKISH : WATER_SALT;
}
