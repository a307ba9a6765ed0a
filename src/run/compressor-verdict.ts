/**
 * A settled engine against the compressor and receiver of the scenario.
 *
 * The regulator holds the engine's pressure until the receiver has fallen to it. Isothermal receiver at room
 * temperature, ideal gas: Δm = V Δp/(R T). From a full receiver the compressor is off down to cut-in, then on:
 *
 *   t = V (p_out − p_in)/(R T ṁ) + V (p_in − p_set)/(R T (ṁ − ṁ_c))
 *
 * Draw-down identity as used for receiver sizing in compressed-air practice.
 */
import { gasNamed } from '../gas/registry.ts';
import { anrVolumeFlow } from '../gas/reference-atmosphere.ts';
import type { Compressor } from '../parts/compressor.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import type { CompressorVerdict } from './result.ts';

/** Mass flow [kg/s] of the free air that a compressor delivers. */
function deliveredMass(compressor: Compressor, { gas, atmosphere }: EngineSpec): number {
  const roomDensity = atmosphere.pressure / (gasNamed(gas).specificGasConstant * atmosphere.temperature);
  return compressor.free_air_delivery * roomDensity;
}

/** Seconds from a full receiver to the supply pressure, for a demand above the delivery [kg/s]. */
function secondsUntilSag(compressor: Compressor, spec: EngineSpec, demand: number, delivery: number): number {
  const { cut_out, cut_in, receiver_volume } = compressor;
  const massPerPascal =
    receiver_volume / (gasNamed(spec.gas).specificGasConstant * spec.atmosphere.temperature);
  const coasting = (cut_out - cut_in) / demand;
  const losing = (cut_in - spec.supply.pressure) / (demand - delivery);
  return massPerPascal * (coasting + losing);
}

export function compressorVerdict(
  compressor: Compressor,
  spec: EngineSpec,
  demand: number,
): CompressorVerdict {
  const delivery = deliveredMass(compressor, spec);
  const keepsUp = demand <= delivery;
  return {
    demandAnr: anrVolumeFlow(demand),
    deliveryAnr: anrVolumeFlow(delivery),
    duty: Math.min(1, demand / delivery),
    dutyRating: compressor.duty_rating,
    keepsUp,
    ...(keepsUp ? {} : { minutesUntilSag: secondsUntilSag(compressor, spec, demand, delivery) / 60 }),
  };
}
