#include "engine.h"

#include <math.h>
#include <stdlib.h>

#include "angle-table.h"
#include "flow-laws.h"
#include "read.h"

/* Borders at which the laws are evaluated when a trial state lies beyond them. */
#define LEAST_DENSITY 1e-4
#define LEAST_TEMPERATURE 20.0
#define MOST_TEMPERATURE 3000.0

/* As the file numbers them. */
enum { NOZZLE, GAP, CONDUIT, REGULATOR, SWITCHED, LIFTED };
enum { NO_WALL_HEAT, CONSTANT_WALL_HEAT, CORRELATED_WALL_HEAT };

/* A valve switched at crank angles that moves by the clock. */
typedef struct {
  double opens, commanded_length, opening_delay, closing_delay, travel_time, shortest_travel;
} SwitchedValve;

/* A ball or poppet on a round seat, lifted by a pin, and by air that comes from behind. */
typedef struct {
  int is_ball;
  double seat_radius, ball_radius, bore_area, discharge;
  double cracking, span, rise;
} LiftedValve;

typedef struct {
  int kind, from, to, lag;
  AngleTable area;       /* of a nozzle; the resistance of a gap; the lift of a valve by its pin */
  double section;        /* of a gap */
  double factor, ratio;  /* of an ISO 6358 element */
  double set_pressure, droop;
  SwitchedValve valve;
  LiftedValve lifted;
} Passage;

typedef struct {
  int cylinder, place;
  double sign, area, swept, clearance;
} End;

/* A quantity that goes as some multiple of another, or by a table of its own. */
typedef struct {
  double multiple;
  AngleTable table;
} MultipleOrTable;

/* Drag of a valve gear, drag-numbers.ts. */
typedef struct {
  int magnitude;
  double always, spring, per_chest, per_film;
  AngleTable lever, per_speed;
  MultipleOrTable per_cylinder, per_other_end;
} Drag;

typedef struct {
  double offset;
  int cover, crank; /* places; crank is -1 for a single-acting cylinder */
  int lag;
  Drag drag;
} Cylinder;

struct Engine {
  Gas gas;
  double room_pressure, room_temperature, supply_pressure, supply_temperature;
  double crank_radius, rod_length, bore;
  double trunnion_distance; /* of a cylinder that rocks; 0 for one that does not */
  int chest;                /* its place */
  double mass, weight, flywheel;
  double running, breakaway, stribeck, viscous;
  double piston_force, piston_per_pressure, gland_force, gland_per_pressure;
  double load[3]; /* torque = load[0] + load[1] w + load[2] w^2, or nothing when that is negative */
  int wall_kind;
  double wall_temperature, wall_coefficient;
  int fixed_count, end_count, volume_count, cylinder_count, passage_count, lag_count;
  double *fixed_volumes;
  End *ends;
  Cylinder *cylinders;
  Passage *passages;
  double *lags;
  double *scale;
  /* Of the present instant: by place, by end, by lag; and what leaves the supply. */
  double *pressure, *temperature, *volume, *volume_rate, *own_angle;
  double supply_flow;
};

static void read_gas(Engine *engine, FILE *file) {
  Gas *gas = &engine->gas;
  read_word(file, "gas");
  gas->gas_constant = read_number(file);
  gas->gamma = read_number(file);
  gas->sutherland_factor = read_number(file);
  gas->sutherland = read_number(file);
  const double rounding = read_number(file);
  const double g = gas->gamma;
  gas->rounding_squared = rounding * rounding;
  gas->cv = gas->gas_constant / (g - 1.0);
  gas->cp = g * gas->cv;
  gas->inverse_gamma = 1.0 / g;
  gas->critical_ratio = pow(2.0 / (g + 1.0), g / (g - 1.0));
  gas->nozzle_factor = sqrt(2.0 * g / ((g - 1.0) * gas->gas_constant));
  gas->choked_factor = sqrt(g / gas->gas_constant * pow(2.0 / (g + 1.0), (g + 1.0) / (g - 1.0)));
}

static LiftedValve read_lifted_valve(FILE *file) {
  LiftedValve valve;
  valve.is_ball = read_count(file);
  valve.seat_radius = read_number(file);
  valve.ball_radius = read_number(file);
  valve.bore_area = read_number(file);
  valve.discharge = read_number(file);
  valve.cracking = read_number(file);
  valve.span = read_number(file);
  valve.rise = read_number(file);
  return valve;
}

