/** What goes through the passages of the engine, and where its air comes from. */
import * as engine from './engine-seat.ts';
import { elementFlows, gapFlows, nozzleFlows, setPlace } from './flow-groups.ts';
import {
  ARE_KEPT,
  ELEMENT_LAW,
  GAP_LAW,
  HEAT_CAPACITY_AT_CONSTANT_PRESSURE,
  NOZZLE_LAW,
  OPENING_ANGLE,
  OPENING_SPEED,
} from './header.ts';
import { EXCHANGE } from './fixed-places.ts';
import { hostFlow } from './host.ts';
import { at, intAt, put, putInt, type Index } from './memory.ts';

/** Places whose state never changes come before the volumes. */
export const FIRST_VOLUME = 2;

/** A passage without a common law: its number, and the lag of its part. */
export const OTHER_LENGTH = 2;

/** A passage that goes by the clock: its number, its law and its place in the group of that law, or −1. */
const CLOCK_LENGTH = 3;

/** Writes mass [kg/s] and enthalpy flows [W] of all passages, at the pressures and temperatures of the instant. */
export function setFlows(): void {
  const numbers = engine.numbers;
  const places = engine.places;
  const memory = engine.memory;
  const passages = engine.passages;
  const donor = engine.donor;
  const kept = engine.kept;
  const nozzles = engine.nozzles;
  const massFlow = engine.massFlow;
  const gaps = engine.gaps;
  const elements = engine.elements;
  const temperature = engine.temperature;
  const enthalpyFlow = engine.enthalpyFlow;
  const cp = at(numbers, HEAT_CAPACITY_AT_CONSTANT_PRESSURE);
  for (let place = FIRST_VOLUME; place < places; place += 1) setPlace(place);
  if (intAt(memory, ARE_KEPT) !== 0) {
    for (let i = 0; i < passages; i += 1) putInt(donor, i, intAt(kept, i));
  } else chooseDonors();
  nozzleFlows(0, intAt(nozzles, 0), massFlow);
  gapFlows(0, intAt(gaps, 0), massFlow);
  elementFlows(0, intAt(elements, 0), massFlow);
  const others = intAt(engine.others, 0);
  for (let k = 0; k < others; k += 1) writeOther(k, massFlow);
  for (let i = 0; i < passages; i += 1) {
    const t = at(temperature, intAt(donor, i));
    put(enthalpyFlow, i, at(massFlow, i) * cp * t);
  }
}

/** Air comes from where the pressure is higher. */
function donorOf(i: Index): Index {
  const pressure = engine.pressure;
  const from = intAt(engine.from, i);
  const to = intAt(engine.to, i);
  return at(pressure, from) >= at(pressure, to) ? from : to;
}

function chooseDonors(): void {
  const passages = engine.passages;
  const donor = engine.donor;
  for (let i = 0; i < passages; i += 1) putInt(donor, i, donorOf(i));
}

/** From now on the donors are those of the last flows, whatever the pressures; until they are released. */
export function keepDonors(): void {
  const passages = engine.passages;
  const kept = engine.kept;
  const donor = engine.donor;
  const memory = engine.memory;
  for (let i = 0; i < passages; i += 1) putInt(kept, i, intAt(donor, i));
  putInt(memory, ARE_KEPT, 1);
}

export function releaseDonors(): void {
  putInt(engine.memory, ARE_KEPT, 0);
}

/** Back to the donors that were kept before they were released. */
export function restoreDonors(): void {
  putInt(engine.memory, ARE_KEPT, 1);
}

/** Whether by the pressures of the instant any air comes from elsewhere than was kept. */
export function areDonorsStale(): boolean {
  const passages = engine.passages;
  const kept = engine.kept;
  for (let i = 0; i < passages; i += 1) if (intAt(kept, i) !== donorOf(i)) return true;
  return false;
}

/** Writes the mass flow of passage k in the list of others at its place in `out`. */
export function writeOther(k: Index, out: Index): void {
  const memory = engine.memory;
  const pressure = engine.pressure;
  const other = engine.others + 1 + OTHER_LENGTH * k;
  const i = intAt(other, 0);
  put(EXCHANGE, 0, at(memory, OPENING_ANGLE) - at(other, 1));
  put(EXCHANGE, 1, at(pressure, intAt(engine.from, i)));
  // No law knows of any temperature but that of the donor.
  put(EXCHANGE, 2, at(engine.temperature, intAt(engine.donor, i)));
  put(EXCHANGE, 3, at(pressure, intAt(engine.to, i)));
  put(EXCHANGE, 4, at(memory, OPENING_SPEED));
  hostFlow(i);
  put(out, i, at(EXCHANGE, 0));
}

/** Writes the mass flow of passage k in the list of those by the clock at its place in `out`; its number. */
export function writeByTheClock(k: Index, out: Index): Index {
  const own = engine.byTheClock + 1 + CLOCK_LENGTH * k;
  const law = intAt(own, 1);
  const place = intAt(own, 2);
  if (law === NOZZLE_LAW) nozzleFlows(place, place + 1, out);
  else if (law === GAP_LAW) gapFlows(place, place + 1, out);
  else if (law === ELEMENT_LAW) elementFlows(place, place + 1, out);
  else writeOther(place, out);
  return intAt(own, 0);
}
