/**
 * A quantity of the crank angle over one turn, as numbers for the C reference: c/angle-table.h says how they lie and are
 * interpolated. Slopes at the nodes by differences of the fourth order, never across a breakpoint.
 */
const FULL_TURN = 2 * Math.PI;

/** Cells per half segment: the interpolation is then right to about 1e-9 of the largest value. */
const CELLS = 128;

/** An index of one byte leads to them. */
const MOST_SEGMENTS = 255;

/** How far inside its segment the function is looked at instead of at a breakpoint, where it may jump [rad]. */
const INSIDE = 1e-12;

/** Slope at node i per node spacing, `at` known from 0 up. */
function slopeAt(at: (i: number) => number, i: number): number {
  if (i === 0) return (-25 * at(0) + 48 * at(1) - 36 * at(2) + 16 * at(3) - 3 * at(4)) / 12;
  if (i === 1) return (-3 * at(0) - 10 * at(1) + 18 * at(2) - 6 * at(3) + at(4)) / 12;
  return (8 * (at(i + 1) - at(i - 1)) - (at(i + 2) - at(i - 2))) / 12;
}

/** Values and slopes from a breakpoint to the middle of its segment, `half` away; negative for backwards. */
function halfSegment(f: (angle: number) => number, edge: number, half: number): string {
  const at = (i: number): number =>
    f(edge + Math.sign(half) * Math.max(INSIDE, Math.abs(half) * (i / CELLS) ** 2));
  const values = Array.from({ length: CELLS + 3 }, (_, i) => at(i));
  const row = Array.from({ length: CELLS + 1 }, (_, i) => `${values[i]!} ${slopeAt((k) => values[k]!, i)}`);
  return row.join(' ');
}

const isConstant = (f: (angle: number) => number): boolean =>
  Array.from({ length: 720 }, (_, i) => f((i / 720) * FULL_TURN)).every((value) => value === f(0.1));

/** The table of a function of an angle in [0, 2π), given where it kinks or jumps. */
export function angleTable(f: (angle: number) => number, kinks: readonly number[]): string {
  if (isConstant(f)) return `0 ${f(0)}`;
  const wanted = [0, ...kinks, FULL_TURN].sort((a, b) => a - b);
  const starts = wanted.filter((angle, i) => i === 0 || angle - wanted[i - 1]! > 1e-9);
  if (starts.length > MOST_SEGMENTS)
    throw new Error('the C reference has no room for so many kinks in a turn');
  const segments = starts.slice(1).map((end, i) => {
    const half = (end - starts[i]!) / 2;
    return [halfSegment(f, starts[i]!, half), halfSegment(f, end, -half)].join('\n');
  });
  return [`${CELLS} ${segments.length}`, starts.join(' '), ...segments].join('\n');
}
