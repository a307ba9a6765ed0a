/**
 * Passages that go by the same flow law, and the laws over a whole group at once.
 *
 * A group is a count, then arrays of that length, by passage: its number in the list of the engine, the places at either
 * end, how far it is open, its shape (of a gap, its loss; of an ISO 6358 element, b) and its choked flow per p₁/√T₁.
 */
import * as engine from './engine-seat.ts';
import { drivenFlow, laminarFactor, nozzleFunction, subsonicShare } from './gas-laws.ts';
import { at, intAt, put, type Index } from './memory.ts';

export const GROUP_FROM = 1;
export const GROUP_TO = 2;
export const GROUP_OPENING = 3;
export const GROUP_SHAPE = 4;
export const GROUP_CHOKED = 5;

/** What all passages out of one place ask of it is reckoned once. */
export function setPlace(place: Index): void {
  const t = at(engine.temperature, place);
  put(engine.inverseRoot, place, 1 / Math.sqrt(t));
  put(engine.laminar, place, laminarFactor(t));
}

/** Each writes the mass flows [kg/s] of passages k in [first, end) of its group at their places in `out`. */
export function nozzleFlows(first: Index, end: Index, out: Index): void {
  const pressure = engine.pressure;
  const inverseRoot = engine.inverseRoot;
  const donor = engine.donor;
  const group = engine.nozzles;
  const n = intAt(group, 0);
  for (let k = first, word = group + 1 + first; k < end; k += 1, word += 1) {
    const i = intAt(word, 0);
    const pFrom = at(pressure, intAt(word, GROUP_FROM * n));
    const pTo = at(pressure, intAt(word, GROUP_TO * n));
    const factor = at(word, GROUP_OPENING * n) * at(inverseRoot, intAt(donor, i));
    if (factor === 0) put(out, i, 0);
    else if (pFrom >= pTo) put(out, i, factor * pFrom * nozzleFunction(pTo / pFrom));
    else put(out, i, -factor * pTo * nozzleFunction(pFrom / pTo));
  }
}

export function gapFlows(first: Index, end: Index, out: Index): void {
  const pressure = engine.pressure;
  const donor = engine.donor;
  const laminar = engine.laminar;
  const temperature = engine.temperature;
  const inverseRoot = engine.inverseRoot;
  const group = engine.gaps;
  const n = intAt(group, 0);
  for (let k = first, word = group + 1 + first; k < end; k += 1, word += 1) {
    const choked = at(word, GROUP_CHOKED * n);
    if (choked === 0) continue;
    const i = intAt(word, 0);
    const pFrom = at(pressure, intAt(word, GROUP_FROM * n));
    const pTo = at(pressure, intAt(word, GROUP_TO * n));
    const side = intAt(donor, i);
    const drive = pFrom * pFrom - pTo * pTo;
    const flow = drivenFlow(
      at(laminar, side) * at(word, GROUP_OPENING * n),
      at(word, GROUP_SHAPE * n) * at(temperature, side),
      Math.abs(drive),
      choked * Math.max(pFrom, pTo) * at(inverseRoot, side),
    );
    put(out, i, drive >= 0 ? flow : -flow);
  }
}

export function elementFlows(first: Index, end: Index, out: Index): void {
  const pressure = engine.pressure;
  const inverseRoot = engine.inverseRoot;
  const group = engine.elements;
  const n = intAt(group, 0);
  for (let k = first, word = group + 1 + first; k < end; k += 1, word += 1) {
    const i = intAt(word, 0);
    const pFrom = at(pressure, intAt(word, GROUP_FROM * n));
    const pTo = at(pressure, intAt(word, GROUP_TO * n));
    const shape = at(word, GROUP_SHAPE * n);
    const donor = intAt(engine.donor, i);
    const factor = at(word, GROUP_OPENING * n) * at(word, GROUP_CHOKED * n) * at(inverseRoot, donor);
    if (factor === 0) put(out, i, 0);
    else if (pFrom >= pTo) put(out, i, factor * pFrom * subsonicShare(shape, pTo / pFrom));
    else put(out, i, -factor * pTo * subsonicShare(shape, pFrom / pTo));
  }
}