static Passage read_passage(FILE *file) {
  Passage passage = {0};
  passage.kind = read_count(file);
  passage.from = read_count(file);
  passage.to = read_count(file);
  passage.lag = read_count(file);
  switch (passage.kind) {
    case NOZZLE:
      passage.area = angle_table_read(file);
      break;
    case GAP:
      passage.section = read_number(file);
      passage.area = angle_table_read(file);
      break;
    case LIFTED:
      passage.lifted = read_lifted_valve(file);
      passage.area = angle_table_read(file);
      break;
    default:
      passage.factor = read_number(file);
      passage.ratio = read_number(file);
  }
  if (passage.kind == REGULATOR) {
    passage.set_pressure = read_number(file);
    passage.droop = read_number(file);
  }
  if (passage.kind == SWITCHED) {
    SwitchedValve *valve = &passage.valve;
    valve->opens = read_number(file);
    valve->commanded_length = read_number(file);
    valve->opening_delay = read_number(file);
    valve->closing_delay = read_number(file);
    valve->travel_time = read_number(file);
    valve->shortest_travel = read_number(file);
  }
  return passage;
}

static void read_mechanics(Engine *engine, FILE *file) {
  read_word(file, "crank");
  engine->crank_radius = read_number(file);
  engine->rod_length = read_number(file);
  engine->trunnion_distance = read_number(file);
  engine->bore = read_number(file);
  engine->chest = read_count(file);
  read_word(file, "masses");
  engine->mass = read_number(file);
  engine->weight = read_number(file);
  engine->flywheel = read_number(file);
  read_word(file, "friction");
  engine->running = read_number(file);
  engine->breakaway = read_number(file);
  engine->stribeck = read_number(file);
  engine->viscous = read_number(file);
  engine->piston_force = read_number(file);
  engine->piston_per_pressure = read_number(file);
  engine->gland_force = read_number(file);
  engine->gland_per_pressure = read_number(file);
  read_word(file, "load");
  for (int i = 0; i < 3; i += 1) engine->load[i] = read_number(file);
  read_word(file, "wall");
  engine->wall_kind = read_count(file);
  engine->wall_temperature = read_number(file);
  engine->wall_coefficient = read_number(file);
}

static MultipleOrTable read_multiple(FILE *file) {
  MultipleOrTable one;
  one.multiple = read_number(file);
  one.table = angle_table_read(file);
  return one;
}

static Drag read_drag(FILE *file) {
  Drag drag;
  drag.magnitude = read_count(file);
  drag.always = read_number(file);
  drag.spring = read_number(file);
  drag.per_chest = read_number(file);
  drag.per_film = read_number(file);
  drag.lever = angle_table_read(file);
  drag.per_cylinder = read_multiple(file);
  drag.per_other_end = read_multiple(file);
  drag.per_speed = angle_table_read(file);
  return drag;
}

static void read_parts(Engine *engine, FILE *file) {
  read_word(file, "lags");
  engine->lag_count = read_count(file);
  engine->lags = read_numbers(file, engine->lag_count);
  read_word(file, "volumes");
  engine->fixed_count = read_count(file);
  engine->fixed_volumes = read_numbers(file, engine->fixed_count);
  read_word(file, "ends");
  engine->end_count = read_count(file);
  engine->ends = allocate(engine->end_count * sizeof(End));
  for (int i = 0; i < engine->end_count; i += 1) {
    End *end = &engine->ends[i];
    end->cylinder = read_count(file);
    end->sign = read_number(file);
    end->area = read_number(file);
    end->swept = read_number(file);
    end->clearance = read_number(file);
    end->place = FIRST_VOLUME + engine->fixed_count + i;
  }
  read_word(file, "cylinders");
  engine->cylinder_count = read_count(file);
  engine->cylinders = allocate(engine->cylinder_count * sizeof(Cylinder));
  for (int i = 0; i < engine->cylinder_count; i += 1) {
    Cylinder *cylinder = &engine->cylinders[i];
    cylinder->offset = read_number(file);
    cylinder->lag = read_count(file);
    cylinder->cover = read_count(file);
    cylinder->crank = read_count(file);
    cylinder->drag = read_drag(file);
  }
  read_word(file, "passages");
  engine->passage_count = read_count(file);
  engine->passages = allocate(engine->passage_count * sizeof(Passage));
  for (int i = 0; i < engine->passage_count; i += 1) engine->passages[i] = read_passage(file);
  read_word(file, "end");
}

