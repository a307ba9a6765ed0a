/**
 * Water that comes with room air: how much a compressor takes in, how much drops out when the compressed air has cooled
 * to room temperature, and how much goes on through the engine.
 *
 * Compression raises the vapour pressure with the total one, e = φ e_s(T) p/p₀; what exceeds e_s(T) after cooling becomes
 * condensate. The receiver is taken at cut-in pressure, where its air is wettest; without a compressor, the pressure in
 * front of the regulator. No dryer, no mist carried along.
 */
import { dewOrFrostPoint, dewPoint, humidityRatio, saturationPressure } from '../gas/humid-air.ts';
import { gasNamed } from '../gas/registry.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import type { Moisture } from './result.ts';

function pressureWhileCooling({ compressor, supply }: EngineSpec): number {
  return compressor?.cut_in ?? supply.regulator?.inlet_pressure ?? supply.pressure;
}

/** Undefined for a gas from bottles and for perfectly dry air; dry air flow in kg/s. */
export function moistureOf(spec: EngineSpec, airMassFlow: number): Moisture | undefined {
  const { pressure: room, temperature, relative_humidity: share } = spec.atmosphere;
  if (gasNamed(spec.gas).origin !== 'room air' || share === 0) return undefined;
  const receiver = pressureWhileCooling(spec);
  const full = saturationPressure(temperature);
  const inRoom = share * full;
  const beforeCooling = (inRoom * receiver) / room;
  const afterCooling = Math.min(full, beforeCooling);
  const takenIn = airMassFlow * humidityRatio(inRoom, room);
  const carriedOn = airMassFlow * humidityRatio(afterCooling, receiver);
  return {
    receiverPressure: receiver,
    takenIn,
    condensed: Math.max(0, takenIn - carriedOn),
    carriedOn,
    roomDewPoint: dewOrFrostPoint(inRoom),
    pressureDewPoint: dewPoint(beforeCooling),
    exhaustDewPoint: dewOrFrostPoint((afterCooling * room) / receiver),
  };
}
