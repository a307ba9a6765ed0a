/**
 * Where a receiver ends up that starts at cut-in with the compressor just come on.
 *
 * It rises while the compressor delivers more than the engine takes, and falls while it delivers less. On the way it
 * reaches cut-out, or the pressure at which the engine stops, or it settles where the two are equal. As delivery falls
 * with pressure and demand rises with it, there is at most one such place; the search holds for any laws, and takes the
 * first one met.
 */
import { bisected } from '../../numerics/bisection.ts';
import { gain, type Shed } from './shed.ts';

export type EndState =
  /** The compressor reaches cut-out and rests, again and again. */
  | { readonly kind: 'cycles' }
  /** It runs all the time and keeps this pressure in the receiver, at which it gives just what the engine takes. */
  | { readonly kind: 'settles'; readonly pressure: number }
  /** Even so the pressure falls until the engine stops. */
  | { readonly kind: 'stops' };

/** Parts in which the way is searched for a balance. */
const PARTS = 64;

/** Delivery and demand are equal to this share, so that rounding does not decide where they are so by design. */
const EQUAL = 1e-12;

export function endState(shed: Shed): EndState {
  const start = shed.cutIn;
  const rising = gain(shed, start) > 0;
  const end = rising ? shed.cutOut : shed.stallPressure;
  const pressure = firstBalance(shed, start, end, rising);
  if (pressure !== undefined) return { kind: 'settles', pressure };
  return rising ? { kind: 'cycles' } : { kind: 'stops' };
}

/** The first pressure on the way at which the receiver neither rises nor falls. */
function firstBalance(shed: Shed, start: number, end: number, rising: boolean): number | undefined {
  const sense = rising ? 1 : -1;
  const goesOn = (pressure: number): boolean => sense * gain(shed, pressure) > EQUAL * shed.demand(pressure);
  let before = start;
  for (let i = 0; i <= PARTS; i += 1) {
    const here = start + ((end - start) * i) / PARTS;
    if (!goesOn(here)) return bisected(goesOn, before, here);
    before = here;
  }
  return undefined;
}
