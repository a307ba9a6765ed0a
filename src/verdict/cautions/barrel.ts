/**
 * The barrel under the highest pressure there is: hoop stress of a thin tube, σ = p·d/(2·t), any text on strength of
 * materials; against strength over a factor, common practice, no source. Where the wall is a tenth of the bore the rule is
 * 10 % too kind to the inner skin, at a fifth 19 % (Lamé, derived), which the factor covers. A plastic barrel is refused
 * whatever its wall: OSHA hazard bulletin of 13 December 1990 on thermoplastic pipe, and ASME B31.3, A323.4.2 (both seen
 * as quoted).
 */
import type { EngineFacts, RunResult } from '../../run/result.ts';
import { stressText } from '../figures.ts';
import type { Caution, Severity } from './caution.ts';
import { highestPressure, highestPressureText } from './highest-pressure.ts';

/** [Pa]; pressure above the room [Pa], bore and wall in the same unit. */
export const barrelHoopStress = (pressure: number, bore: number, wall: number): number =>
  (pressure * bore) / (2 * wall);

const LAST_WORD =
  'Covers, screws, ports, threads and seams are not in this; test with water, not with air, and as your local code or a ' +
  'licensed inspector asks.';

export function barrelCaution({ engine }: RunResult): Caution | undefined {
  const { material, wallThickness } = engine.barrel;
  if (material !== undefined && material.strength === undefined) return refusal(material.name);
  if (wallThickness === undefined) return undefined;
  const pressure = highestPressure(engine) - engine.atmosphericPressure;
  const stress = barrelHoopStress(pressure, engine.bore, wallThickness);
  const strength = material?.strength;
  const allowable = strength && strength.value / strength.factor;
  return {
    topic: 'Barrel',
    text: [loaded(engine, stress), against(engine, stress, allowable), LAST_WORD].join(' '),
    severity: severityOf(stress, allowable),
  };
}

function refusal(material: string): Caution {
  return {
    topic: 'Barrel',
    text:
      `A barrel of ${material} is refused, whatever its wall: under compressed gas it bursts into flying splinters, from ` +
      'a knock or from cold as well as from pressure. OSHA warns against it and ASME B31.3 bars it from compressed air. ' +
      `Use metal tube. ${LAST_WORD}`,
    severity: 'danger',
  };
}

const loaded = (engine: EngineFacts, stress: number): string =>
  `The barrel carries ${stressText(stress)} around its wall (thin tube, σ = p·d/(2·t)) at ${highestPressureText(engine)}.`;

function against({ barrel }: EngineFacts, stress: number, allowable: number | undefined): string {
  const { material } = barrel;
  if (material?.strength === undefined || allowable === undefined)
    return 'Its material is not given, so there is nothing to hold that against.';
  const { value, kind, factor } = material.strength;
  const rule =
    `${material.name} is allowed ${stressText(allowable)} here, a ${kind} of ${stressText(value)} over ${factor} (common ` +
    'practice, no source)';
  return stress > allowable
    ? `That is too much: ${rule}. Use a thicker wall or less pressure.`
    : `${rule.charAt(0).toUpperCase()}${rule.slice(1)}.`;
}

function severityOf(stress: number, allowable: number | undefined): Severity {
  if (allowable === undefined) return 'caution';
  return stress > allowable ? 'danger' : 'note';
}
