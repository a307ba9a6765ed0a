/**
 * Do mass and energy add up? Compares two states of one run; what the passages and works say must be what the volumes
 * and the flywheel show.
 *
 *   mass:    Δm = Σ passages in − out
 *   gas:     ΔU = Σ enthalpy in − out − gas work + wall heat
 *   crank:   gas work − p_atm ΔV + gravity = bearings + piston + valve gear + load + Δ kinetic energy
 */
import { square } from '../numerics/elementary/whole-powers.ts';
import { FIRST_VOLUME } from './engine.ts';
import { SLOT } from './slots.ts';
import type { EngineSystem } from './system.ts';

export interface Residuals {
  /** Shares of what went through. */
  readonly mass: number;
  readonly energy: number;
}

/** Sets the running totals of a state back to zero. */
export function resetTotals({ slots }: EngineSystem, y: Float64Array): void {
  y.fill(0, slots.firstTotal);
}

/** Kinetic energy [J] of flywheel and pistons. */
export function kineticEnergy(system: EngineSystem, y: Float64Array): number {
  const { momentOfInertia } = system.observe(y);
  return 0.5 * momentOfInertia * square(y[SLOT.speed]!);
}

interface Balance {
  readonly difference: number;
  readonly throughput: number;
  /** Sum of the stored amounts whose change counts; their rounding is no fault. */
  readonly held: number;
}

/** Roundings of each amount as sums of amounts are taken; each step that writes it down anew adds one. */
const ROUNDINGS = 64;

function share({ difference, throughput, held }: Balance, steps: number): number {
  const unexplained = Math.abs(difference) - (ROUNDINGS + steps) * Number.EPSILON * held;
  return unexplained <= 0 ? 0 : unexplained / throughput;
}

interface Exchange {
  readonly net: number;
  readonly gross: number;
}

/** What came into the volumes from outside, net and gross, given the total through each passage. */
function exchange(system: EngineSystem, total: (passage: number) => number): Exchange {
  let net = 0;
  let gross = 0;
  for (const [i, { from, to }] of system.engine.passages.entries()) {
    const amount = total(i);
    if (from < FIRST_VOLUME) net += amount;
    if (to < FIRST_VOLUME) net -= amount;
    gross += Math.abs(amount);
  }
  return { net, gross };
}

/** Of two states that are so many steps of an integrator apart. */
export function ledgerResiduals(
  system: EngineSystem,
  before: Float64Array,
  after: Float64Array,
  steps: number,
): Residuals {
  const { slots, engine } = system;
  const change = (slot: number): number => after[slot]! - before[slot]!;
  const stored = (slot: (volume: number) => number): number =>
    engine.volumes.reduce((sum, _, i) => sum + change(slot(i)), 0);
  const held = (slot: (volume: number) => number): number =>
    engine.volumes.reduce((sum, _, i) => sum + before[slot(i)]! + after[slot(i)]!, 0);
  const mass = exchange(system, (i) => change(slots.passageMass(i)));
  // What went through, at the temperature it came with.
  const enthalpyThroughput =
    mass.gross * engine.gas.heatCapacityAtConstantPressure * engine.supply.temperature;
  const gasWork = change(slots.gasWork);
  const gravity = change(slots.gravityWork);
  const taken =
    change(slots.bearingWork) + change(slots.pistonWork) + change(slots.gearWork) + change(slots.loadWork);
  const { pressure } = engine.atmosphere;
  const volumeBefore = system.pushedVolume(before[SLOT.crankAngle]!);
  const volumeAfter = system.pushedVolume(after[SLOT.crankAngle]!);
  const [kineticBefore, kineticAfter] = [kineticEnergy(system, before), kineticEnergy(system, after)];
  const pushedBack = pressure * (volumeAfter - volumeBefore);
  const kinetic = kineticAfter - kineticBefore;
  const massBalance = {
    difference: stored(slots.mass) - mass.net,
    throughput: mass.gross,
    held: held(slots.mass),
  };
  const gasBalance = {
    difference: stored(slots.energy) - change(slots.enthalpyIn) + gasWork - change(slots.wallHeat),
    throughput: enthalpyThroughput,
    held: held(slots.energy),
  };
  const crankBalance = {
    difference: gasWork - pushedBack + gravity - taken - kinetic,
    throughput: Math.abs(gasWork) + Math.abs(taken) + Math.abs(kinetic) + Math.abs(gravity),
    held: pressure * (volumeBefore + volumeAfter) + kineticBefore + kineticAfter,
  };
  return {
    mass: share(massBalance, steps),
    energy: Math.max(share(gasBalance, steps), share(crankBalance, steps)),
  };
}
