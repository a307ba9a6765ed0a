/**
 * One engine as a file of numbers for the C reference, c/engine.c; laws of the crank angle become fine tables. Whatever
 * the C side could not reckon exactly alike is refused with a reason.
 */
import { ANR_DENSITY, ANR_TEMPERATURE } from '../../src/gas/reference-atmosphere.ts';
import type { Conductance } from '../../src/gas/conductance.ts';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import type { Gas } from '../../src/gas/gas.ts';
import type { Engine, EnginePassage } from '../../src/model/engine.ts';
import { SLOT } from '../../src/model/slots.ts';
import type { EngineSystem } from '../../src/model/system.ts';
import { crankAngle, forwardAngle, wrappedAngle } from '../../src/parts/crank-positions.ts';
import { crankOffset } from '../../src/parts/cylinder.ts';
import { partContext, type EngineSpec } from '../../src/parts/engine-description.ts';
import { openingLaw, type Port } from '../../src/parts/passage.ts';
import { pistonTravel } from '../../src/parts/crank-train.ts';
import { checkLift } from '../../src/parts/valve-gears/check-lift.ts';
import type { PistonLiftedValve } from '../../src/parts/valve-gears/piston-lifted-valve-parameters.ts';
import { angleTable } from './angle-table.ts';
import { dragNumbers } from './drag-numbers.ts';

/** As c/engine.c numbers them. */
const LAW = { nozzle: 0, gap: 1, conduit: 2, regulator: 3, switched: 4, lifted: 5 } as const;
const WALL: Readonly<Record<string, number>> = { none: 0, constant: 1, correlation: 2 };

const GRAVITY = 9.80665;
const OUTWARD_IS_DOWN = { horizontal: 0, upright: 1, inverted: -1 } as const;
const SHORTEST_TRAVEL = (0.1 * Math.PI) / 180;

const line = (name: string, ...values: readonly number[]): string => `${name} ${values.join(' ')}`;

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b));

/** What the C reference cannot reckon. */
export class NotInC extends Error {}

function refuseUnless(holds: boolean, what: string): void {
  if (!holds) throw new NotInC(`the C reference does not know ${what}`);
}

/** μ = c T^1.5/(T + S), with c and S from two temperatures, and a third to see that it is this law. */
function sutherlandOf(gas: Gas): readonly [factor: number, constant: number] {
  const reduced = (t: number): number => gas.viscosity(t) / t ** 1.5;
  const [cold, warm] = [250, 350];
  const ratio = reduced(cold) / reduced(warm);
  const constant = (warm - ratio * cold) / (ratio - 1);
  const factor = reduced(cold) * (cold + constant);
  refuseUnless(near(gas.viscosity(500), (factor * 500 ** 1.5) / (500 + constant)), 'this law of viscosity');
  return [factor, constant];
}

/** Torque c₀ + c₁ω + c₂ω², likewise. */
function loadOf({ load }: Engine): readonly [number, number, number] {
  const [at0, at50, at100] = [load.torque(0), load.torque(50), load.torque(100)];
  const c2 = (at100 - 2 * at50 + at0) / 5000;
  const c1 = (at50 - at0) / 50 - 50 * c2;
  refuseUnless(
    [10, 30, 150].every((speed) => near(load.torque(speed), at0 + c1 * speed + c2 * speed * speed)),
    'this law of the load',
  );
  return [at0, c1, c2];
}

interface WallValues {
  readonly coefficient?: number;
  readonly wall_temperature?: number;
}

function wallOf(spec: EngineSpec, { gas }: Engine): string {
  const { kind, values } = spec.cylinder.wall_heat;
  const { coefficient, wall_temperature } = values as WallValues;
  const number = WALL[kind];
  refuseUnless(number !== undefined, `wall heat of the kind "${kind}"`);
  const correlated =
    (0.053 * gas.prandtlNumber ** -0.4 * gas.heatCapacityAtConstantPressure) / spec.cylinder.bore;
  return line('wall', number!, wall_temperature ?? spec.atmosphere.temperature, coefficient ?? correlated);
}

