/**
 * Receiver, compressor and engine as laws of the pressure in the receiver: all that minutes of supply are reckoned from.
 *
 *   dm/dt = delivery(p) − demand(p),  p = m R T/V
 *
 * The receiver is at room temperature (isothermal) and the air an ideal gas. Free air becomes mass at the density of the
 * room.
 */
import { gasNamed } from '../../gas/registry.ts';
import { freeAirDelivery, type Compressor } from '../../parts/compressor.ts';
import type { EngineSpec } from '../../parts/engine-description.ts';

/** A law of the pressure in the receiver [Pa]. */
export type OfPressure = (pressure: number) => number;

export interface Shed {
  /** Air by which the receiver's pressure rises by one pascal, V/(R T) [kg/Pa]. */
  readonly massPerPascal: number;
  readonly cutIn: number;
  readonly cutOut: number;
  /** Pressure the regulator is set to; the supply sags when the receiver falls below it. */
  readonly setPressure: number;
  /** The running engine stops when the receiver falls to this. */
  readonly stallPressure: number;
  /** What the running compressor delivers [kg/s]. */
  readonly delivery: OfPressure;
  /** What the running engine takes [kg/s]. */
  readonly demand: OfPressure;
}

/** Density of the room's air [kg/m³], at which free air is counted. */
function roomDensity({ gas, atmosphere }: EngineSpec): number {
  return atmosphere.pressure / (gasNamed(gas).specificGasConstant * atmosphere.temperature);
}

export function shedOf(
  spec: EngineSpec,
  compressor: Compressor,
  { demand, stallPressure }: Pick<Shed, 'demand' | 'stallPressure'>,
): Shed {
  const density = roomDensity(spec);
  const freeAir = freeAirDelivery(compressor, spec.atmosphere.pressure);
  return {
    massPerPascal: (compressor.receiver_volume * density) / spec.atmosphere.pressure,
    cutIn: compressor.cut_in,
    cutOut: compressor.cut_out,
    setPressure: spec.supply.pressure,
    stallPressure,
    delivery: (pressure) => density * freeAir(pressure),
    demand,
  };
}

/** What the receiver gains while the compressor runs [kg/s]. */
export const gain = ({ delivery, demand }: Shed, pressure: number): number =>
  delivery(pressure) - demand(pressure);
