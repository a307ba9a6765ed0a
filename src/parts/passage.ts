/**
 * Passages: whatever joins two places that hold gas. A passage knows its geometry and its flow law, not the solver.
 */
import { conductanceFlow, type Conductance } from '../gas/conductance.ts';
import { gapFlow } from '../gas/gap.ts';
import type { Gas } from '../gas/gas.ts';
import { nozzleFlow } from '../gas/nozzle.ts';

/**
 * Where gas can be, as a part sees it: its own cylinder end, the other end of a double-acting cylinder, and what all
 * ends share. Supply and atmosphere never change; the others are volumes.
 */
export type Place = 'supply' | 'hose' | 'chest' | 'cylinder' | 'other end' | 'atmosphere';

export type PassageRole = 'supply' | 'admission' | 'exhaust' | 'leak';

export interface Passage {
  /** As a person would call it: "past the piston". */
  readonly name: string;
  readonly role: PassageRole;
  readonly from: Place;
  readonly to: Place;
  /** True for what works by the clock, so that its opening goes with the crank speed too. */
  readonly byTheClock?: boolean;
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

interface Ends {
  readonly name: string;
  readonly from: Place;
  readonly to: Place;
}

/** A quantity that goes with the crank angle [rad]. */
export type AreaLaw = (angle: number, speed: number) => number;

export function port(gas: Gas, role: Port['role'], ends: Ends, areaLaw: AreaLaw): Port {
  // An interpolated law may dip below zero by its rounding where a port begins to open.
  const effectiveArea: AreaLaw = (angle, speed) => Math.max(0, areaLaw(angle, speed));
  return {
    ...ends,
    role,
    effectiveArea,
    massFlow: (angle, pFrom, tFrom, pTo, tTo, speed) => {
      const area = effectiveArea(angle, speed);
      if (area === 0) return 0;
      return pFrom >= pTo
        ? nozzleFlow(gas, area, pFrom, tFrom, pTo)
        : -nozzleFlow(gas, area, pTo, tTo, pFrom);
    },
  };
}

/** A hole that is always open. */
export function hole(gas: Gas, ends: Ends, effectiveArea: number): Passage {
  return { ...port(gas, 'admission', ends, () => effectiveArea), role: 'leak' };
}

/** A gap whose resistance Z [1/m³] and smallest cross-section A [m²] may change as the valve moves. */
export function gap(gas: Gas, ends: Ends, resistance: AreaLaw, section: AreaLaw): Passage {
  return {
    ...ends,
    role: 'leak',
    massFlow: (angle, pFrom, tFrom, pTo, tTo, speed) => {
      const z = resistance(angle, speed);
      const a = section(angle, speed);
      return pFrom >= pTo ? gapFlow(gas, z, a, pFrom, tFrom, pTo) : -gapFlow(gas, z, a, pTo, tTo, pFrom);
    },
  };
}

/** A gap that does not change. */
export const fixedGap = (gas: Gas, ends: Ends, resistance: number, section: number): Passage =>
  gap(
    gas,
    ends,
    () => resistance,
    () => section,
  );

/** A hose or fitting with an ISO 6358 conductance. */
export function conduit(gas: Gas, ends: Ends, element: Conductance): Passage {
  return {
    ...ends,
    role: 'supply',
    massFlow: (_angle, pFrom, tFrom, pTo, tTo) =>
      pFrom >= pTo
        ? conductanceFlow(gas, element, pFrom, tFrom, pTo)
        : -conductanceFlow(gas, element, pTo, tTo, pFrom),
  };
}