static double room_density(const Engine *engine) {
  return engine->room_pressure / (engine->gas.gas_constant * engine->room_temperature);
}

static void write_scale(Engine *engine) {
  const double density = room_density(engine);
  const double energy_density = engine->room_pressure / (engine->gas.gamma - 1.0);
  engine->scale = allocate(engine_dimension(engine) * sizeof(double));
  engine->scale[CRANK_ANGLE] = 1e-2;
  engine->scale[SPEED] = 1e-1;
  for (int i = 0; i < engine->volume_count; i += 1) {
    const double volume =
        i < engine->fixed_count ? engine->fixed_volumes[i] : engine->ends[i - engine->fixed_count].clearance;
    engine->scale[FIRST_GAS + 2 * i] = density * volume;
    engine->scale[FIRST_GAS + 2 * i + 1] = energy_density * volume;
  }
}

Engine *engine_read(const char *path) {
  FILE *file = fopen(path, "r");
  if (file == NULL) {
    fprintf(stderr, "cannot open %s\n", path);
    exit(1);
  }
  Engine *engine = allocate(sizeof(Engine));
  read_gas(engine, file);
  read_word(file, "surroundings");
  engine->room_pressure = read_number(file);
  engine->room_temperature = read_number(file);
  engine->supply_pressure = read_number(file);
  engine->supply_temperature = read_number(file);
  read_mechanics(engine, file);
  read_parts(engine, file);
  fclose(file);
  engine->volume_count = engine->fixed_count + engine->end_count;
  const int places = FIRST_VOLUME + engine->volume_count;
  engine->pressure = allocate(places * sizeof(double));
  engine->temperature = allocate(places * sizeof(double));
  engine->volume = allocate(engine->end_count * sizeof(double));
  engine->volume_rate = allocate(engine->end_count * sizeof(double));
  engine->own_angle = allocate(engine->lag_count * sizeof(double));
  engine->pressure[SUPPLY] = engine->supply_pressure;
  engine->temperature[SUPPLY] = engine->supply_temperature;
  engine->pressure[ATMOSPHERE] = engine->room_pressure;
  engine->temperature[ATMOSPHERE] = engine->room_temperature;
  write_scale(engine);
  return engine;
}

void engine_free(Engine *engine) {
  for (int i = 0; i < engine->passage_count; i += 1) angle_table_free(&engine->passages[i].area);
  for (int i = 0; i < engine->cylinder_count; i += 1) {
    Drag *drag = &engine->cylinders[i].drag;
    angle_table_free(&drag->lever);
    angle_table_free(&drag->per_cylinder.table);
    angle_table_free(&drag->per_other_end.table);
    angle_table_free(&drag->per_speed);
  }
  free(engine->fixed_volumes);
  free(engine->ends);
  free(engine->cylinders);
  free(engine->passages);
  free(engine->lags);
  free(engine->scale);
  free(engine->pressure);
  free(engine->temperature);
  free(engine->volume);
  free(engine->volume_rate);
  free(engine->own_angle);
  free(engine);
}

int engine_dimension(const Engine *engine) { return FIRST_GAS + 2 * engine->volume_count; }

const double *engine_scale(const Engine *engine) { return engine->scale; }

double engine_supply_flow(const Engine *engine) { return engine->supply_flow; }

double engine_filling(const Engine *engine) {
  return room_density(engine) * (engine->ends[0].swept + engine->ends[0].clearance);
}

typedef struct {
  double travel, rate, curvature;
} Stroke;

static inline Stroke rocking_stroke_at(const Engine *engine, double sine, double cosine) {
  const double r = engine->crank_radius;
  const double l = engine->trunnion_distance;
  const double product = l * r;
  const double along = l - r * cosine;
  const double across = r * sine;
  const double inverse = 1.0 / sqrt(along * along + across * across);
  Stroke stroke;
  stroke.travel = 1.0 / inverse - (l - r);
  stroke.rate = product * sine * inverse;
  stroke.curvature = product * cosine * inverse - stroke.rate * stroke.rate * inverse;
  return stroke;
}

