/*
 * One engine, read from the file that engine-file.ts writes, and its equations of motion in time:
 *
 *   dm/dt = sum of flows in less out       dU/dt = sum of enthalpies - p dV/dt + wall heat
 *   (J + M x'^2) dw/dt = (p - p_atm) dV/dtheta - M x' x'' w^2 + gravity - friction - load
 *
 * The state is crank angle, speed, then mass and energy of each volume. The engine turns forward.
 */
#ifndef TICKOVER_BENCH_ENGINE_H
#define TICKOVER_BENCH_ENGINE_H

enum { CRANK_ANGLE, SPEED, FIRST_GAS };
enum { SUPPLY, ATMOSPHERE, FIRST_VOLUME };

typedef struct Engine Engine;

/* Ends the program with a message when the file cannot be read. */
Engine *engine_read(const char *path);
void engine_free(Engine *engine);

int engine_dimension(const Engine *engine);
/* Mean of what counts as a small amount of each component, for absolute tolerances. */
const double *engine_scale(const Engine *engine);
/* Room air in every volume. */
void engine_initial_state(const Engine *engine, double angle, double speed, double *y);
/* dy/dt. */
void engine_slopes(Engine *engine, const double *y, double *slopes);
/* Net mass flow out of the supply at the state for which slopes were last asked for [kg/s]. */
double engine_supply_flow(const Engine *engine);
/* Mass of room air that the first cylinder end holds at its largest [kg]. */
double engine_filling(const Engine *engine);

#endif
