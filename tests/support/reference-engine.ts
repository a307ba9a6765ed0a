/**
 * Engines for tests, described by hand: a one-cylinder engine of 50 mm bore on 3 bar gauge that settles quickly, with
 * either valve gear. The flywheel is light, so that a run costs few turns.
 */
import type { CrankPosition } from '../../src/kinds/parameter.ts';
import { engineParameters, type EngineSpec } from '../../src/parts/engine-description.ts';
import { flywheels } from '../../src/parts/flywheels/registry.ts';
import { leaks } from '../../src/parts/leaks/registry.ts';
import { loads } from '../../src/parts/loads/registry.ts';
import { valveGears } from '../../src/parts/valve-gears/registry.ts';
import { wallHeats } from '../../src/parts/wall-heat/registry.ts';
import { chosen, filled } from './chosen.ts';

export const DEGREE = Math.PI / 180;
export const RPM = (2 * Math.PI) / 60;

type ValveGear = EngineSpec['valve_gear'];

interface SpoolSizes {
  readonly clearance?: number;
  readonly lap?: number;
  readonly cutOff?: number;
  /** Timed for the other sense of rotation. */
  readonly mirrored?: boolean;
}

const angle = (degrees: number): CrankPosition => ({ by: 'angle', angle: degrees * DEGREE });
const outward = (fraction: number): CrankPosition => ({ by: 'outward stroke', fraction });
const onReturn = (fraction: number): CrankPosition => ({ by: 'return stroke', fraction });

/** Cam-driven spools: 12 mm and 14 mm, admission over half the stroke unless said otherwise. */
export function spoolGear({
  clearance = 6e-6,
  lap = 1e-3,
  cutOff = 0.5,
  mirrored = false,
}: SpoolSizes = {}): ValveGear {
  const timing = mirrored
    ? {
        admission: { opens: onReturn(1 - cutOff), closes: angle(5) },
        exhaust: { opens: outward(0.08), closes: angle(195) },
      }
    : {
        admission: { opens: angle(-5), closes: outward(cutOff) },
        exhaust: { opens: angle(165), closes: onReturn(0.92) },
      };
  return chosen(valveGears, 'cam-driven spools', {
    drive_torque: 0.06,
    admission: {
      spool_diameter: 12e-3,
      waist_diameter: 6e-3,
      waist_length: 7e-3,
      hole_diameter: 6e-3,
      clearance: { by: 'gap', gap: clearance },
      lap,
      end_land: 10e-3,
      lift: 6.2e-3 + lap,
      lash: 0.2e-3,
      flank: 55 * DEGREE,
      ...timing.admission,
    },
    exhaust: {
      spool_diameter: 14e-3,
      waist_diameter: 7e-3,
      waist_length: 8e-3,
      hole_diameter: 7e-3,
      clearance: { by: 'gap', gap: clearance },
      lap,
      end_land: 10e-3,
      lift: 7.2e-3 + lap,
      lash: 0.2e-3,
      flank: 60 * DEGREE,
      ...timing.exhaust,
    },
  });
}

interface DiscSizes {
  readonly slots?: number;
  readonly faceGap?: number;
  readonly filmViscosity?: number;
  readonly bodyAdvance?: number;
}

/** A slotted disc of 100 mm between two plates. */
export function discGear({
  slots = 1,
  faceGap = 30e-6,
  filmViscosity = 0,
  bodyAdvance = 0,
}: DiscSizes = {}): ValveGear {
  return chosen(valveGears, 'rotary disc', {
    disc_diameter: 0.1,
    shaft_diameter: 12e-3,
    slots,
    face_gap: faceGap,
    film_viscosity: filmViscosity,
    body_advance: bodyAdvance,
    preload_torque: 0.1,
    admission: {
      pitch_radius: 38e-3,
      hole_diameter: 8e-3,
      slot_width: 8e-3,
      opens: angle(-5),
      closes: outward(0.5),
    },
    exhaust: {
      pitch_radius: 24e-3,
      hole_diameter: 9e-3,
      slot_width: 9e-3,
      opens: angle(165),
      closes: onReturn(0.92),
    },
  });
}

/** Torque that grows with the speed: an offset [N m] and a slope [N m per rpm]. */
export const growingLoad = (offset: number, perRpm: number): EngineSpec['load'] =>
  chosen(loads, 'formula', { torque: (speed: number) => offset + (perRpm * speed) / RPM });

export const constantLoad = (torque: number): EngineSpec['load'] => chosen(loads, 'constant', { torque });

export const inertia = (momentOfInertia: number): EngineSpec['flywheel'] =>
  chosen(flywheels, 'given', { moment_of_inertia: momentOfInertia });

export const pistonLeak = (clearance: number): EngineSpec['leaks'][number] =>
  chosen(leaks, 'plain piston', { clearance: { by: 'gap', gap: clearance }, length: 45e-3 });

type HoleEnds = 'chest to room' | 'cylinder to room' | 'chest to cylinder';

export const holeLeak = (between: HoleEnds, diameter: number): EngineSpec['leaks'][number] =>
  chosen(leaks, 'hole', { between, diameter });

/** Overrides by section; a section that is a group is completed from the reference, anything else replaced. */
type Overrides = {
  readonly [K in keyof EngineSpec]?: EngineSpec[K] extends { build: unknown } | readonly unknown[] | string
    ? EngineSpec[K]
    : Partial<EngineSpec[K]>;
};

/** The reference engine; with other sections where given. */
export function referenceSpec(overrides: Overrides = {}): EngineSpec {
  const sections = {
    title: 'reference engine',
    atmosphere: { temperature: 285.15 },
    cylinder: {
      bore: 50e-3,
      stroke: 60e-3,
      rod_length: 120e-3,
      clearance: 0.09,
      reciprocating_mass: 0.35,
      wall_heat: chosen(wallHeats, 'constant', { coefficient: 80 }),
    },
    flywheel: inertia(0.03),
    friction: {
      running_torque: 0.12,
      breakaway_torque: 0.25,
      viscous_torque: 2e-3,
      piston_force: 6,
      piston_force_per_pressure: 5e-5,
    },
    load: growingLoad(1.1, 0.0025),
    valve_gear: spoolGear(),
    leaks: [pistonLeak(12e-6)],
    supply: { pressure: 401_325, hose: { bore: 8e-3, length: 4 }, chest_volume: 60e-6 },
    start: { crank_angle: 40 * DEGREE },
    run: { longest_time: 60 },
  };
  const isGroup = (value: unknown): value is object =>
    typeof value === 'object' && value !== null && !Array.isArray(value) && !('build' in value);
  const given = Object.entries(overrides).map(([key, value]) => {
    const own: unknown = sections[key as keyof typeof sections];
    return [key, isGroup(own) && isGroup(value) ? Object.assign({}, own, value) : value];
  });
  return filled(engineParameters, {
    ...sections,
    ...(Object.fromEntries(given) as object),
  }) as unknown as EngineSpec;
}
