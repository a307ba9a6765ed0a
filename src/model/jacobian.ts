/**
 * ∂slope/∂unknown of the equations of motion, column by column.
 *
 * Crank angle, and speed against time, by differences of whole derivatives. Mass and energy of a volume from the few flows,
 * torques and wall heats that know of it, the kinetic energy from what knows of the speed, put together by the same sums
 * as the slopes: what leaves one place enters the next in the Jacobian too, and with it every linear sum that an implicit
 * step keeps.
 */
import { clear } from './clear.ts';
import { FIRST_VOLUME, type Engine } from './engine.ts';
import { FlowChanges } from './flow-changes.ts';
import type { Observer } from './observer.ts';
import { SLOT, type Slots } from './slots.ts';
import { SHARE } from './small-share.ts';
import type { Sums } from './sums.ts';

/** What one unit of the independent variable x is worth at the instant last observed. */
export interface Rates {
  speed: number;
  /** dt/dx and dθ/dx. */
  time: number;
  angle: number;
  /** Which way friction acts. */
  direction: -1 | 0 | 1;
  /** What a torque adds to the slope of speed or energy. */
  perTorque: number;
}

interface Parts {
  readonly engine: Engine;
  readonly slots: Slots;
  readonly dimension: number;
  readonly totals: boolean;
  readonly sums: Sums;
}

/** A class, so that code compiled for one engine serves for the next. */
export class SystemJacobian {
  /** To be set before any column of gas is asked for. */
  readonly rates: Rates = { speed: 0, time: 0, angle: 0, direction: 0, perTorque: 0 };
  private readonly heatCapacity: number;
  private readonly heatCapacityRatio: number;
  private readonly slots: Slots;
  private readonly totals: boolean;
  private readonly sums: Sums;
  private readonly observed: Observer;
  private readonly changes: FlowChanges;
  private readonly column: Float64Array;
  private readonly shifted: Float64Array;
  private readonly firstEnd: number;
  private readonly firstMass: number;
  /** As at the instant; the instant's own are moved about. */
  private readonly torques = { gas: 0, piston: 0, gear: 0, bearing: 0, load: 0 };

  constructor({ engine, slots, dimension, totals, sums }: Parts, observed: Observer) {
    this.heatCapacity = engine.gas.heatCapacityAtConstantVolume;
    this.heatCapacityRatio = engine.gas.heatCapacityRatio;
    this.slots = slots;
    this.totals = totals;
    this.sums = sums;
    this.observed = observed;
    this.changes = new FlowChanges(engine, observed.instant, observed.flows);
    this.column = new Float64Array(dimension);
    this.shifted = new Float64Array(engine.passages.length);
    this.firstEnd = engine.volumes.length - engine.ends.length;
    this.firstMass = slots.mass(0);
  }

  /** Takes the torques at the instant last observed; before any column. */
  begin(): void {
    const { torques } = this;
    const { instant } = this.observed;
    torques.gas = instant.gasTorque;
    torques.piston = instant.pistonTorque;
    torques.gear = instant.gearTorque;
    torques.bearing = instant.bearingTorque;
    torques.load = instant.loadTorque;
  }

  /** Column k, of the kinetic energy against the crank angle, at the instant last observed. */
  writeEnergy(k: number, width: number, angle: number, jacobian: Float64Array): void {
    const { column, totals, sums, slots, changes, observed, firstMass, firstEnd, torques, rates } = this;
    const { instant, mechanical } = observed;
    const { wallHeat, temperature, pressure } = instant;
    const { speed } = rates;
    // E = ½ J ω², so dω/dE = 1/(J ω), and what goes by the time goes by 1/ω.
    const perEnergy = 1 / (instant.momentOfInertia * speed);
    const timeChange = -perEnergy / (speed * speed);
    clear(column);
    column[SLOT.time] = timeChange;
    sums.flows(instant.massFlow, instant.enthalpyFlow, timeChange, column);
    if (totals) sums.waste.add(instant.massFlow, timeChange, column);
    changes.writeSpeed(angle, speed);
    sums.flows(changes.massFlow, changes.enthalpyFlow, perEnergy / speed, column);
    for (let i = 0; i < wallHeat.length; i += 1) {
      const place = FIRST_VOLUME + firstEnd + i;
      const faster = speed * (1 + SHARE);
      const hotter = observed.wallHeat(i, temperature[place]!, pressure[place]!, faster);
      const heat = wallHeat[i]!;
      const change = heat * timeChange + ((hotter - heat) / (SHARE * speed * speed)) * perEnergy;
      column[firstMass + 2 * (firstEnd + i) + 1]! += change;
      if (totals) column[slots.wallHeat]! += change;
    }
    mechanical.setTorques(angle, speed * (1 + SHARE));
    const per = perEnergy / (SHARE * speed);
    const bearing = (instant.bearingTorque - torques.bearing) * per;
    const gear = (instant.gearTorque - torques.gear) * per;
    const load = (instant.loadTorque - torques.load) * per;
    column[SLOT.speed] = -(bearing + gear + load);
    if (totals) {
      column[slots.bearingWork] = bearing;
      column[slots.gearWork] = gear;
      column[slots.loadWork] = load;
    }
    this.keep(k, width, jacobian);
  }