static inline Stroke stroke_at(const Engine *engine, double sine, double cosine) {
  if (engine->trunnion_distance > 0.0) return rocking_stroke_at(engine, sine, cosine);
  const double r = engine->crank_radius;
  const double l = engine->rod_length;
  const double r2 = r * r;
  const double rod = sqrt(l * l - r2 * sine * sine);
  const double inverse = 1.0 / rod;
  const double product = sine * cosine;
  Stroke stroke;
  stroke.travel = r * (1.0 - cosine) + l - rod;
  stroke.rate = r * sine + r2 * product * inverse;
  stroke.curvature = r * cosine + r2 * (cosine * cosine - sine * sine) * inverse +
                     r2 * r2 * product * product * inverse * inverse * inverse;
  return stroke;
}

static inline double end_volume(const End *end, double travel) {
  return end->clearance + (end->sign > 0.0 ? end->area * travel : end->swept - end->area * travel);
}

static void set_gas(Engine *engine, const double *y) {
  const Gas *gas = &engine->gas;
  for (int i = 0; i < engine->volume_count; i += 1) {
    const double volume =
        i < engine->fixed_count ? engine->fixed_volumes[i] : engine->volume[i - engine->fixed_count];
    const double mass = larger(y[FIRST_GAS + 2 * i], LEAST_DENSITY * volume);
    const double t = y[FIRST_GAS + 2 * i + 1] / (mass * gas->cv);
    const double bounded = smaller(MOST_TEMPERATURE, larger(LEAST_TEMPERATURE, t));
    engine->temperature[FIRST_VOLUME + i] = bounded;
    engine->pressure[FIRST_VOLUME + i] = gas->gas_constant * mass * bounded / volume;
  }
}

static double valve_opening(const SwitchedValve *valve, double angle, double speed) {
  const double travel = larger(speed * valve->travel_time, valve->shortest_travel);
  const double moved = valve->commanded_length + speed * (valve->closing_delay - valve->opening_delay);
  const double shut_again = moved + smaller(moved, travel);
  double since = angle - valve->opens - speed * valve->opening_delay;
  since -= FULL_TURN * floor(since / FULL_TURN);
  const double of_this_turn = smaller(since, shut_again - since);
  const double of_last_turn = shut_again - since - FULL_TURN;
  return larger(0.0, smaller(1.0, larger(of_this_turn, of_last_turn) / travel));
}

/* Least surface between seat and valve, or what the bore leaves. */
static double lifted_area(const LiftedValve *valve, double lift) {
  const double edge = valve->seat_radius;
  double opening = 2.0 * 3.141592653589793 * edge * lift;
  if (valve->is_ball) {
    const double ball = valve->ball_radius;
    const double height = sqrt(ball * ball - edge * edge);
    const double to_edge = sqrt((height + lift) * (height + lift) + edge * edge);
    const double slant = lift * (2.0 * height + lift) / (to_edge + ball);
    opening = 3.141592653589793 * edge * slant * (1.0 + ball / to_edge);
  }
  return valve->discharge * smaller(valve->bore_area, opening);
}

/* Lift by air under it, of so much more pressure than above it. */
static double check_lift(const LiftedValve *valve, double excess) {
  const double u = smaller(1.0, larger(0.0, (excess - valve->cracking) / valve->span));
  return valve->rise * u * u * (3.0 - 2.0 * u);
}

