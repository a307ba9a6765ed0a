/**
 * How the flows of a group answer to the pressures at their ends and to the temperature upstream, from the laws of src/gas:
 * the other half of flow-groups.ts.
 *
 * Flow through nozzles and elements goes as p₁/√T₁ f(p₂/p₁): of the first degree in the pressures, so that either slope
 * gives the other,
 *
 *   ∂ṁ/∂p₂ = S/√T₁ f′,   p₁ ∂ṁ/∂p₁ + p₂ ∂ṁ/∂p₂ = ṁ,   ∂ṁ/∂T₁ = −ṁ/(2 T₁)
 *
 * That through gaps follows D = p₁² − p₂² = L ṁ + K ṁ²: ∂ṁ/∂D = 1/(L + 2 K ṁ), ∂ṁ/∂T₁ = −(∂L/∂T₁ ṁ + ∂K/∂T₁ ṁ²) ∂ṁ/∂D.
 */
import { subsonicShareSlope } from '../gas/conductance.ts';
import { drivenFlowSlope, laminarFactor } from '../gas/gap.ts';
import type { Gas } from '../gas/gas.ts';
import { nozzleFunctionSlope } from '../gas/nozzle.ts';
import type { FlowGroup, Places } from './flow-groups.ts';
import { SHARE } from './small-share.ts';

/** Each array by passage: ∂ṁ/∂p at either end, ∂ṁ/∂T upstream. */
export interface FlowSlopes {
  readonly perFrom: Float64Array;
  readonly perTo: Float64Array;
  readonly perTemperature: Float64Array;
}

/** Slopes of a flow of the first degree in the pressures, from that with the pressure downstream. */
function writeFromDownstream(
  i: number,
  flow: number,
  perDownstream: number,
  pFrom: number,
  pTo: number,
  { perFrom, perTo }: FlowSlopes,
): void {
  if (pFrom >= pTo) {
    perTo[i] = perDownstream;
    perFrom[i] = (flow - pTo * perDownstream) / pFrom;
  } else {
    perFrom[i] = -perDownstream;
    perTo[i] = (flow + pFrom * perDownstream) / pTo;
  }
}

export function writeNozzleSlopes(
  gas: Gas,
  { passage, from, to, donor, opening }: FlowGroup,
  { pressure, temperature, inverseRoot }: Places,
  massFlow: Float64Array,
  slopes: FlowSlopes,
): void {
  for (let k = 0; k < passage.length; k += 1) {
    const i = passage[k]!;
    const pFrom = pressure[from[k]!]!;
    const pTo = pressure[to[k]!]!;
    const side = donor[i]!;
    const ratio = pFrom >= pTo ? pTo / pFrom : pFrom / pTo;
    const factor = opening[k]! * inverseRoot[side]!;
    const perDownstream = factor === 0 ? 0 : factor * nozzleFunctionSlope(gas, ratio);
    writeFromDownstream(i, massFlow[i]!, perDownstream, pFrom, pTo, slopes);
    slopes.perTemperature[i] = (-0.5 * massFlow[i]!) / temperature[side]!;
  }
}

export function writeElementSlopes(
  gas: Gas,
  { passage, from, to, donor, opening, shape, choked }: FlowGroup,
  { pressure, temperature, inverseRoot }: Places,
  massFlow: Float64Array,
  slopes: FlowSlopes,
): void {
  for (let k = 0; k < passage.length; k += 1) {
    const i = passage[k]!;
    const pFrom = pressure[from[k]!]!;
    const pTo = pressure[to[k]!]!;
    const side = donor[i]!;
    const ratio = pFrom >= pTo ? pTo / pFrom : pFrom / pTo;
    const factor = opening[k]! * choked[k]! * inverseRoot[side]!;
    const perDownstream = factor === 0 ? 0 : factor * subsonicShareSlope(gas, shape[k]!, ratio);
    writeFromDownstream(i, massFlow[i]!, perDownstream, pFrom, pTo, slopes);
    slopes.perTemperature[i] = (-0.5 * massFlow[i]!) / temperature[side]!;
  }
}

export function writeGapSlopes(
  gas: Gas,
  { passage, from, to, donor, opening, shape, choked }: FlowGroup,
  { pressure, temperature, inverseRoot, laminar }: Places,
  massFlow: Float64Array,
  { perFrom, perTo, perTemperature }: FlowSlopes,
): void {
  for (let k = 0; k < passage.length; k += 1) {
    if (choked[k] === 0) continue;
    const i = passage[k]!;
    const pFrom = pressure[from[k]!]!;
    const pTo = pressure[to[k]!]!;
    const side = donor[i]!;
    const t = temperature[side]!;
    const flow = massFlow[i]!;
    const size = Math.abs(flow);
    if (size >= choked[k]! * Math.max(pFrom, pTo) * inverseRoot[side]!) {
      perFrom[i] = pFrom >= pTo ? flow / pFrom : 0;
      perTo[i] = pFrom >= pTo ? 0 : flow / pTo;
      perTemperature[i] = (-0.5 * flow) / t;
      continue;
    }
    const perDrive = drivenFlowSlope(
      laminar[side]! * opening[k]!,
      shape[k]! * t,
      Math.abs(pFrom * pFrom - pTo * pTo),
    );
    const perKelvin = (laminarFactor(gas, t * (1 + SHARE)) - laminar[side]!) / (SHARE * t);
    perFrom[i] = 2 * pFrom * perDrive;
    perTo[i] = -2 * pTo * perDrive;
    // Nothing passes at equal pressures, nor through a gap of no height, whose resistance has no end.
    perTemperature[i] = size === 0 ? 0 : -(perKelvin * opening[k]! + shape[k]! * size) * flow * perDrive;
  }
}
