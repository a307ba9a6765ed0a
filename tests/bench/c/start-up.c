/*
 * start-up ENGINE ANGLE PUSH SECONDS TOLERANCE REPEATS: an engine started from a push with SUNDIALS CVODE (BDF, dense
 * linear solver, Jacobian by differences). Prints mean speed over the last turn [rad/s] and the air drawn from the supply
 * in it [kg], right-hand sides (those for the Jacobian included), steps, turns, and the time of each repeat [s]. Ends with
 * 2 when the engine comes to rest.
 *
 * The air drawn so far is one more unknown behind those of the engine, integrated with them.
 */
#define _POSIX_C_SOURCE 199309L
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <time.h>

#include "angle-table.h"
#include "engine.h"

/* Speeds below are rest: the equations know a forward engine only [rad/s]. */
#define REST 1e-3

typedef struct {
  double mean_speed, air, turns;
  long calls, steps;
} StartUp;

static double seconds(void) {
  struct timespec now;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

/* What CVODE hands back to the two functions below. */
typedef struct {
  Engine *engine;
  double tolerance;
} Task;

static int slopes_of(realtype t, N_Vector y, N_Vector slopes, void *data) {
  (void)t;
  Engine *engine = ((Task *)data)->engine;
  engine_slopes(engine, N_VGetArrayPointer(y), N_VGetArrayPointer(slopes));
  N_VGetArrayPointer(slopes)[engine_dimension(engine)] = engine_supply_flow(engine);
  return 0;
}

/*
 * One over the error that may be made in each unknown. In the air drawn so far that is a share of one filling, whatever
 * has been drawn already: a share of the total, which only grows, would soon let the air of a turn go wrong.
 */
static int weights_of(N_Vector y, N_Vector weights, void *data) {
  const Task *task = data;
  const int drawn = engine_dimension(task->engine);
  const double *state = N_VGetArrayPointer(y);
  const double *scale = engine_scale(task->engine);
  double *weight = N_VGetArrayPointer(weights);
  for (int i = 0; i < drawn; i += 1) weight[i] = 1.0 / (task->tolerance * (fabs(state[i]) + scale[i]));
  weight[drawn] = 1.0 / (task->tolerance * engine_filling(task->engine));
  return 0;
}

static void must(int status, const char *what) {
  if (status >= 0) return;
  fprintf(stderr, "%s failed with %d\n", what, status);
  exit(1);
}

/* When the crank last passed an angle, within the last step that ended at t; the state then is left in `passing`. */
static double time_at_angle(void *cvode, double t, double angle, N_Vector passing) {
  double low, high = t;
  CVodeGetLastStep(cvode, &low);
  low = t - low;
  for (int i = 0; i < 60; i += 1) {
    const double middle = 0.5 * (low + high);
    CVodeGetDky(cvode, middle, 0, passing);
    if (N_VGetArrayPointer(passing)[CRANK_ANGLE] < angle) low = middle;
    else high = middle;
  }
  CVodeGetDky(cvode, high, 0, passing);
  return high;
}

static StartUp start_up(Engine *engine, double angle, double push, double duration, double tolerance) {
  const int drawn = engine_dimension(engine);
  const int n = drawn + 1;
  SUNContext context;
  must(SUNContext_Create(NULL, &context), "SUNContext_Create");
  N_Vector y = N_VNew_Serial(n, context);
  N_Vector passing = N_VNew_Serial(n, context);
  engine_initial_state(engine, angle, push, N_VGetArrayPointer(y));
  N_VGetArrayPointer(y)[drawn] = 0.0;
  Task task = {engine, tolerance};
  void *cvode = CVodeCreate(CV_BDF, context);
  must(CVodeInit(cvode, slopes_of, 0.0, y), "CVodeInit");
  must(CVodeSetUserData(cvode, &task), "CVodeSetUserData");
  must(CVodeWFtolerances(cvode, weights_of), "CVodeWFtolerances");
  SUNMatrix matrix = SUNDenseMatrix(n, n, context);
  SUNLinearSolver solver = SUNLinSol_Dense(y, matrix, context);
  must(CVodeSetLinearSolver(cvode, solver, matrix), "CVodeSetLinearSolver");
  must(CVodeSetStopTime(cvode, duration), "CVodeSetStopTime");

  StartUp result = {NAN, NAN, 0.0, 0, 0};
  double t = 0.0, next_turn = FULL_TURN * ceil(angle / FULL_TURN), last_passed = NAN, last_drawn = NAN;
  while (t < duration) {
    must(CVode(cvode, duration, y, &t, CV_ONE_STEP), "CVode");
    const double *state = N_VGetArrayPointer(y);
    if (state[SPEED] < REST) exit(2);
    while (state[CRANK_ANGLE] >= next_turn) {
      const double passed = time_at_angle(cvode, t, next_turn, passing);
      result.mean_speed = FULL_TURN / (passed - last_passed);
      result.air = N_VGetArrayPointer(passing)[drawn] - last_drawn;
      last_passed = passed;
      last_drawn = N_VGetArrayPointer(passing)[drawn];
      next_turn += FULL_TURN;
    }
  }
  long jacobian_calls = 0;
  CVodeGetNumRhsEvals(cvode, &result.calls);
  CVodeGetNumLinRhsEvals(cvode, &jacobian_calls);
  CVodeGetNumSteps(cvode, &result.steps);
  result.calls += jacobian_calls;
  result.turns = (N_VGetArrayPointer(y)[CRANK_ANGLE] - angle) / FULL_TURN;
  CVodeFree(&cvode);
  SUNLinSolFree(solver);
  SUNMatDestroy(matrix);
  N_VDestroy(passing);
  N_VDestroy(y);
  SUNContext_Free(&context);
  return result;
}

int main(int count, char **words) {
  if (count != 7) {
    fputs("start-up ENGINE ANGLE PUSH SECONDS TOLERANCE REPEATS\n", stderr);
    return 1;
  }
  Engine *engine = engine_read(words[1]);
  const int repeats = atoi(words[6]);
  for (int i = 0; i < repeats; i += 1) {
    const double begin = seconds();
    const StartUp result = start_up(engine, atof(words[2]), atof(words[3]), atof(words[4]), atof(words[5]));
    const double took = seconds() - begin;
    printf("%.12g %.12g %ld %ld %.6g %.6g\n", result.mean_speed, result.air, result.calls, result.steps, result.turns, took);
  }
  engine_free(engine);
  return 0;
}