interface SwitchedValues {
  readonly sonic_conductance: number;
  readonly critical_pressure_ratio: number;
  readonly opens: Parameters<typeof crankAngle>[1];
  readonly closes: Parameters<typeof crankAngle>[1];
  readonly opening_delay: number;
  readonly closing_delay: number;
  readonly travel_time: number;
}

interface Exporter {
  readonly spec: EngineSpec;
  readonly engine: Engine;
  readonly lags: readonly number[];
}

/** C ρ₀ √T₀ scaled to the gas, and b. */
function elementNumbers({ gas }: Engine, { sonicConductance, criticalPressureRatio }: Conductance): number[] {
  const factor = sonicConductance * ANR_DENSITY * Math.sqrt(ANR_TEMPERATURE);
  return [(factor * gas.chokedFlowFactor) / dryAir.chokedFlowFactor, criticalPressureRatio];
}

function switchedNumbers({ spec, engine }: Exporter, role: 'admission' | 'exhaust'): number[] {
  const own = spec.valve_gear.values[role] as SwitchedValues;
  const { crank } = partContext(spec);
  const opens = crankAngle(crank, own.opens);
  const element = {
    sonicConductance: own.sonic_conductance,
    criticalPressureRatio: own.critical_pressure_ratio,
  };
  return [
    ...elementNumbers(engine, element),
    opens,
    forwardAngle(opens, crankAngle(crank, own.closes)),
    own.opening_delay,
    own.closing_delay,
    own.travel_time,
    SHORTEST_TRAVEL,
  ];
}

interface TableValues {
  readonly areas?: { readonly argument: readonly number[] };
}

/** Angles at which laws of the gear behind a lag may kink, as its own crank sees them. */
function kinksAt({ spec, engine }: Exporter, lag: number): readonly number[] {
  const end = engine.ends.find(({ deadCentre }) => deadCentre === lag);
  // A table of areas changes its curvature at every row.
  const rows = (spec.valve_gear.values as TableValues).areas?.argument ?? [];
  return [0, Math.PI, ...(end?.valveGear.edges ?? []), ...rows.map(wrappedAngle)];
}

function passageLine(exporter: Exporter, own: EnginePassage): string {
  const { spec, engine, lags } = exporter;
  const { passage, from, to, lag, name } = own;
  const head = (law: number): string => `${law} ${from} ${to} ${lags.indexOf(lag)}`;
  const { flow, role } = passage;
  if (flow === undefined && role === 'admission' && spec.valve_gear.kind === 'piston-lifted valve')
    return `${head(LAW.lifted)} ${liftedNumbers(exporter, kinksAt(exporter, lag))}`;
  if (flow === undefined) return line(head(LAW.regulator), ...regulatorNumbers(exporter, name));
  const { opening } = flow;
  const table = (): string =>
    typeof opening === 'number'
      ? `0 ${opening}`
      : angleTable((angle) => openingLaw(opening)(angle, 0), kinksAt(exporter, lag));
  switch (flow.law) {
    case 'nozzle':
      return `${head(LAW.nozzle)} ${table()}`;
    case 'gap':
      // Without a section nothing passes, whatever the resistance.
      return `${head(LAW.gap)} ${flow.section} ${flow.section === 0 ? '0 1' : table()}`;
    case 'element':
      if (opening === 1) return line(head(LAW.conduit), ...elementNumbers(engine, flow.element));
      refuseUnless(spec.valve_gear.kind === 'electric valves', `the passage "${name}"`);
      return line(head(LAW.switched), ...switchedNumbers(exporter, role as Port['role']));
  }
}

/** Of a valve that a pin on the piston lifts, and air from behind. */
function liftedNumbers({ spec }: Exporter, kinks: readonly number[]): string {
  const own = spec.valve_gear.values as unknown as PistonLiftedValve;
  const { crank } = partContext(spec);
  const radius = own.seat_diameter / 2;
  const seatArea = Math.PI * radius ** 2;
  const rise = own.rise ?? own.lift;
  const check = checkLift({ seatArea, springForce: own.spring_force, rise });
  // It rises along a smooth step, from cracking on; its middle says how wide that is.
  const cracking = own.spring_force / seatArea;
  const isPast = (excess: number): boolean => check(excess) >= rise / 2;
  let [low, high] = [cracking, cracking + 1e6];
  for (let i = 0; i < 80; i += 1) {
    const middle = (low + high) / 2;
    if (isPast(middle)) high = middle;
    else low = middle;
  }
  const pinLift = (angle: number): number =>
    Math.max(0, own.lift - pistonTravel(crank, Math.sin(angle), Math.cos(angle)));
  return [
    own.shape === 'ball' ? 1 : 0,
    radius,
    own.valve_diameter / 2,
    seatArea - (Math.PI / 4) * own.pin_diameter ** 2,
    own.discharge_coefficient,
    cracking,
    2 * (high - cracking),
    rise,
    angleTable(pinLift, kinks),
  ].join(' ');
}

