/**
 * Passages that go by the same flow law, their numbers side by side in flat arrays; and the laws of src/gas over a whole
 * group at once.
 *
 * What all passages out of one place ask of it is reckoned once per place. Everything a loop needs is at hand before it
 * starts, so that nothing is fetched through closures, nor handed over by way of the heap, for each passage anew.
 */
import { chokedFactor, subsonicShare } from '../gas/conductance.ts';
import { drivenFlow, gapChokedFactor, gapLoss, laminarFactor } from '../gas/gap.ts';
import type { Gas } from '../gas/gas.ts';
import { nozzleFunction } from '../gas/nozzle.ts';
import type { Flow } from '../parts/passage.ts';
import type { EnginePassage } from './engine.ts';

/** What the flow laws ask of the places, each array by place. */
export interface Places {
  readonly pressure: Float64Array;
  readonly temperature: Float64Array;
  /** 1/√T. */
  readonly inverseRoot: Float64Array;
  /** 24 μ R T. */
  readonly laminar: Float64Array;
}

/** Each array by passage of the group. */
export interface FlowGroup {
  /** Number in the list of the engine. */
  readonly passage: Uint8Array;
  readonly from: Uint8Array;
  readonly to: Uint8Array;
  /** The place whose temperature the air has, for every passage of the engine. */
  readonly donor: Uint8Array;
  readonly opening: Float64Array;
  /** Of a gap, its loss; of an ISO 6358 element, b. */
  readonly shape: Float64Array;
  /** Choked flow per p₁/√T₁, of a gap or a fully open element. */
  readonly choked: Float64Array;
}

/** Writes the mass flows [kg/s] of passages k in [first, end) of a group at their places in `out`. */
export type GroupLaw = (
  gas: Gas,
  group: FlowGroup,
  places: Places,
  first: number,
  end: number,
  out: Float64Array,
) => void;

function constants(gas: Gas, flow: Flow): readonly [shape: number, choked: number] {
  switch (flow.law) {
    case 'nozzle':
      return [0, 0];
    case 'gap':
      return [gapLoss(gas, flow.section), gapChokedFactor(gas, flow.section)];
    case 'element':
      return [flow.element.criticalPressureRatio, chokedFactor(gas, flow.element)];
  }
}

export function flowGroup(
  gas: Gas,
  passages: readonly EnginePassage[],
  law: Flow['law'],
  donor: Uint8Array,
): FlowGroup {
  const own = passages.flatMap(({ from, to, passage: { flow } }, passage) =>
    flow?.law === law ? [{ passage, from, to, flow }] : [],
  );
  return {
    passage: Uint8Array.from(own, ({ passage }) => passage),
    from: Uint8Array.from(own, ({ from }) => from),
    to: Uint8Array.from(own, ({ to }) => to),
    donor,
    opening: Float64Array.from(own, ({ flow: { opening } }) => (typeof opening === 'number' ? opening : 0)),
    shape: Float64Array.from(own, ({ flow }) => constants(gas, flow)[0]),
    choked: Float64Array.from(own, ({ flow }) => constants(gas, flow)[1]),
  };
}

/** Brings a place up to its pressure and temperature. */
export function setPlace(gas: Gas, { temperature, inverseRoot, laminar }: Places, place: number): void {
  inverseRoot[place] = 1 / Math.sqrt(temperature[place]!);
  laminar[place] = laminarFactor(gas, temperature[place]!);
}

const nozzles: GroupLaw = (gas, group, { pressure, inverseRoot }, first, end, out) => {
  const { passage, from, to, donor, opening } = group;
  for (let k = first; k < end; k += 1) {
    const i = passage[k]!;
    const pFrom = pressure[from[k]!]!;
    const pTo = pressure[to[k]!]!;
    const factor = opening[k]! * inverseRoot[donor[i]!]!;
    if (factor === 0) out[i] = 0;
    else if (pFrom >= pTo) out[i] = factor * pFrom * nozzleFunction(gas, pTo / pFrom);
    else out[i] = -factor * pTo * nozzleFunction(gas, pFrom / pTo);
  }
};

const gaps: GroupLaw = (_gas, group, { pressure, temperature, inverseRoot, laminar }, first, end, out) => {
  const { passage, from, to, donor, opening, shape, choked } = group;
  for (let k = first; k < end; k += 1) {
    const pFrom = pressure[from[k]!]!;
    const pTo = pressure[to[k]!]!;
    if (choked[k] === 0) continue;
    const i = passage[k]!;
    const side = donor[i]!;
    const drive = pFrom * pFrom - pTo * pTo;
    const flow = drivenFlow(
      laminar[side]! * opening[k]!,
      shape[k]! * temperature[side]!,
      Math.abs(drive),
      choked[k]! * Math.max(pFrom, pTo) * inverseRoot[side]!,
    );
    out[i] = drive >= 0 ? flow : -flow;
  }
};

const elements: GroupLaw = (gas, group, { pressure, inverseRoot }, first, end, out) => {
  const { passage, from, to, donor, opening, shape, choked } = group;
  for (let k = first; k < end; k += 1) {
    const i = passage[k]!;
    const pFrom = pressure[from[k]!]!;
    const pTo = pressure[to[k]!]!;
    const factor = opening[k]! * choked[k]! * inverseRoot[donor[i]!]!;
    if (factor === 0) out[i] = 0;
    else if (pFrom >= pTo) out[i] = factor * pFrom * subsonicShare(gas, shape[k]!, pTo / pFrom);
    else out[i] = -factor * pTo * subsonicShare(gas, shape[k]!, pFrom / pTo);
  }
};

export const groupLaws: Readonly<Record<Flow['law'], GroupLaw>> = {
  nozzle: nozzles,
  gap: gaps,
  element: elements,
};
