/**
 * The factor t for a two-sided 95 % interval from a standard error with ν degrees of freedom (Student's distribution).
 *
 * Exact for ν = 1 and 2; beyond by the expansion about the normal quantile z = 1.959964,
 *
 *   t = z + (z³ + z)/(4ν) + (5z⁵ + 16z³ + 3z)/(96ν²) + (3z⁷ + 19z⁵ + 17z³ − 15z)/(384ν³)
 *       + (79z⁹ + 776z⁷ + 1482z⁵ − 1920z³ − 945z)/(92160ν⁴)
 *
 * within 0.5 % from ν = 3 (Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.5, from memory).
 */
const Z = 1.959_963_985;

export function student95(degreesOfFreedom: number): number {
  const v = degreesOfFreedom;
  if (v < 1) return Infinity;
  if (v < 2) return 12.7062;
  if (v < 3) return 4.302_65;
  const z = Z;
  return (
    z +
    (z ** 3 + z) / (4 * v) +
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * v ** 2) +
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * v ** 3) +
    (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / (92_160 * v ** 4)
  );
}
