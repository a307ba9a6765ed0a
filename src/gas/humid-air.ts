/**
 * Water in air: how much there is room for, and at what temperature it comes out.
 *
 *   over water: e_w = 611.2 Pa · exp(17.62 t/(243.12 °C + t))       −45 to 60 °C
 *   over ice:   e_i = 611.2 Pa · exp(22.46 t/(272.62 °C + t))       −65 to 0 °C
 *   humidity ratio: w = 0.622 e/(p − e) [kg of water per kg of dry air]
 *
 * Source: WMO, Guide to Instruments and Methods of Observation (WMO No. 8), Magnus form; the constants over ice from
 * memory, checked against Sonntag's formula. Assumes ideal gases: at 10 bar air holds a few per cent more than this says.
 */
import { exp } from '../numerics/elementary/exponential.ts';
import { log } from '../numerics/elementary/logarithm.ts';

const ZERO_CELSIUS = 273.15;
const AT_FREEZING = 611.2;

/** Molar mass of water over that of dry air. */
const MASS_RATIO = 18.015 / 28.964;

interface MagnusConstants {
  readonly slope: number;
  /** [K] */
  readonly offset: number;
}

const overWater: MagnusConstants = { slope: 17.62, offset: 243.12 };
const overIce: MagnusConstants = { slope: 22.46, offset: 272.62 };

function magnusPressure({ slope, offset }: MagnusConstants, temperature: number): number {
  const t = temperature - ZERO_CELSIUS;
  return AT_FREEZING * exp((slope * t) / (offset + t));
}

function magnusTemperature({ slope, offset }: MagnusConstants, pressure: number): number {
  const y = log(pressure / AT_FREEZING);
  return ZERO_CELSIUS + (offset * y) / (slope - y);
}

/** Vapour pressure [Pa] at which air of that temperature [K] is full, over liquid water. */
export const saturationPressure = (temperature: number): number => magnusPressure(overWater, temperature);

/** The same over ice, below freezing. */
export const saturationPressureOverIce = (temperature: number): number =>
  magnusPressure(overIce, temperature);

/** Temperature [K] at which air of that vapour pressure [Pa] begins to drop liquid water. */
export const dewPoint = (vapourPressure: number): number => magnusTemperature(overWater, vapourPressure);

/** Temperature [K] at which it begins to lay down dew or, below freezing, frost. */
export function dewOrFrostPoint(vapourPressure: number): number {
  return magnusTemperature(vapourPressure < AT_FREEZING ? overIce : overWater, vapourPressure);
}

/** w [kg/kg] of air at a pressure [Pa] with that vapour pressure [Pa]. */
export const humidityRatio = (vapourPressure: number, pressure: number): number =>
  (MASS_RATIO * vapourPressure) / (pressure - vapourPressure);
