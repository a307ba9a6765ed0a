/**
 * An engine with nothing in the way, for closed forms: no friction, no load, no leaks, a flywheel that does not feel the
 * pushes, an endless chest of air, and ports that open and shut within a hair of the crank angle.
 */
import type { Chosen } from '../../src/kinds/kind.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { buildEngine, FIRST_VOLUME } from '../../src/model/engine.ts';
import { engineSystem, type EngineSystem } from '../../src/model/system.ts';
import { forwardAngle } from '../../src/parts/crank-positions.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { givenFlywheel } from '../../src/parts/flywheels/given.ts';
import { constantLoad } from '../../src/parts/loads/constant.ts';
import type { PartContext } from '../../src/parts/part-context.ts';
import { port, type AreaLaw } from '../../src/parts/passage.ts';
import { orderedEdges, type ValveGear } from '../../src/parts/valve-gears/valve-gear.ts';
import { noWallHeat } from '../../src/parts/wall-heat/none.ts';
import { measureCycle, type MeasuredCycle } from '../../src/run/cycle.ts';
import { engineStepper } from '../../src/run/stepper.ts';

/** Crank angles between which a port stands open [rad]. */
interface Opening {
  readonly opens: number;
  readonly closes: number;
}

interface IdealGear {
  /** Effective area of an open port [m²]. */
  readonly area: AreaLaw;
  /** A port without an opening is never open. */
  readonly admission?: Opening;
  readonly exhaust?: Opening | 'always';
  /** Torque at the crankshaft [N m], in place of a drag. */
  readonly torque?: (angle: number) => number;
}

/** Crank angle that a port takes from shut to full area [rad]; a jump would be no place for an integrator to stop at. */
const RAMP = 1e-4;

function openingArea(area: AreaLaw, opening: IdealGear['exhaust']): AreaLaw {
  if (opening === undefined) return () => 0;
  if (opening === 'always') return area;
  const duration = forwardAngle(opening.opens, opening.closes);
  return (angle, speed) => {
    const since = forwardAngle(opening.opens, angle);
    return area(angle, speed) * Math.max(0, Math.min(1, since / RAMP, (duration - since) / RAMP));
  };
}

const openingEdges = (opening: IdealGear['exhaust']): number[] =>
  opening === undefined || opening === 'always'
    ? []
    : [opening.opens, opening.opens + RAMP, opening.closes - RAMP, opening.closes];

export function idealGear(gear: IdealGear): Chosen<PartContext, ValveGear> {
  const { admission, exhaust } = gear;
  const shut = { opens: 0, closes: 0 };
  const exhaustEvents = exhaust === undefined || exhaust === 'always' ? shut : exhaust;
  const build = ({ gas }: PartContext): ValveGear => ({
    ports: [
      port(
        gas,
        'admission',
        { name: 'ideal admission', from: 'chest', to: 'cylinder' },
        openingArea(gear.area, admission),
      ),
      port(
        gas,
        'exhaust',
        { name: 'ideal exhaust', from: 'cylinder', to: 'atmosphere' },
        openingArea(gear.area, exhaust),
      ),
    ],
    sealingGaps: [],
    edges: orderedEdges([...openingEdges(admission), ...openingEdges(exhaust)]),
    events: {
      admission: (admission ?? shut).opens,
      cutOff: (admission ?? shut).closes,
      release: exhaustEvents.opens,
      compression: exhaustEvents.closes,
    },
    derivedSizes: [],
    dragTorque: (angle) => gear.torque?.(angle) ?? 0,
  });
  return { kind: 'ideal', values: {}, contextWith: (context) => context, complaints: () => [], build };
}

export const NO_FRICTION: EngineSpec['friction'] = {
  running_torque: 0,
  breakaway_torque: 0,
  stribeck_speed: 1,
  viscous_torque: 0,
  piston_force: 0,
  piston_force_per_pressure: 0,
  gland_force: 0,
  gland_force_per_pressure: 0,
};

