/**
 * ∂slope/∂unknown of the equations of motion, column by column.
 *
 * Crank angle, and speed against time, by differences of whole derivatives. Mass and energy of a volume from the few flows,
 * torques and wall heats that know of it, the kinetic energy from what knows of the speed, put together by the same sums
 * as the slopes: what leaves one place enters the next in the Jacobian too, and with it every linear sum that an implicit
 * step keeps.
 */
import { FIRST_VOLUME, type Engine } from './engine.ts';
import { flowChanges } from './flow-changes.ts';
import type { Observer } from './observer.ts';
import { SLOT, type Slots } from './slots.ts';
import { SHARE } from './small-share.ts';
import type { Sums } from './sums.ts';

/** What one unit of the independent variable x is worth at the instant last observed. */
export interface Rates {
  readonly speed: number;
  /** dt/dx and dθ/dx. */
  readonly time: number;
  readonly angle: number;
  /** Which way friction acts. */
  readonly direction: -1 | 0 | 1;
  /** What a torque adds to the slope of speed or energy. */
  readonly perTorque: number;
}

export interface Jacobian {
  /** A column by a difference, given the derivative itself. */
  differenceColumn(
    k: number,
    evaluate: (y: Float64Array, slopes: Float64Array) => void,
    y: Float64Array,
    slopes: Float64Array,
    jacobian: Float64Array,
  ): void;
  /** The column of the kinetic energy, against the crank angle; the state must be the one last observed. */
  energyColumn(y: Float64Array, speed: number, jacobian: Float64Array): void;
  /** The columns of all gas; the state must be the one last observed. */
  gasColumns(y: Float64Array, slopes: Float64Array, rates: Rates, jacobian: Float64Array): void;
}

interface Plan {
  readonly engine: Engine;
  readonly slots: Slots;
  readonly dimension: number;
  readonly coupled: readonly number[];
  readonly totals: boolean;
  readonly sums: Sums;
}

