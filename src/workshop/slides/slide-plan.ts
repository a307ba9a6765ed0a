/**
 * Where ports and lands of a flat slide valve lie along its travel, from the inner edge of the cover-end port; positive
 * towards that end of the chest. Valve in its middle position.
 *
 *   port       0 to p                          land of the valve    −exhaust lap to p + steam lap
 *   bar        −b to 0                         hollow               −exhaust lap − C to −exhaust lap
 *   exhaust    −b − E to −b
 *
 * One port: the hollow's far rim must stay on metal at the end of the travel e, so E = C + exhaust lap − e − b.
 * Two ports (double acting): the valve is alike at both ends, so E = C + 2 exhaust lap − 2 b.
 */
import type { FlatSlideValve } from '../../parts/valve-gears/flat-slide-valve.ts';
import { angleOfAdvance } from '../../parts/valve-gears/slide-valve.ts';
import { slideValveOf } from '../../parts/valve-gears/slide-valve-parameters.ts';

export interface SlidePlan {
  readonly own: FlatSlideValve;
  readonly twoPorts: boolean;
  readonly exhaustWidth: number;
  /** Both ends of the valve in its middle position [m]. */
  readonly valveFrom: number;
  readonly valveTo: number;
  /** Width of the valve across the travel [m]. */
  readonly valveWidth: number;
  /** Places that the travel reaches, so that the face must be as long [m]. */
  readonly faceFrom: number;
  readonly faceTo: number;
  /** δ [rad]. */
  readonly advance: number;
}

export function planSlide(own: FlatSlideValve, twoPorts: boolean): SlidePlan {
  const { travel, steam_lap: steam, exhaust_lap: exhaust, port_width: port, bar_width: bar } = own;
  const half = travel / 2;
  const exhaustWidth = twoPorts
    ? own.cavity_length + 2 * exhaust - 2 * bar
    : own.cavity_length + exhaust - half - bar;
  const valveTo = port + steam;
  const valveFrom = twoPorts
    ? -2 * bar - exhaustWidth - valveTo
    : -exhaust - own.cavity_length - own.rim_width;
  return {
    own,
    twoPorts,
    exhaustWidth,
    valveFrom,
    valveTo,
    valveWidth: own.port_length + 2 * own.rim_width,
    faceFrom: valveFrom - half,
    faceTo: valveTo + half,
    advance: angleOfAdvance(slideValveOf(own)),
  };
}