/** A hose of that bore and length [m] without fittings. */
export const plainHose = (bore: number, length: number): EngineSpec['supply']['hose'] => ({
  bore,
  length,
  fitting_bore: undefined,
  fittings: 2,
});

type Changes = Partial<Omit<EngineSpec, 'atmosphere' | 'cylinder' | 'supply' | 'start'>> & {
  readonly atmosphere?: Partial<EngineSpec['atmosphere']>;
  readonly cylinder?: Partial<EngineSpec['cylinder']>;
  readonly supply?: Partial<EngineSpec['supply']>;
  readonly start?: Partial<EngineSpec['start']>;
};

/** A closed, frictionless engine of 50 × 60 mm without load in room air; everything else is said by `changes`. */
export function idealEngine(changes: Changes): EngineSpec {
  const { atmosphere, cylinder, supply, start, ...others } = changes;
  return {
    title: 'ideal engine',
    notes: '',
    gas: 'dry air',
    atmosphere: { pressure: 101_325, temperature: 288.15, relative_humidity: 0, ...atmosphere },
    flywheel: givenFlywheel.choose({ moment_of_inertia: 1e9 }),
    friction: NO_FRICTION,
    load: constantLoad.choose({ torque: 0 }),
    valve_gear: idealGear({ area: () => 0 }),
    leaks: [],
    compressor: undefined,
    running_direction: 'forward',
    run: { longest_time: 3600 },
    ...others,
    cylinder: {
      bore: 0.05,
      stroke: 0.06,
      rod_length: 0.12,
      clearance: 0.05,
      action: 'single',
      piston_rod_diameter: undefined,
      crank_end_clearance: undefined,
      cylinders: 1,
      crank_spacing: undefined,
      attitude: 'horizontal',
      reciprocating_mass: 0,
      wall_thickness: undefined,
      material: undefined,
      wall_heat: noWallHeat.choose({}),
      ...cylinder,
    },
    supply: {
      pressure: 101_325,
      temperature: undefined,
      regulator: undefined,
      hose: plainHose(0.01, 1),
      rated_pressure: undefined,
      chest_volume: 1e4,
      ...supply,
    },
    start: { crank_angle: 0, hand_speed: 1, ...start },
  };
}

/** The system of a description, and the state at its start with the chest full of supply air. */
export function atStart(spec: EngineSpec): { readonly system: EngineSystem; readonly y: Float64Array } {
  const system = engineSystem(buildEngine(spec));
  const { engine, slots } = system;
  const y = initialState(system, spec.start.crank_angle, spec.start.hand_speed);
  const { gas, supply } = engine;
  const chest = engine.chest - FIRST_VOLUME;
  const volume = engine.volumes[chest]!.fixedVolume!;
  y[slots.mass(chest)] = (supply.pressure * volume) / (gas.specificGasConstant * supply.temperature);
  y[slots.energy(chest)] = (supply.pressure * volume) / (gas.heatCapacityRatio - 1);
  return { system, y };
}

/** Fills the first cylinder end of a state with gas of that pressure [Pa] and temperature [K]. */
export function fillCylinder(
  system: EngineSystem,
  y: Float64Array,
  pressure: number,
  temperature: number,
): void {
  const { engine, slots } = system;
  const { gas } = engine;
  const cylinder = engine.ends[0].place - FIRST_VOLUME;
  const [volume] = system.observe(y).endVolume as unknown as [number];
  y[slots.mass(cylinder)] = (pressure * volume) / (gas.specificGasConstant * temperature);
  y[slots.energy(cylinder)] = (pressure * volume) / (gas.heatCapacityRatio - 1);
}

/** One turn from top dead centre, after which the engine must stand there again. */
export function oneTurn(system: EngineSystem, y: Float64Array): MeasuredCycle {
  const turn = measureCycle(system, engineStepper(system), y);
  if ('reason' in turn) throw new Error(`the turn ended early: ${turn.reason}`);
  return turn;
}