export function systemJacobian(plan: Plan, observed: Observer): Jacobian {
  const { engine, slots, dimension, coupled, totals, sums } = plan;
  const { gas, passages, ends, volumes } = engine;
  const { instant, mechanical } = observed;
  const { pressure, temperature, massFlow } = instant;
  const width = coupled.length;
  const changes = flowChanges(engine, instant, observed.flows);
  const column = new Float64Array(dimension);
  const moved = new Float64Array(slots.firstTotal);
  const shifted = new Float64Array(passages.length);
  const firstEnd = volumes.length - ends.length;
  /** As at the instant; the instant's own are moved about. */
  const torques = { gas: 0, piston: 0, gear: 0 };

  const keep = (k: number, jacobian: Float64Array): void => {
    for (let i = 0; i < dimension; i += 1) jacobian[i * width + k] = column[i]!;
  };

  /** Wasted air is no plain sum of flows: its change by a difference, with an unknown of that size. */
  const addWaste = (slopes: Float64Array, timeRate: number, size: number): void => {
    const step = SHARE * size;
    for (let i = 0; i < shifted.length; i += 1) shifted[i] = massFlow[i]! + step * changes.massFlow[i]!;
    sums.waste(shifted, timeRate, column);
    column[slots.blowThrough] = (column[slots.blowThrough]! - slopes[slots.blowThrough]!) / step;
    for (let i = 0; i < shifted.length; i += 1) {
      const slot = slots.passageWaste(i);
      column[slot] = (column[slot]! - slopes[slot]!) / step;
    }
  };

  const addWall = (
    end: number,
    pressureChange: number,
    temperatureChange: number,
    { speed, time }: Rates,
  ): void => {
    const { place } = ends[end]!;
    const t = temperature[place]!;
    const step = (SHARE * t) / Math.abs(temperatureChange);
    const heat = observed.wallHeat(
      end,
      t + step * temperatureChange,
      pressure[place]! + step * pressureChange,
      speed,
    );
    const change = ((heat - instant.wallHeat[end]!) / step) * time;
    column[slots.energy(firstEnd + end)]! += change;
    if (totals) column[slots.wallHeat]! += change;
  };

  /** The pressure of a volume on pistons and valves. */
  const addTorques = (
    volume: number,
    pressureChange: number,
    y: Float64Array,
    { speed, angle, direction, perTorque }: Rates,
  ): void => {
    const place = FIRST_VOLUME + volume;
    const here = pressure[place]!;
    pressure[place] = here + SHARE * here;
    const per = pressureChange / (pressure[place] - here);
    mechanical.setTorques(y[SLOT.crankAngle]!, speed);
    const ofGas = (instant.gasTorque - torques.gas) * per;
    const ofPiston = (instant.pistonTorque - torques.piston) * per;
    const ofGear = (instant.gearTorque - torques.gear) * per;
    pressure[place] = here;
    column[SLOT.speed]! += (ofGas - direction * (ofPiston + ofGear)) * perTorque;
    if (volume >= firstEnd) {
      const work = pressureChange * instant.volumeRate[volume - firstEnd]! * angle;
      column[slots.energy(volume)]! -= work;
      if (totals) column[slots.gasWork]! += work;
    }
    if (!totals) return;
    column[slots.pistonWork]! += ofPiston * direction * angle;
    column[slots.gearWork]! += ofGear * direction * angle;
  };

  const gasColumn = (
    volume: number,
    size: number,
    pressureChange: number,
    temperatureChange: number,
    y: Float64Array,
    slopes: Float64Array,
    rates: Rates,
  ): void => {
    column.fill(0);
    changes.write(volume, pressureChange, temperatureChange);
    sums.flows(changes.massFlow, changes.enthalpyFlow, rates.time, column);
    if (totals) addWaste(slopes, rates.time, size);
    if (volume >= firstEnd) addWall(volume - firstEnd, pressureChange, temperatureChange, rates);
    if (pressureChange !== 0) addTorques(volume, pressureChange, y, rates);
  };

  return {
    differenceColumn(k, evaluate, y, slopes, jacobian) {
      const slot = coupled[k]!;
      for (let i = 0; i < moved.length; i += 1) moved[i] = y[i]!;
      moved[slot] = y[slot]! + (slopes[slot]! < 0 ? -SHARE : SHARE) * Math.max(1, Math.abs(y[slot]!));
      const made = moved[slot] - y[slot]!;
      evaluate(moved, column);
      for (let i = 0; i < dimension; i += 1) column[i] = (column[i]! - slopes[i]!) / made;
      keep(k, jacobian);
    },
    energyColumn(y, speed, jacobian) {
      // E = ½ J ω², so dω/dE = 1/(J ω), and what goes by the time goes by 1/ω.
      const perEnergy = 1 / (instant.momentOfInertia * speed);
      const timeChange = -perEnergy / (speed * speed);
      column.fill(0);
      column[SLOT.time] = timeChange;
      sums.flows(massFlow, instant.enthalpyFlow, timeChange, column);
      if (totals) sums.waste(massFlow, timeChange, column);
      changes.writeSpeed(y[SLOT.crankAngle]!, speed);
      sums.flows(changes.massFlow, changes.enthalpyFlow, perEnergy / speed, column);
      for (const [i, { place }] of ends.entries()) {
        const faster = observed.wallHeat(i, temperature[place]!, pressure[place]!, speed * (1 + SHARE));
        const heat = instant.wallHeat[i]!;
        const change = heat * timeChange + ((faster - heat) / (SHARE * speed * speed)) * perEnergy;
        column[slots.energy(firstEnd + i)]! += change;
        if (totals) column[slots.wallHeat]! += change;
      }
      const { bearingTorque, gearTorque, loadTorque } = instant;
      mechanical.setTorques(y[SLOT.crankAngle]!, speed * (1 + SHARE));
      const per = perEnergy / (SHARE * speed);
      const bearing = (instant.bearingTorque - bearingTorque) * per;
      const gear = (instant.gearTorque - gearTorque) * per;
      const load = (instant.loadTorque - loadTorque) * per;
      mechanical.setTorques(y[SLOT.crankAngle]!, speed);
      column[SLOT.speed] = -(bearing + gear + load);
      if (totals) {
        column[slots.bearingWork] = bearing;
        column[slots.gearWork] = gear;
        column[slots.loadWork] = load;
      }
      keep(1, jacobian);
    },
    gasColumns(y, slopes, rates, jacobian) {
      const cv = gas.heatCapacityAtConstantVolume;
      torques.gas = instant.gasTorque;
      torques.piston = instant.pistonTorque;
      torques.gear = instant.gearTorque;
      changes.begin((v) => slopes[slots.energy(v)]! >= 0);
      for (let v = 0; v < volumes.length; v += 1) {
        const mass = observed.mass(y, v);
        const pressurePerEnergy = (gas.heatCapacityRatio - 1) / observed.volume(v);
        gasColumn(v, mass, 0, -temperature[FIRST_VOLUME + v]! / mass, y, slopes, rates);
        keep(2 + 2 * v, jacobian);
        gasColumn(v, y[slots.energy(v)]!, pressurePerEnergy, 1 / (mass * cv), y, slopes, rates);
        keep(3 + 2 * v, jacobian);
      }
    },
  };
}