/* Flow from place 1, of the higher pressure, to 2. */
static inline double flow_down(const Engine *engine, const Passage *passage, double speed, int a, int b) {
  const Gas *gas = &engine->gas;
  const double angle = engine->own_angle[passage->lag];
  const double p1 = engine->pressure[a];
  const double t1 = engine->temperature[a];
  const double p2 = engine->pressure[b];
  switch (passage->kind) {
    case NOZZLE: {
      const double area = angle_table_value(&passage->area, angle);
      return area <= 0.0 ? 0.0 : nozzle_flow(gas, area, p1, t1, p2);
    }
    case GAP:
      if (passage->section == 0.0) return 0.0;
      return gap_flow(gas, angle_table_value(&passage->area, angle), passage->section, p1, t1, p2);
    case CONDUIT:
      return conductance_flow(gas, passage->factor, passage->ratio, p1, t1, p2);
    case REGULATOR: {
      const double opening = smaller(1.0, (passage->set_pressure - p2) / passage->droop);
      if (opening <= 0.0 || a != passage->from) return 0.0;
      return opening * conductance_flow(gas, passage->factor, passage->ratio, p1, t1, p2);
    }
    case LIFTED: {
      const double pinned = angle_table_value(&passage->area, angle);
      const double lift = a == passage->from ? pinned : larger(pinned, check_lift(&passage->lifted, p1 - p2));
      return lift <= 0.0 ? 0.0 : nozzle_flow(gas, lifted_area(&passage->lifted, lift), p1, t1, p2);
    }
    default: {
      const double opening = valve_opening(&passage->valve, angle, speed);
      return opening == 0.0 ? 0.0 : opening * conductance_flow(gas, passage->factor, passage->ratio, p1, t1, p2);
    }
  }
}

static void add_flows(Engine *engine, double speed, double *slopes) {
  const double cp = engine->gas.cp;
  double supply_flow = 0.0;
  for (int i = 0; i < engine->passage_count; i += 1) {
    const Passage *passage = &engine->passages[i];
    const int forward = engine->pressure[passage->from] >= engine->pressure[passage->to];
    const int a = forward ? passage->from : passage->to;
    const int b = forward ? passage->to : passage->from;
    const double flow = flow_down(engine, passage, speed, a, b);
    const double enthalpy = flow * cp * engine->temperature[a];
    if (a >= FIRST_VOLUME) {
      slopes[FIRST_GAS + 2 * (a - FIRST_VOLUME)] -= flow;
      slopes[FIRST_GAS + 2 * (a - FIRST_VOLUME) + 1] -= enthalpy;
    } else if (a == SUPPLY) supply_flow += flow;
    if (b >= FIRST_VOLUME) {
      slopes[FIRST_GAS + 2 * (b - FIRST_VOLUME)] += flow;
      slopes[FIRST_GAS + 2 * (b - FIRST_VOLUME) + 1] += enthalpy;
    } else if (b == SUPPLY) supply_flow -= flow;
  }
  engine->supply_flow = supply_flow;
}

static double wall_heat(const Engine *engine, const End *end, double volume, double speed) {
  if (engine->wall_kind == NO_WALL_HEAT) return 0.0;
  const double t = engine->temperature[end->place];
  const double area = 2.0 * end->area + 3.141592653589793 * engine->bore * volume / end->area;
  double coefficient = engine->wall_coefficient;
  if (engine->wall_kind == CORRELATED_WALL_HEAT) {
    const double mu = viscosity(&engine->gas, t);
    const double density = engine->pressure[end->place] / (engine->gas.gas_constant * t);
    const double piston_speed = 2.0 * engine->crank_radius * speed / 3.141592653589793;
    coefficient *= mu * pow(density * piston_speed * engine->bore / mu, 0.8);
  }
  return coefficient * area * (engine->wall_temperature - t);
}

static inline double of_lever(const MultipleOrTable *one, double lever, double angle) {
  return one->multiple * lever + angle_table_value(&one->table, angle);
}

/* Mean pressure under a film between two places. */
static inline double mean_film_pressure(double a, double b) {
  return 2.0 / 3.0 * (a * a + a * b + b * b) / (a + b);
}

static double drag_torque(const Engine *engine, const Cylinder *cylinder, double angle, double other_end) {
  const Drag *drag = &cylinder->drag;
  const double lever = angle_table_value(&drag->lever, angle);
  const double chest = engine->pressure[engine->chest];
  double pressed = drag->spring + drag->per_chest * (chest - engine->room_pressure);
  if (drag->per_film != 0.0) pressed += drag->per_film * (chest - mean_film_pressure(chest, engine->room_pressure));
  const double torque = lever * pressed +
                        of_lever(&drag->per_cylinder, lever, angle) * (chest - engine->pressure[cylinder->cover]) +
                        of_lever(&drag->per_other_end, lever, angle) * (chest - other_end);
  return lever * drag->always + (drag->magnitude ? fabs(torque) : larger(0.0, torque));
}

