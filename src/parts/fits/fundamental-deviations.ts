/**
 * ISO 286 fundamental deviations of shafts that slide: by how much the largest shaft stays below the nominal diameter, in
 * micrometres by step of nominal diameter (tolerance-grades.ts). The same for every grade. Holes are H: the smallest hole
 * has the nominal diameter.
 *
 * As printed in JIS B 0401 (1999), which takes its figures from ISO 286, in a toolmaker's catalogue (docs.steelcam.org,
 * Sumitomo, technical information, p. 28; d8, e7, f6, g6, h6). Seen; g6, f7, h6 and h9 above 6 mm also in Matthews,
 * Aeronautical Engineer's Data Book, p. 227, from BS 4500, where f7 of 6 to 10 mm is misprinted.
 */
const shortfalls = {
  d: [30, 40, 50, 65, 80],
  e: [20, 25, 32, 40, 50],
  f: [10, 13, 16, 20, 25],
  g: [4, 5, 6, 7, 9],
  h: [0, 0, 0, 0, 0],
} as const satisfies Record<string, readonly number[]>;

export type ShaftLetter = keyof typeof shortfalls;

export const shaftLetters = Object.keys(shortfalls) as ShaftLetter[];

/** Nominal diameter less the largest shaft [µm], in a step. */
export const shortfall = (letter: ShaftLetter, step: number): number => shortfalls[letter][step]!;
