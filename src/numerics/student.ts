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
  // The powers of z are drawn out of one another.
  const z = Z;
  const w = z * z;
  return (
    z +
    (z * (1 + w)) / (4 * v) +
    (z * (3 + w * (16 + w * 5))) / (96 * v * v) +
    (z * (-15 + w * (17 + w * (19 + w * 3)))) / (384 * v * v * v) +
    (z * (-945 + w * (-1920 + w * (1482 + w * (776 + w * 79))))) / (92_160 * v * v * v * v)
  );
}
