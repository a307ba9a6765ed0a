/** Diameters of a spool and its bore as they are written at a dimension, with the limits of the chosen fit. */
import { mm } from '../drawing/words.ts';
import type { SpoolPlan } from './spool-plan.ts';

const signed = (deviation: number): string => {
  const text = (deviation * 1e3).toFixed(3);
  if (Number(text) === 0) return '0';
  return deviation > 0 ? `+${text}` : text.replace('-', '−');
};

const withLimits = (
  diameter: number,
  { least, most }: { readonly least: number; readonly most: number },
): string => `Ø${mm(diameter, 3)} (${signed(most)}/${signed(least)})`;

export const boreSize = ({ diameter, deviations }: SpoolPlan): string =>
  deviations === undefined ? `Ø${mm(diameter, 3)}` : withLimits(diameter, deviations.bore);

/** Of a plain gap the spool is made to the bore as measured. */
export const rodSize = ({ diameter, deviations, clearance }: SpoolPlan): string =>
  deviations === undefined
    ? `Ø bore −${(2e3 * clearance.mean).toFixed(3)}`
    : withLimits(diameter, deviations.rod);
