/**
 * The equations of motion of one engine, as a derivative that allocates nothing.
 *
 * Three passes: state → pressures and temperatures; each passage's mass and enthalpy flow once; volumes add up, so that
 * what leaves one place enters the next to the last bit. Then the crank:
 *
 *   dm/dt = Σ ṁ_in − Σ ṁ_out      dU/dt = Σ ṁ cp T_upstream − p dV/dt + Q̇       p = (γ−1) U/V,  T = U/(m cv)
 *   (J + Σ M x′²) ω̇ = Σ (p − p_atm) dV/dθ − Σ M x′ x″ ω² + gravity − friction − load
 *
 * `direction` is +1 or −1 while the engine turns that way and 0 while it stands: friction is the sign of the motion, and
 * rest is a state of its own, not a rounded sign function.
 */
import { wallArea } from '../parts/cylinder.ts';
import { FIRST_VOLUME, type Engine, type WorkingEnd } from './engine.ts';
import { emptyInstant, type Instant } from './instant.ts';
import { mechanics } from './mechanics.ts';
import { SLOT, slotsFor, type Slots } from './slots.ts';

export type Direction = -1 | 0 | 1;

/**
 * Trial states of an integrator may leave the physical range; the laws are then evaluated at its border [kg/m³, K].
 * A run whose accepted state is out there ends.
 */
const LEAST_DENSITY = 1e-4;
const LEAST_TEMPERATURE = 20;
const MOST_TEMPERATURE = 3000;

export interface EngineSystem {
  readonly engine: Engine;
  readonly slots: Slots;
  readonly dimension: number;
  /** Slopes per second. */
  timeSlopes(direction: Direction, y: Float64Array, slopes: Float64Array): void;
  /** Slopes per radian, for an engine that turns forward. */
  angleSlopes(y: Float64Array, slopes: Float64Array): void;
  /** What a state feels like; valid until the next call. */
  observe(y: Float64Array): Readonly<Instant>;
}

