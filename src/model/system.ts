/**
 * The equations of motion of one engine, as a derivative that allocates nothing.
 *
 * Three passes: state → pressures and temperatures; each passage's mass and enthalpy flow once; volumes add up, so that
 * what leaves one place enters the next to the last bit. Then the crank:
 *
 *   dm/dt = Σ ṁ_in − Σ ṁ_out      dU/dt = Σ ṁ cp T_upstream − p dV/dt + Q̇       p = (γ−1) U/V,  T = U/(m cv)
 *   (J + M x′²) ω̇ = (p − p_atm) A x′ − M x′ x″ ω² − friction − load
 *
 * `direction` is +1 or −1 while the engine turns that way and 0 while it stands: friction is the sign of the motion, and
 * rest is a state of its own, not a rounded sign function.
 */
import { bearingTorque, pistonFriction } from '../parts/friction.ts';
import { wallArea } from '../parts/cylinder.ts';
import { pistonTravel, pistonTravelCurvature, pistonTravelRate } from '../parts/crank-train.ts';
import type { Place } from '../parts/passage.ts';
import type { Engine } from './engine.ts';
import { dimension, passageEnthalpySlot, passageMassSlot, SLOT } from './slots.ts';

export type Direction = -1 | 0 | 1;

/** Places by number, so that passes run over flat arrays. */
const PLACES: readonly Place[] = ['supply', 'chest', 'cylinder', 'atmosphere'];
const CHEST = 1;
const CYLINDER = 2;
const ATMOSPHERE = 3;

/**
 * Trial states of an integrator may leave the physical range; the laws are then evaluated at its border [kg/m³, K].
 * Accepted states out there end the run (see `isPhysical`).
 */
const LEAST_DENSITY = 1e-4;
const LEAST_TEMPERATURE = 20;
const MOST_TEMPERATURE = 3000;

/** What the engine feels at one instant. Fields are overwritten by each evaluation. */
export interface Instant {
  readonly pressure: Float64Array;
  readonly temperature: Float64Array;
  /** Mass flow of each passage [kg/s], positive from → to. */
  readonly massFlow: Float64Array;
  cylinderVolume: number;
  gasTorque: number;
  inertiaTorque: number;
  bearingTorque: number;
  pistonTorque: number;
  gearTorque: number;
  loadTorque: number;
  wallHeat: number;
  momentOfInertia: number;
  /** dV/dθ [m³/rad]. */
  volumeRate: number;
}

export interface EngineSystem {
  readonly engine: Engine;
  readonly dimension: number;
  readonly instant: Instant;
  /** Slopes per second. */
  timeSlopes(direction: Direction, y: Float64Array, slopes: Float64Array): void;
  /** Slopes per radian, for an engine that turns forward. */
  angleSlopes(y: Float64Array, slopes: Float64Array): void;
  /** Fills `instant` for a state. */
  observe(y: Float64Array): Instant;
}

