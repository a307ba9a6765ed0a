/**
 * Passages: whatever joins two places that hold gas. A passage knows its geometry and its flow law, not the solver.
 */
import { conductanceFlow, type Conductance } from '../gas/conductance.ts';
import { gapFlow } from '../gas/gap.ts';
import type { Gas } from '../gas/gas.ts';
import { nozzleFlow } from '../gas/nozzle.ts';
import { turnTableValue, type TurnTable } from './turn-table.ts';

/**
 * Where gas can be, as a part sees it: its own cylinder end, the other end of a double-acting cylinder, and what all
 * ends share. Supply and atmosphere never change; the others are volumes.
 */
export type Place = 'supply' | 'hose' | 'chest' | 'cylinder' | 'other end' | 'atmosphere';

export type PassageRole = 'supply' | 'admission' | 'exhaust' | 'leak';

/** A quantity that goes with the crank angle [rad] and, for what works by the clock, the crank speed [rad/s]. */
export type AreaLaw = (angle: number, speed: number) => number;

/** A constant, a table, or any law. */
export type Opening = number | TurnTable | AreaLaw;

/** The opening as a law, never below zero: next to its foot an interpolated law may dip by its rounding. */
export function openingLaw(opening: Opening): AreaLaw {
  if (typeof opening === 'number') return () => opening;
  if (typeof opening === 'function') return (angle, speed) => Math.max(0, opening(angle, speed));
  return (angle) => Math.max(0, turnTableValue(opening, angle));
}

/**
 * A flow law of src/gas and how far it is open: by a number when that never changes. The opening of a nozzle is its
 * effective area [m²], that of a gap its resistance Z [1/m³], that of an ISO 6358 element the share of its conductance.
 */
export type Flow =
  | { readonly law: 'nozzle'; readonly opening: Opening }
  /** With the smallest cross-section [m²]. */
  | { readonly law: 'gap'; readonly opening: Opening; readonly section: number }
  | { readonly law: 'element'; readonly opening: Opening; readonly element: Conductance };

export interface Passage {
  /** As a person would call it: "past the piston". */
  readonly name: string;
  readonly role: PassageRole;
  readonly from: Place;
  readonly to: Place;
  /** True for what works by the clock, so that its opening goes with the crank speed too. */
  readonly byTheClock?: boolean;
  /** True for a valve that the pressures at its ends may open, at crank angles that nobody knows beforehand. */
  readonly selfActing?: boolean;
  /** What `massFlow` goes by, for a solver that reckons many passages at a time; none when that is all its own. */
  readonly flow?: Flow;
  /**
   * Mass flow [kg/s], positive from `from` to `to`, at crank angle θ [rad] and, for what works by the clock, crank speed
   * [rad/s]; zero at equal pressures, and it allocates nothing. Odd in the pressure difference, but for a regulator, which
   * knows only one way, and a check valve, which the flow itself opens.
   */
  massFlow(angle: number, pFrom: number, tFrom: number, pTo: number, tTo: number, speed: number): number;
}

/** A port: a passage whose effective area Cd·A [m²] is opened and shut by the valve gear. */
export interface Port extends Passage {
  readonly role: 'admission' | 'exhaust';
  effectiveArea(angle: number, speed: number): number;
}

export interface Ends {
  readonly name: string;
  readonly from: Place;
  readonly to: Place;
}

/** Mass flow [kg/s] down from a pressure p₁ ≥ p₂ [Pa]. */
function flowDown(gas: Gas, flow: Flow, opening: number, p1: number, t1: number, p2: number): number {
  switch (flow.law) {
    case 'nozzle':
      return opening === 0 ? 0 : nozzleFlow(gas, opening, p1, t1, p2);
    case 'gap':
      return gapFlow(gas, opening, flow.section, p1, t1, p2);
    case 'element':
      return opening === 0 ? 0 : opening * conductanceFlow(gas, flow.element, p1, t1, p2);
  }
}

/** A passage that goes by a flow law of src/gas. */
export function lawfulPassage<Role extends PassageRole>(
  gas: Gas,
  role: Role,
  { name, from, to }: Ends,
  flow: Flow,
) {
  const openingAt = openingLaw(flow.opening);
  const massFlow: Passage['massFlow'] = (angle, pFrom, tFrom, pTo, tTo, speed) => {
    const open = openingAt(angle, speed);
    return pFrom >= pTo
      ? flowDown(gas, flow, open, pFrom, tFrom, pTo)
      : -flowDown(gas, flow, open, pTo, tTo, pFrom);
  };
  return { name, from, to, role, flow, massFlow };
}

export function port(gas: Gas, role: Port['role'], ends: Ends, area: Opening): Port {
  return {
    ...lawfulPassage(gas, role, ends, { law: 'nozzle', opening: area }),
    effectiveArea: openingLaw(area),
  };
}

/** A hole that is always open. */
export const hole = (gas: Gas, ends: Ends, effectiveArea: number): Passage =>
  lawfulPassage(gas, 'leak', ends, { law: 'nozzle', opening: effectiveArea });

/** A gap whose resistance Z [1/m³] may change as the valve moves; smallest cross-section A [m²]. */
export const gap = (gas: Gas, ends: Ends, resistance: Opening, section: number): Passage =>
  lawfulPassage(gas, 'leak', ends, { law: 'gap', opening: resistance, section });

/** A hose or fitting with an ISO 6358 conductance. */
export const conduit = (gas: Gas, ends: Ends, element: Conductance): Passage =>
  lawfulPassage(gas, 'supply', ends, { law: 'element', opening: 1, element });