export function engineSystem(engine: Engine): EngineSystem {
  const { gas, passages, ends, volumes } = engine;
  const slots = slotsFor(volumes.length, passages.length);
  const instant = emptyInstant(engine);
  const mechanical = mechanics(engine, instant);
  const { pressure, temperature, massFlow, enthalpyFlow, endVolume, volumeRate, wallHeat } = instant;
  const cp = gas.heatCapacityAtConstantPressure;
  const cv = gas.heatCapacityAtConstantVolume;
  const gammaMinusOne = gas.heatCapacityRatio - 1;
  const n = passages.length;
  const from = Uint8Array.from(passages, (passage) => passage.from);
  const to = Uint8Array.from(passages, (passage) => passage.to);
  const lag = Float64Array.from(passages, (passage) => passage.lag);
  const laws = passages.map(({ passage }) => passage);
  const fixedVolume = Float64Array.from(volumes, (volume) => volume.fixedVolume ?? 0);
  const firstEnd = volumes.length - ends.length;
  const massSlot = Uint16Array.from(volumes, (_, i) => slots.mass(i));
  const passageSlot = Uint16Array.from(passages, (_, i) => slots.passageMass(i));

  const setGas = (y: Float64Array): void => {
    for (let i = 0; i < volumes.length; i += 1) {
      const volume = i < firstEnd ? fixedVolume[i]! : endVolume[i - firstEnd]!;
      const mass = Math.max(y[massSlot[i]!]!, LEAST_DENSITY * volume);
      const t = y[massSlot[i]! + 1]! / (mass * cv);
      const bounded = Math.min(MOST_TEMPERATURE, Math.max(LEAST_TEMPERATURE, t));
      temperature[FIRST_VOLUME + i] = bounded;
      pressure[FIRST_VOLUME + i] = (gammaMinusOne * mass * cv * bounded) / volume;
    }
  };

  const setFlows = (angle: number, speed: number): void => {
    for (let i = 0; i < n; i += 1) {
      const a = from[i]!;
      const b = to[i]!;
      const flow = laws[i]!.massFlow(
        angle - lag[i]!,
        pressure[a]!,
        temperature[a]!,
        pressure[b]!,
        temperature[b]!,
        speed,
      );
      massFlow[i] = flow;
      enthalpyFlow[i] = flow * cp * temperature[flow >= 0 ? a : b]!;
    }
  };

  const setWallHeat = (speed: number): void => {
    for (let i = 0; i < ends.length; i += 1) {
      const end = ends[i]!;
      const area = wallArea(end, engine.cylinder.bore, endVolume[i]!);
      wallHeat[i] = engine.wallHeat.flow(area, temperature[end.place]!, pressure[end.place]!, speed);
    }
  };

  const observe = (y: Float64Array): Instant => {
    const angle = y[SLOT.crankAngle]!;
    const speed = y[SLOT.speed]!;
    mechanical.setVolumes(angle);
    setGas(y);
    mechanical.setTorques(angle, speed);
    setFlows(angle, Math.abs(speed));
    setWallHeat(Math.abs(speed));
    return instant;
  };

  const addUpVolumes = (slopes: Float64Array): void => {
    for (let i = 0; i < n; i += 1) {
      const flow = massFlow[i]!;
      const enthalpy = enthalpyFlow[i]!;
      slopes[passageSlot[i]!] = flow;
      slopes[passageSlot[i]! + 1] = enthalpy;
      const a = from[i]! - FIRST_VOLUME;
      const b = to[i]! - FIRST_VOLUME;
      if (a >= 0) {
        slopes[massSlot[a]!]! -= flow;
        slopes[massSlot[a]! + 1]! -= enthalpy;
      }
      if (b >= 0) {
        slopes[massSlot[b]!]! += flow;
        slopes[massSlot[b]! + 1]! += enthalpy;
      }
    }
  };

  const addUpEnds = (speed: number, slopes: Float64Array): void => {
    for (let i = 0; i < ends.length; i += 1) {
      const end = ends[i]!;
      const power = pressure[end.place]! * volumeRate[i]! * speed;
      slopes[massSlot[firstEnd + i]! + 1]! += wallHeat[i]! - power;
      slopes[slots.gasWork]! += power;
      slopes[slots.wallHeat]! += wallHeat[i]!;
      addUpWaste(end, slopes);
    }
  };

  /** Air that leaves by the exhaust without having pushed: straight from the open admission, then from leaks. */
  const addUpWaste = (end: WorkingEnd, slopes: Float64Array): void => {
    const out = Math.max(0, massFlow[end.exhaustPassage]!);
    const straight = Math.min(out, Math.max(0, massFlow[end.admissionPassage]!));
    slopes[slots.blowThrough]! += straight;
    let leaked = 0;
    for (const leak of end.leaksIn) leaked += inflow(leak, end);
    if (leaked === 0) return;
    const wasted = Math.min(1, (out - straight) / leaked);
    for (const leak of end.leaksIn) slopes[passageSlot[leak]! + 2]! += wasted * inflow(leak, end);
  };

  /** What a leak brings into an end now, if it does not rather take from it. */
  const inflow = (leak: number, end: WorkingEnd): number =>
    Math.max(0, to[leak] === end.place ? massFlow[leak]! : -massFlow[leak]!);

  const addUpMechanics = (direction: Direction, speed: number, slopes: Float64Array): void => {
    slopes[SLOT.time] = 1;
    if (direction === 0) return;
    const { bearingTorque, pistonTorque, gearTorque, loadTorque } = instant;
    const driving = instant.gasTorque + instant.inertiaTorque + instant.gravityTorque;
    const resisting = bearingTorque + pistonTorque + gearTorque + loadTorque;
    const path = direction * speed;
    slopes[SLOT.crankAngle] = speed;
    slopes[SLOT.speed] = (driving - direction * resisting) / instant.momentOfInertia;
    slopes[slots.bearingWork] = bearingTorque * path;
    slopes[slots.pistonWork] = pistonTorque * path;
    slopes[slots.gearWork] = gearTorque * path;
    slopes[slots.loadWork] = loadTorque * path;
    slopes[slots.gravityWork] = instant.gravityTorque * speed;
  };

  const timeSlopes = (direction: Direction, y: Float64Array, slopes: Float64Array): void => {
    observe(y);
    const speed = y[SLOT.speed]!;
    slopes.fill(0);
    addUpVolumes(slopes);
    addUpEnds(speed, slopes);
    addUpMechanics(direction, speed, slopes);
  };

  return {
    engine,
    slots,
    dimension: slots.dimension,
    timeSlopes,
    angleSlopes(y, slopes) {
      timeSlopes(1, y, slopes);
      const perRadian = 1 / y[SLOT.speed]!;
      for (let i = 0; i < slopes.length; i += 1) slopes[i]! *= perRadian;
      slopes[SLOT.crankAngle] = 1;
    },
    observe,
  };
}