export function engineSystem(engine: Engine): EngineSystem {
  const { gas, passages, crank, cylinder, friction } = engine;
  const cp = gas.heatCapacityAtConstantPressure;
  const cv = gas.heatCapacityAtConstantVolume;
  const gammaMinusOne = gas.heatCapacityRatio - 1;
  const n = passages.length;
  const size = dimension(n);
  const from = Uint8Array.from(passages, (passage) => PLACES.indexOf(passage.from));
  const to = Uint8Array.from(passages, (passage) => PLACES.indexOf(passage.to));
  const admissionIndex = passages.indexOf(engine.admission);
  const exhaustIndex = passages.indexOf(engine.exhaust);
  const leaksIntoCylinder = passages.flatMap((passage, i) =>
    passage.role === 'leak' && passage.from === 'chest' && passage.to === 'cylinder' ? [i] : [],
  );
  const { pressure: supplyPressure, temperature: supplyTemperature } = engine.supply;
  const { pressure: roomPressure, temperature: roomTemperature } = engine.atmosphere;
  const instant: Instant = {
    pressure: Float64Array.of(supplyPressure, 0, 0, roomPressure),
    temperature: Float64Array.of(supplyTemperature, 0, 0, roomTemperature),
    massFlow: new Float64Array(n),
    cylinderVolume: 0,
    gasTorque: 0,
    inertiaTorque: 0,
    bearingTorque: 0,
    pistonTorque: 0,
    gearTorque: 0,
    loadTorque: 0,
    wallHeat: 0,
    momentOfInertia: 0,
    volumeRate: 0,
  };
  const { pressure, temperature, massFlow } = instant;
  const enthalpyFlow = new Float64Array(n);

  const setGasState = (place: number, mass: number, energy: number, volume: number): void => {
    const t = energy / (Math.max(mass, LEAST_DENSITY * volume) * cv);
    const bounded = Math.min(MOST_TEMPERATURE, Math.max(LEAST_TEMPERATURE, t));
    temperature[place] = bounded;
    pressure[place] =
      t === bounded && mass >= LEAST_DENSITY * volume
        ? (gammaMinusOne * energy) / volume
        : (gammaMinusOne * Math.max(mass, LEAST_DENSITY * volume) * cv * bounded) / volume;
  };

  const setMechanics = (y: Float64Array): void => {
    const angle = y[SLOT.crankAngle]!;
    const speed = y[SLOT.speed]!;
    const sin = Math.sin(angle);
    const cos = Math.cos(angle);
    const travel = pistonTravel(crank, sin, cos);
    const lever = pistonTravelRate(crank, sin, cos);
    const volume = engine.clearanceVolume + engine.pistonArea * travel;
    setGasState(CHEST, y[SLOT.chestMass]!, y[SLOT.chestEnergy]!, engine.chestVolume);
    setGasState(CYLINDER, y[SLOT.cylinderMass]!, y[SLOT.cylinderEnergy]!, volume);
    const gauge = pressure[CYLINDER]! - roomPressure;
    const mass = engine.reciprocatingMass;
    instant.cylinderVolume = volume;
    instant.volumeRate = engine.pistonArea * lever;
    instant.gasTorque = gauge * instant.volumeRate;
    instant.momentOfInertia = engine.flywheel.momentOfInertia + mass * lever * lever;
    instant.inertiaTorque =
      mass === 0 ? 0 : -mass * lever * pistonTravelCurvature(crank, sin, cos) * speed * speed;
    const quickness = Math.abs(speed);
    instant.bearingTorque = bearingTorque(friction, quickness);
    instant.pistonTorque = pistonFriction(friction, gauge) * Math.abs(lever);
    instant.gearTorque = engine.valveGear.dragTorque(angle, quickness);
    instant.loadTorque = engine.load.torque(quickness);
    instant.wallHeat = engine.wallHeat.flow(wallArea(cylinder, travel), temperature[CYLINDER]!);
  };

  const setFlows = (angle: number): void => {
    for (let i = 0; i < n; i += 1) {
      const a = from[i]!;
      const b = to[i]!;
      const flow = passages[i]!.massFlow(angle, pressure[a]!, temperature[a]!, pressure[b]!, temperature[b]!);
      massFlow[i] = flow;
      enthalpyFlow[i] = flow * cp * temperature[flow >= 0 ? a : b]!;
    }
  };

  const addUpVolumes = (y: Float64Array, slopes: Float64Array): void => {
    slopes.fill(0);
    for (let i = 0; i < n; i += 1) {
      const flow = massFlow[i]!;
      const enthalpy = enthalpyFlow[i]!;
      slopes[passageMassSlot(i)] = flow;
      slopes[passageEnthalpySlot(i)] = enthalpy;
      const a = from[i]!;
      const b = to[i]!;
      if (a === CHEST || a === CYLINDER) {
        slopes[SLOT.chestMass + 2 * (a - CHEST)]! -= flow;
        slopes[SLOT.chestEnergy + 2 * (a - CHEST)]! -= enthalpy;
      }
      if (b === CHEST || b === CYLINDER) {
        slopes[SLOT.chestMass + 2 * (b - CHEST)]! += flow;
        slopes[SLOT.chestEnergy + 2 * (b - CHEST)]! += enthalpy;
      }
    }
    const gasPower = pressure[CYLINDER]! * instant.volumeRate * y[SLOT.speed]!;
    slopes[SLOT.cylinderEnergy]! += instant.wallHeat - gasPower;
    slopes[SLOT.gasWork] = gasPower;
    slopes[SLOT.wallHeat] = instant.wallHeat;
  };

  /** Air that leaves by the exhaust port without having pushed: straight from the open admission, then from leaks. */
  const addUpWaste = (slopes: Float64Array): void => {
    const out = Math.max(0, massFlow[exhaustIndex]!);
    const straight = Math.min(out, Math.max(0, massFlow[admissionIndex]!));
    let leaked = 0;
    for (const i of leaksIntoCylinder) leaked += Math.max(0, massFlow[i]!);
    slopes[SLOT.blowThrough] = straight;
    slopes[SLOT.leakThrough] = Math.min(out - straight, leaked);
  };

  const addUpMechanics = (direction: Direction, y: Float64Array, slopes: Float64Array): void => {
    const speed = y[SLOT.speed]!;
    const resisting = instant.bearingTorque + instant.pistonTorque + instant.gearTorque + instant.loadTorque;
    slopes[SLOT.time] = 1;
    if (direction === 0) return;
    const path = direction * speed;
    slopes[SLOT.crankAngle] = speed;
    slopes[SLOT.speed] =
      (instant.gasTorque + instant.inertiaTorque - direction * resisting) / instant.momentOfInertia;
    slopes[SLOT.bearingWork] = instant.bearingTorque * path;
    slopes[SLOT.pistonWork] = instant.pistonTorque * path;
    slopes[SLOT.gearWork] = instant.gearTorque * path;
    slopes[SLOT.loadWork] = instant.loadTorque * path;
  };

  const timeSlopes = (direction: Direction, y: Float64Array, slopes: Float64Array): void => {
    setMechanics(y);
    setFlows(y[SLOT.crankAngle]!);
    addUpVolumes(y, slopes);
    addUpWaste(slopes);
    addUpMechanics(direction, y, slopes);
  };

  return {
    engine,
    dimension: size,
    instant,
    timeSlopes,
    angleSlopes(y, slopes) {
      timeSlopes(1, y, slopes);
      const perRadian = 1 / y[SLOT.speed]!;
      for (let i = 0; i < size; i += 1) slopes[i]! *= perRadian;
      slopes[SLOT.crankAngle] = 1;
    },
    observe(y) {
      setMechanics(y);
      setFlows(y[SLOT.crankAngle]!);
      return instant;
    },
  };
}

export { ATMOSPHERE, CHEST, CYLINDER };