function regulatorNumbers({ spec, engine }: Exporter, name: string): number[] {
  const { regulator, pressure } = spec.supply;
  if (regulator === undefined || name !== 'regulator')
    throw new NotInC(`the C reference does not know the passage "${name}"`);
  const element = {
    sonicConductance: regulator.sonic_conductance,
    criticalPressureRatio: regulator.critical_pressure_ratio,
  };
  return [...elementNumbers(engine, element), pressure, regulator.droop];
}

function cylinderLines(
  { spec, engine, lags }: Exporter,
  kinksOf: (lag: number) => readonly number[],
): string[] {
  const perCylinder = engine.ends.length / spec.cylinder.cylinders;
  return Array.from({ length: spec.cylinder.cylinders }, (_, index) => {
    const cover = engine.ends[index * perCylinder]!;
    const crank = perCylinder === 2 ? engine.ends[index * 2 + 1]!.place : -1;
    return [
      line('', crankOffset(spec.cylinder, index), lags.indexOf(cover.deadCentre), cover.place, crank),
      dragNumbers(cover.valveGear, engine.atmosphere.pressure, kinksOf(cover.deadCentre)),
    ].join('\n');
  });
}

export function engineFile(spec: EngineSpec, engine: Engine): string {
  const { gas, atmosphere, supply, cylinder, crank, friction, ends, volumes, passages } = engine;
  const lags = [...new Set([0, ...ends.map(({ deadCentre }) => deadCentre)])];
  const exporter: Exporter = { spec, engine, lags };
  const fixed = volumes.flatMap(({ fixedVolume }) => fixedVolume ?? []);
  const mass = cylinder.reciprocating_mass;
  const weight = mass * GRAVITY * OUTWARD_IS_DOWN[cylinder.attitude];
  return [
    line(
      'gas',
      gas.specificGasConstant,
      gas.heatCapacityRatio,
      ...sutherlandOf(gas),
      gas.equalPressureRounding,
    ),
    line('surroundings', atmosphere.pressure, atmosphere.temperature, supply.pressure, supply.temperature),
    line(
      'crank',
      crank.crankRadius,
      crank.rodLength,
      crank.oscillating?.trunnionDistance ?? 0,
      cylinder.bore,
      engine.chest,
    ),
    line('masses', mass, weight, engine.flywheel.momentOfInertia),
    line(
      'friction',
      friction.running_torque,
      friction.breakaway_torque,
      friction.stribeck_speed,
      friction.viscous_torque,
      friction.piston_force,
      friction.piston_force_per_pressure,
      friction.gland_force,
      friction.gland_force_per_pressure,
    ),
    line('load', ...loadOf(engine)),
    wallOf(spec, engine),
    line('lags', lags.length, ...lags),
    line('volumes', fixed.length, ...fixed),
    line('ends', ends.length),
    ...ends.map((end) =>
      line('', end.cylinder, end.side === 'cover' ? 1 : -1, end.area, end.sweptVolume, end.clearanceVolume),
    ),
    line('cylinders', cylinder.cylinders),
    ...cylinderLines(exporter, (lag) => kinksAt(exporter, lag)),
    line('passages', passages.length),
    ...passages.map((passage) => passageLine(exporter, passage)),
    'end',
  ].join('\n');
}

/** What C knows of a state, or of its slopes: crank angle, speed, and the gas. */
export const sharedWithC = ({ slots }: EngineSystem, y: Float64Array): number[] => [
  y[SLOT.crankAngle]!,
  y[SLOT.speed]!,
  ...y.subarray(slots.mass(0), slots.firstTotal),
];
