/**
 * Exhaust below freezing, against the dew or frost point of the air that brings the moisture: below it, ice is laid down.
 * The model reckons with dry air: the heat that vapour gives back as it freezes, 2.8 K for each gram in a kilogram of air,
 * is left out, and so is ice that narrows the port.
 */
import type { EngineFacts, Moisture, RunResult, SettledCycle } from '../../run/result.ts';
import { celsiusText, waterText } from '../figures.ts';
import type { Caution } from './caution.ts';

const FREEZING = 273.15;

const LAST_WORD =
  'Keep bare skin off the cold metal, and mind what the local rules say about oil and moisture in exhaust air.';

export function icingCaution({ settled, moisture, engine }: RunResult): Caution | undefined {
  if (settled === undefined || settled.coldestExhaust >= FREEZING) return undefined;
  const cold = `The exhaust gets as cold as ${celsiusText(settled.coldestExhaust)}.`;
  const iced = moisture !== undefined && settled.coldestExhaust < moisture.exhaustDewPoint;
  return {
    topic: 'Icing',
    text: [cold, iced ? iceFrom(moisture) : frostOutside(engine, settled, moisture), LAST_WORD].join(' '),
    severity: iced ? 'caution' : 'note',
  };
}

function iceFrom({ carriedOn, exhaustDewPoint }: Moisture): string {
  return (
    `The air carries ${waterText(carriedOn)} of water an hour and lays down frost below ${celsiusText(exhaustDewPoint)}: ` +
    'expect ice in the exhaust port and pipe, which this reckoning with dry air does not let choke them. Drain the ' +
    'receiver, dry the air, keep the exhaust wide and straight.'
  );
}

function frostOutside(
  { gas }: EngineFacts,
  { coldestExhaust }: SettledCycle,
  moisture: Moisture | undefined,
): string {
  const inside =
    moisture === undefined
      ? `Dry ${gas.name} brings no water`
      : `The air lays down frost only below ${celsiusText(moisture.exhaustDewPoint)}`;
  return `${inside}, so ice within is not expected at ${celsiusText(coldestExhaust)}; what frosts over is the outside of the metal.`;
}