  /** Columns k and following, of all mass and energy, at the instant last observed. */
  writeGas(
    k: number,
    width: number,
    angle: number,
    y: Float64Array,
    slopes: Float64Array,
    jacobian: Float64Array,
  ): void {
    const { observed, changes, firstMass } = this;
    const { heatCapacity, heatCapacityRatio } = this;
    const { temperature } = observed.instant;
    const volumes = temperature.length - FIRST_VOLUME;
    changes.begin(slopes, firstMass + 1);
    for (let v = 0; v < volumes; v += 1) {
      const mass = observed.mass(y, v);
      const pressurePerEnergy = (heatCapacityRatio - 1) / observed.volume(v);
      this.setGasColumn(v, mass, 0, -temperature[FIRST_VOLUME + v]! / mass, slopes);
      this.keep(k + 2 * v, width, jacobian);
      this.setGasColumn(v, y[firstMass + 2 * v + 1]!, pressurePerEnergy, 1 / (mass * heatCapacity), slopes);
      this.addTorques(v, pressurePerEnergy, angle);
      this.keep(k + 2 * v + 1, width, jacobian);
    }
  }

  private keep(k: number, width: number, jacobian: Float64Array): void {
    const { column } = this;
    for (let i = 0, at = k; i < column.length; i += 1, at += width) jacobian[at] = column[i]!;
  }

  private setGasColumn(
    volume: number,
    size: number,
    pressureChange: number,
    temperatureChange: number,
    slopes: Float64Array,
  ): void {
    const { column, changes, sums, rates, totals, firstEnd } = this;
    clear(column);
    changes.write(volume, pressureChange, temperatureChange);
    const { passagesOf, firstOf, massFlow, enthalpyFlow } = changes;
    for (let k = firstOf[volume]!; k < firstOf[volume + 1]!; k += 1) {
      const i = passagesOf[k]!;
      sums.through(i, massFlow[i]! * rates.time, enthalpyFlow[i]! * rates.time, column);
    }
    if (totals) this.addWaste(slopes, size);
    if (volume >= firstEnd) this.addWall(volume - firstEnd, pressureChange, temperatureChange);
  }

  /** Wasted air is no plain sum of flows: its change by a difference, with an unknown of that size. */
  private addWaste(slopes: Float64Array, size: number): void {
    const { column, shifted, changes, sums, rates } = this;
    const { massFlow } = this.observed.instant;
    const step = SHARE * size;
    for (let i = 0; i < shifted.length; i += 1) shifted[i] = massFlow[i]! + step * changes.massFlow[i]!;
    sums.waste.add(shifted, rates.time, column);
    sums.waste.toChange(column, slopes, step);
  }

  private addWall(end: number, pressureChange: number, temperatureChange: number): void {
    const { observed, column, slots, totals, firstMass, firstEnd, rates } = this;
    const { pressure, temperature, wallHeat } = observed.instant;
    const place = FIRST_VOLUME + firstEnd + end;
    const t = temperature[place]!;
    const step = (SHARE * t) / Math.abs(temperatureChange);
    const heat = observed.wallHeat(
      end,
      t + step * temperatureChange,
      pressure[place]! + step * pressureChange,
      rates.speed,
    );
    const change = ((heat - wallHeat[end]!) / step) * rates.time;
    column[firstMass + 2 * (firstEnd + end) + 1]! += change;
    if (totals) column[slots.wallHeat]! += change;
  }

  /** The pressure of a volume on pistons and valves. */
  private addTorques(volume: number, pressureChange: number, angle: number): void {
    const { observed, column, torques, slots, totals, firstEnd, firstMass, rates } = this;
    const { instant, mechanical } = observed;
    const { pressure, volumeRate } = instant;
    const { direction } = rates;
    const place = FIRST_VOLUME + volume;
    const here = pressure[place]!;
    pressure[place] = here + SHARE * here;
    const per = pressureChange / (pressure[place] - here);
    mechanical.setTorques(angle, rates.speed);
    const ofGas = (instant.gasTorque - torques.gas) * per;
    const ofPiston = (instant.pistonTorque - torques.piston) * per;
    const ofGear = (instant.gearTorque - torques.gear) * per;
    pressure[place] = here;
    column[SLOT.speed]! += (ofGas - direction * (ofPiston + ofGear)) * rates.perTorque;
    if (volume >= firstEnd) {
      const work = pressureChange * volumeRate[volume - firstEnd]! * rates.angle;
      column[firstMass + 2 * volume + 1]! -= work;
      if (totals) column[slots.gasWork]! += work;
    }
    if (!totals) return;
    column[slots.pistonWork]! += ofPiston * direction * rates.angle;
    column[slots.gearWork]! += ofGear * direction * rates.angle;
  }
}
