/* The flow laws of src/gas, magnitudes only: from the place of higher pressure, 1, to the other. */
#ifndef TICKOVER_BENCH_FLOW_LAWS_H
#define TICKOVER_BENCH_FLOW_LAWS_H

#include <math.h>

typedef struct {
  double gas_constant, gamma, cp, cv;
  double inverse_gamma;        /* 1/gamma */
  double critical_ratio;       /* pressure ratio at which a nozzle chokes */
  double nozzle_factor;        /* sqrt(2 gamma/((gamma - 1) R)) */
  double choked_factor;
  double sutherland_factor;    /* mu = factor T^1.5/(T + S) */
  double sutherland;
  double rounding_squared;
} Gas;

/* Without the care for NaN of fmin and fmax, which costs time. */
static inline double larger(double a, double b) { return a > b ? a : b; }
static inline double smaller(double a, double b) { return a < b ? a : b; }

static inline double viscosity(const Gas *gas, double t) {
  return gas->sutherland_factor * t * sqrt(t) / (t + gas->sutherland);
}

/* q/(q^2 + rounding^2)^(1/4) */
static inline double rounded_root(const Gas *gas, double q) {
  return q / sqrt(sqrt(q * q + gas->rounding_squared));
}

/* Isentropic nozzle of an effective area. With y = x^(1/gamma), x^((gamma - 1)/gamma) is x/y: one power is enough. */
static inline double nozzle_flow(const Gas *gas, double area, double p1, double t1, double p2) {
  const double x = larger(p2 / p1, gas->critical_ratio);
  const double y = exp(log(x) * gas->inverse_gamma);
  return area * p1 * gas->nozzle_factor * y * rounded_root(gas, 1.0 - x / y) / sqrt(t1);
}

/* ISO 6358; the factor is C rho_0 sqrt(T_0), scaled to the gas. */
static inline double conductance_flow(const Gas *gas, double factor, double b, double p1, double t1, double p2) {
  const double s = larger(0.0, (p2 / p1 - b) / (1.0 - b));
  return factor * p1 * rounded_root(gas, 1.0 - s * s) / sqrt(t1);
}

/* Laminar gap with entrance and exit loss, never more than choked flow. */
static inline double gap_flow(const Gas *gas, double resistance, double section, double p1, double t1, double p2) {
  const double rt = gas->gas_constant * t1;
  const double laminar = 24.0 * viscosity(gas, t1) * rt * resistance;
  const double loss = 1.5 * rt / (section * section);
  const double drive = p1 * p1 - p2 * p2;
  const double flow = 2.0 * drive / (laminar + sqrt(laminar * laminar + 4.0 * loss * drive));
  return smaller(flow, 0.8 * section * p1 * gas->choked_factor / sqrt(t1));
}

#endif
