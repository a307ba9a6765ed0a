/**
 * A settled engine against the compressor and receiver of the scenario: what minutes of supply say about the one demand
 * that a run knows, that at the set pressure.
 */
import { anrVolumeFlow } from '../gas/reference-atmosphere.ts';
import type { Compressor } from '../parts/compressor.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import { courseOf } from './supply/course.ts';
import { shedOf, type Shed } from './supply/shed.ts';

/** The settled engine against the compressor in the shed. */
export interface CompressorVerdict {
  /** What the engine takes, as ANR [m³/s]. */
  readonly demandAnr: number;
  /** What the compressor gives, as ANR [m³/s]: half-way from cut-in to cut-out, or where it falls short, at the set pressure. */
  readonly deliveryAnr: number;
  /** Share of the time the compressor must run, at most 1. */
  readonly duty: number;
  readonly dutyRating: number;
  readonly keepsUp: boolean;
  /** Minutes from a full receiver until it falls to the regulator's pressure; undefined when it never does. */
  readonly minutesUntilSag?: number;
}

/** For a demand [kg/s]; what follows once the pressure has sagged is left to the minutes of supply. */
export function compressorVerdict(
  compressor: Compressor,
  spec: EngineSpec,
  demand: number,
): CompressorVerdict {
  const shed = shedOf(spec, compressor, { demand: () => demand, stallPressure: spec.supply.pressure });
  const { duty, timeToStop } = courseOf(shed, 0);
  const keepsUp = timeToStop === undefined;
  return {
    demandAnr: anrVolumeFlow(demand),
    deliveryAnr: anrVolumeFlow(shed.delivery(meetingPressure(shed, keepsUp))),
    duty,
    dutyRating: compressor.duty_rating,
    keepsUp,
    ...(keepsUp ? {} : { minutesUntilSag: timeToStop / 60 }),
  };
}

/** Where delivery and demand are compared: half-way through the compressor's work, or where it fails to hold its own. */
const meetingPressure = ({ cutIn, cutOut, setPressure }: Shed, keepsUp: boolean): number =>
  keepsUp ? (cutIn + cutOut) / 2 : setPressure;
