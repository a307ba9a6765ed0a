/**
 * Air that leaves by the exhaust without having pushed: straight from the open admission, then from leaks. No plain sum of
 * flows, but of the first degree in them.
 */
import * as engine from './engine-seat.ts';
import { at, intAt, put, type Index } from './memory.ts';
import { BLOW_THROUGH, FIRST_MASS } from './state-slots.ts';

/** A leak into an end: its passage, +1 when that leads into the end and −1 otherwise, and its slot. */
const LEAK_LENGTH = 3;

/** What leaks into an end by one of its leaks [kg/s]. */
function leakInto(leak: Index, massFlow: Index): number {
  return Math.max(0, at(leak, 1) * at(massFlow, intAt(leak, 0)));
}

/** Adds what flows [kg/s] waste. */
export function addWaste(massFlow: Index, timeRate: number, slopes: Index): void {
  const blowThrough = FIRST_MASS + 2 * engine.volumes + BLOW_THROUGH;
  for (let i = 0; i < engine.ends; i += 1) {
    const out = Math.max(0, at(massFlow, intAt(engine.exhaust, i)));
    const straight = Math.min(out, Math.max(0, at(massFlow, intAt(engine.admission, i))));
    put(slopes, blowThrough, at(slopes, blowThrough) + straight * timeRate);
    const first = engine.leaks + LEAK_LENGTH * intAt(engine.firstLeak, i);
    const end = engine.leaks + LEAK_LENGTH * intAt(engine.firstLeak, i + 1);
    let leaked: number = 0;
    for (let leak = first; leak < end; leak += LEAK_LENGTH) leaked += leakInto(leak, massFlow);
    if (leaked === 0) continue;
    const wasted = Math.min(1, (out - straight) / leaked) * timeRate;
    for (let leak = first; leak < end; leak += LEAK_LENGTH) {
      const slot = intAt(leak, 2);
      put(slopes, slot, at(slopes, slot) + wasted * leakInto(leak, massFlow));
    }
  }
}

function toChangeAt(slot: Index, column: Index, slopes: Index, step: number): void {
  put(column, slot, (at(column, slot) - at(slopes, slot)) / step);
}

/** Turns what has been added to `column` for flows moved by a step of an unknown into the change per unit of it. */
export function wasteToChange(column: Index, slopes: Index, step: number): void {
  toChangeAt(FIRST_MASS + 2 * engine.volumes + BLOW_THROUGH, column, slopes, step);
  const count = intAt(engine.wasteSlots, 0);
  for (let k = 1; k <= count; k += 1) toChangeAt(intAt(engine.wasteSlots, k), column, slopes, step);
}