void engine_slopes(Engine *engine, const double *y, double *slopes) {
  const double angle = y[CRANK_ANGLE];
  const double speed = y[SPEED];
  const double room = engine->room_pressure;
  const int per_cylinder = engine->end_count / engine->cylinder_count;
  double inertia = 0.0, gravity = 0.0, moment = engine->flywheel, lever[8];

  for (int k = 0; k < engine->cylinder_count; k += 1) {
    const double own = angle - engine->cylinders[k].offset;
    const double sine = sin(own);
    const double cosine = cos(own);
    const Stroke stroke = stroke_at(engine, sine, cosine);
    lever[k] = stroke.rate;
    gravity += engine->weight * stroke.rate;
    moment += engine->mass * stroke.rate * stroke.rate;
    inertia -= engine->mass * stroke.rate * stroke.curvature * speed * speed;
    for (int i = k * per_cylinder; i < (k + 1) * per_cylinder; i += 1) {
      const End *end = &engine->ends[i];
      engine->volume[i] = end_volume(end, stroke.travel);
      engine->volume_rate[i] = end->sign * end->area * stroke.rate;
    }
  }
  for (int i = 0; i < engine->lag_count; i += 1) {
    const double own = angle - engine->lags[i];
    const double wrapped = own - FULL_TURN * floor(own / FULL_TURN);
    engine->own_angle[i] = wrapped < FULL_TURN ? wrapped : 0.0;
  }
  set_gas(engine, y);

  for (int i = 0; i < engine_dimension(engine); i += 1) slopes[i] = 0.0;
  add_flows(engine, speed, slopes);

  double gas_torque = 0.0, piston = 0.0, gear = 0.0;
  for (int i = 0; i < engine->end_count; i += 1) {
    const End *end = &engine->ends[i];
    const double p = engine->pressure[end->place];
    gas_torque += (p - room) * engine->volume_rate[i];
    slopes[FIRST_GAS + 2 * (end->place - FIRST_VOLUME) + 1] +=
        wall_heat(engine, end, engine->volume[i], speed) - p * engine->volume_rate[i] * speed;
  }
  for (int k = 0; k < engine->cylinder_count; k += 1) {
    const Cylinder *cylinder = &engine->cylinders[k];
    const double behind = cylinder->crank < 0 ? room : engine->pressure[cylinder->crank];
    double force =
        engine->piston_force + engine->piston_per_pressure * fabs(engine->pressure[cylinder->cover] - behind);
    if (cylinder->crank >= 0) force += engine->gland_force + engine->gland_per_pressure * fabs(behind - room);
    piston += force * fabs(lever[k]);
    const double own = engine->own_angle[cylinder->lag];
    gear += drag_torque(engine, cylinder, own, behind) + speed * angle_table_value(&cylinder->drag.per_speed, own);
  }
  const double share = speed / engine->stribeck;
  const double bearing = engine->running + (engine->breakaway - engine->running) * exp(-share * share) +
                         engine->viscous * speed;
  const double load = larger(0.0, engine->load[0] + speed * (engine->load[1] + speed * engine->load[2]));
  slopes[CRANK_ANGLE] = speed;
  slopes[SPEED] = (gas_torque + inertia + gravity - bearing - piston - gear - load) / moment;
}

void engine_initial_state(const Engine *engine, double angle, double speed, double *y) {
  const double density = room_density(engine);
  const double energy_density = engine->room_pressure / (engine->gas.gamma - 1.0);
  y[CRANK_ANGLE] = angle;
  y[SPEED] = speed;
  for (int i = 0; i < engine->volume_count; i += 1) {
    double volume = i < engine->fixed_count ? engine->fixed_volumes[i] : 0.0;
    if (i >= engine->fixed_count) {
      const End *end = &engine->ends[i - engine->fixed_count];
      const double own = angle - engine->cylinders[end->cylinder].offset;
      volume = end_volume(end, stroke_at(engine, sin(own), cos(own)).travel);
    }
    y[FIRST_GAS + 2 * i] = density * volume;
    y[FIRST_GAS + 2 * i + 1] = energy_density * volume;
  }
}
