/**
 * Do mass and energy add up? Compares two states of one run; what the passages and works say must be what the volumes
 * and the flywheel show.
 *
 *   mass:    Δm = Σ passages in − out
 *   gas:     ΔU = Σ enthalpy in − out − gas work + wall heat
 *   crank:   gas work − p_atm ΔV = bearings + piston + valve gear + load + Δ kinetic energy
 */
import type { Place } from '../parts/passage.ts';
import { ATMOSPHERE, type EngineSystem } from './system.ts';
import { FIRST_TOTAL, passageEnthalpySlot, passageMassSlot, SLOT } from './slots.ts';

export interface Residuals {
  /** Shares of what went through. */
  readonly mass: number;
  readonly energy: number;
}

/** Sets the running totals of a state back to zero. */
export function resetTotals(y: Float64Array): void {
  y.fill(0, FIRST_TOTAL);
}

/** Kinetic energy [J] of flywheel and piston. */
export function kineticEnergy(system: EngineSystem, y: Float64Array): number {
  const { momentOfInertia } = system.observe(y);
  return 0.5 * momentOfInertia * y[SLOT.speed]! ** 2;
}

interface Balance {
  readonly difference: number;
  readonly throughput: number;
}

const share = ({ difference, throughput }: Balance): number =>
  throughput === 0 ? 0 : Math.abs(difference) / throughput;

const change = (before: Float64Array, after: Float64Array, slot: number): number =>
  after[slot]! - before[slot]!;

interface Exchange {
  readonly net: number;
  readonly gross: number;
}

/** What came into the volumes from outside, net and gross, given the total through each passage. */
function exchange(system: EngineSystem, total: (passage: number) => number): Exchange {
  const outside = (place: Place): boolean => place === 'supply' || place === 'atmosphere';
  let net = 0;
  let gross = 0;
  for (const [i, { from, to }] of system.engine.passages.entries()) {
    const amount = total(i);
    if (outside(from)) net += amount;
    if (outside(to)) net -= amount;
    gross += Math.abs(amount);
  }
  return { net, gross };
}

export function ledgerResiduals(system: EngineSystem, before: Float64Array, after: Float64Array): Residuals {
  const mass = exchange(system, (i) => change(before, after, passageMassSlot(i)));
  const enthalpy = exchange(system, (i) => change(before, after, passageEnthalpySlot(i)));
  const stored = (a: number, b: number): number => change(before, after, a) + change(before, after, b);
  const gasWork = change(before, after, SLOT.gasWork);
  const taken = [SLOT.bearingWork, SLOT.pistonWork, SLOT.gearWork, SLOT.loadWork].reduce(
    (sum, slot) => sum + change(before, after, slot),
    0,
  );
  const volumeBefore = system.observe(before).cylinderVolume;
  const volumeAfter = system.observe(after).cylinderVolume;
  const pushedBack = system.instant.pressure[ATMOSPHERE]! * (volumeAfter - volumeBefore);
  const kinetic = kineticEnergy(system, after) - kineticEnergy(system, before);
  const massBalance = {
    difference: stored(SLOT.chestMass, SLOT.cylinderMass) - mass.net,
    throughput: mass.gross,
  };
  const gasBalance = {
    difference:
      stored(SLOT.chestEnergy, SLOT.cylinderEnergy) -
      enthalpy.net +
      gasWork -
      change(before, after, SLOT.wallHeat),
    throughput: enthalpy.gross,
  };
  const crankBalance = {
    difference: gasWork - pushedBack - taken - kinetic,
    throughput: Math.abs(gasWork) + Math.abs(taken) + Math.abs(kinetic),
  };
  return { mass: share(massBalance), energy: Math.max(share(gasBalance), share(crankBalance)) };
}
