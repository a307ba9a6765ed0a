/** The four events as a fitter reads them: in degrees of the crank, in the way of the piston, and how sensitive it is. */
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import { forwardAngle } from '../../parts/crank-positions.ts';
import { pistonTravel, pistonTravelRate, type CrankTrain } from '../../parts/crank-train.ts';
import type { ValveEvents } from '../../parts/valve-gears/valve-gear.ts';

export interface SettingEvent {
  readonly name: string;
  /** For the degree wheel. */
  readonly short: string;
  /** Crank angle after top dead centre [rad]. */
  readonly angle: number;
}

export interface PistonPlace {
  /** From top dead centre [m]. */
  readonly travel: number;
  readonly stroke: 'outward' | 'return';
  /** How far it moves in a degree there [m]. */
  readonly perDegree: number;
}

/** Events of an end counted from the crank's top dead centre. */
export function settingEvents(events: ValveEvents, deadCentre: number): SettingEvent[] {
  const named = [
    ['admission opens', 'AO', events.admission],
    ['admission shuts (cut-off)', 'AS', events.cutOff],
    ['exhaust opens (release)', 'EO', events.release],
    ['exhaust shuts (compression)', 'ES', events.compression],
  ] as const;
  return named.map(([name, short, angle]) => ({ name, short, angle: forwardAngle(0, angle + deadCentre) }));
}

export function pistonPlace(crank: CrankTrain, angle: number): PistonPlace {
  const [sine, cosine] = [sin(angle), cos(angle)];
  const rate = pistonTravelRate(crank, sine, cosine);
  return {
    travel: pistonTravel(crank, sine, cosine),
    stroke: rate >= 0 ? 'outward' : 'return',
    perDegree: (Math.abs(rate) * Math.PI) / 180,
  };
}
