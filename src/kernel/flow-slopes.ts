/**
 * How the flows answer to the pressures at their ends and to the temperature upstream: the other half of flow-groups.ts.
 *
 * Flow through nozzles and elements goes as p₁/√T₁ f(p₂/p₁): of the first degree in the pressures, so that either slope
 * gives the other,
 *
 *   ∂ṁ/∂p₂ = S/√T₁ f′,   p₁ ∂ṁ/∂p₁ + p₂ ∂ṁ/∂p₂ = ṁ,   ∂ṁ/∂T₁ = −ṁ/(2 T₁)
 *
 * That through gaps follows D = p₁² − p₂² = L ṁ + K ṁ²: ∂ṁ/∂D = 1/(L + 2 K ṁ), ∂ṁ/∂T₁ = −(∂L/∂T₁ ṁ + ∂K/∂T₁ ṁ²) ∂ṁ/∂D.
 */
import * as engine from './engine-seat.ts';
import { GROUP_CHOKED, GROUP_FROM, GROUP_OPENING, GROUP_SHAPE, GROUP_TO } from './flow-groups.ts';
import { OTHER_LENGTH, writeOther } from './flows.ts';
import { drivenFlowSlope, laminarFactor, nozzleFunctionSlope, subsonicShareSlope } from './gas-laws.ts';
import { at, intAt, put, type Index } from './memory.ts';

/** Share of an unknown by which a difference moves it. */
export const SHARE = 1.490_116_119_384_765_6e-8;

/** Slopes of a flow of the first degree in the pressures, with its air from that side, from the one with the pressure downstream. */
function writeFromDownstream(i: Index, side: Index, perDownstream: number, pFrom: number, pTo: number): void {
  const flow = at(engine.massFlow, i);
  put(engine.perTemperature, i, (-0.5 * flow) / at(engine.temperature, side));
  if (pFrom >= pTo) {
    put(engine.perTo, i, perDownstream);
    put(engine.perFrom, i, (flow - pTo * perDownstream) / pFrom);
  } else {
    put(engine.perFrom, i, -perDownstream);
    put(engine.perTo, i, (flow + pFrom * perDownstream) / pTo);
  }
}

function writeNozzleSlopes(): void {
  const group = engine.nozzles;
  const n = intAt(group, 0);
  for (let k = 0, word = group + 1; k < n; k += 1, word += 1) {
    const i = intAt(word, 0);
    const pFrom = at(engine.pressure, intAt(word, GROUP_FROM * n));
    const pTo = at(engine.pressure, intAt(word, GROUP_TO * n));
    const side = intAt(engine.donor, i);
    const ratio = pFrom >= pTo ? pTo / pFrom : pFrom / pTo;
    const factor = at(word, GROUP_OPENING * n) * at(engine.inverseRoot, side);
    const perDownstream = factor === 0 ? 0 : factor * nozzleFunctionSlope(ratio);
    writeFromDownstream(i, side, perDownstream, pFrom, pTo);
  }
}

function writeElementSlopes(): void {
  const group = engine.elements;
  const n = intAt(group, 0);
  for (let k = 0, word = group + 1; k < n; k += 1, word += 1) {
    const i = intAt(word, 0);
    const pFrom = at(engine.pressure, intAt(word, GROUP_FROM * n));
    const pTo = at(engine.pressure, intAt(word, GROUP_TO * n));
    const side = intAt(engine.donor, i);
    const ratio = pFrom >= pTo ? pTo / pFrom : pFrom / pTo;
    const factor = at(word, GROUP_OPENING * n) * at(word, GROUP_CHOKED * n) * at(engine.inverseRoot, side);
    const shape = at(word, GROUP_SHAPE * n);
    const perDownstream = factor === 0 ? 0 : factor * subsonicShareSlope(shape, ratio);
    writeFromDownstream(i, side, perDownstream, pFrom, pTo);
  }
}

function writeGapSlopes(): void {
  const group = engine.gaps;
  const n = intAt(group, 0);
  for (let k = 0, word = group + 1; k < n; k += 1, word += 1)
    if (at(word, GROUP_CHOKED * n) !== 0) writeGapSlope(word, n);
}

function writeGapSlope(word: Index, n: Index): void {
  const i = intAt(word, 0);
  const pFrom = at(engine.pressure, intAt(word, GROUP_FROM * n));
  const pTo = at(engine.pressure, intAt(word, GROUP_TO * n));
  const side = intAt(engine.donor, i);
  const t = at(engine.temperature, side);
  const laminar = at(engine.laminar, side);
  const opening = at(word, GROUP_OPENING * n);
  const shape = at(word, GROUP_SHAPE * n);
  const flow = at(engine.massFlow, i);
  const size = Math.abs(flow);
  if (size >= at(word, GROUP_CHOKED * n) * Math.max(pFrom, pTo) * at(engine.inverseRoot, side)) {
    put(engine.perFrom, i, pFrom >= pTo ? flow / pFrom : 0);
    put(engine.perTo, i, pFrom >= pTo ? 0 : flow / pTo);
    put(engine.perTemperature, i, (-0.5 * flow) / t);
    return;
  }
  const perDrive = drivenFlowSlope(laminar * opening, shape * t, Math.abs(pFrom * pFrom - pTo * pTo));
  const perKelvin = (laminarFactor(t * (1 + SHARE)) - laminar) / (SHARE * t);
  put(engine.perFrom, i, 2 * pFrom * perDrive);
  put(engine.perTo, i, -2 * pTo * perDrive);
  // Nothing passes at equal pressures, nor through a gap of no height, whose resistance has no end.
  const perTemperature = size === 0 ? 0 : -(perKelvin * opening + shape * size) * flow * perDrive;
  put(engine.perTemperature, i, perTemperature);
}

/** Of passage k in the list of others, with the pressure or temperature of a place. */
function differenceOf(k: Index, i: Index, quantity: Index, place: Index, way: number): number {
  const here = at(quantity, place);
  const there = here * (1 + way * SHARE);
  put(quantity, place, there);
  writeOther(k, engine.movedFlow);
  put(quantity, place, here);
  return (at(engine.movedFlow, i) - at(engine.massFlow, i)) / (there - here);
}

/** A valve may be about to open, or just shut: differences go the way the energy of a place goes. */
function writeOtherSlopes(): void {
  const count = intAt(engine.others, 0);
  for (let k = 0; k < count; k += 1) {
    const i = intAt(engine.others + 1 + OTHER_LENGTH * k, 0);
    const from = intAt(engine.from, i);
    const to = intAt(engine.to, i);
    put(engine.perFrom, i, differenceOf(k, i, engine.pressure, from, at(engine.ways, from)));
    put(engine.perTo, i, differenceOf(k, i, engine.pressure, to, at(engine.ways, to)));
    put(engine.perTemperature, i, differenceOf(k, i, engine.temperature, intAt(engine.donor, i), 1));
  }
}

/** Writes how all flows answer, at the pressures and temperatures of the instant, at which they must stand. */
export function writeFlowSlopes(): void {
  writeNozzleSlopes();
  writeGapSlopes();
  writeElementSlopes();
  writeOtherSlopes();
}
