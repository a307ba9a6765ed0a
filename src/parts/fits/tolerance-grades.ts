/**
 * ISO 286 tolerance grades: how far a diameter of a given grade may vary, in micrometres by step of nominal diameter.
 *
 * IT5 to IT9 as printed by makers and handbooks that agree (mechguru.com, "Standard tolerance zone size table"; h5 to h9
 * of catalog.bigdaishowa.com p. 139), IT10 and IT11 also in EN 10278 as reprinted by stalma.com.pl. Seen.
 */

/** Steps of nominal diameter [mm]: over the first, up to and with the second. */
export const steps = [
  [3, 6],
  [6, 10],
  [10, 18],
  [18, 30],
  [30, 50],
] as const;

/** Widths [µm], one for each step. */
const widths = {
  '5': [5, 6, 8, 9, 11],
  '6': [8, 9, 11, 13, 16],
  '7': [12, 15, 18, 21, 25],
  '8': [18, 22, 27, 33, 39],
  '9': [30, 36, 43, 52, 62],
  '10': [48, 58, 70, 84, 100],
  '11': [75, 90, 110, 130, 160],
} as const satisfies Record<string, readonly number[]>;

export type Grade = keyof typeof widths;

export const grades = Object.keys(widths) as Grade[];

/** A length read from a drawing differs from its decimals by rounding. */
const HAIR = 1e-9;

/** Which step a nominal diameter [m] belongs to; -1 if the tables do not go there. */
export function stepOf(nominal: number): number {
  const mm = nominal * 1e3;
  return steps.findIndex(([over, upTo]) => mm > over * (1 + HAIR) && mm <= upTo * (1 + HAIR));
}

/** Width of a grade [µm] in a step. */
export const toleranceWidth = (grade: Grade, step: number): number => widths[grade][step]!;
