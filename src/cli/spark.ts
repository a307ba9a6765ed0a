/** A row of blocks, as high as the values: a picture small enough for a line of text. */

const BLOCKS = ['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'] as const;

/** Values at equal distances; the lowest and the highest of all of them span the height. */
export function spark(values: readonly number[]): string {
  const low = Math.min(...values);
  const span = Math.max(...values) - low;
  return values
    .map((value) => BLOCKS[span > 0 ? Math.round(((value - low) / span) * (BLOCKS.length - 1)) : 0])
    .join('');
}

/** `count` values of y at equal distances of an ascending x, between its rows by a straight line. */
export function evenly(x: ArrayLike<number>, y: ArrayLike<number>, count: number): number[] {
  const [first, last] = [x[0] ?? NaN, x[x.length - 1] ?? NaN];
  let row = 0;
  return Array.from({ length: count }, (_, i) => {
    const at = first + ((last - first) * i) / (count - 1);
    while (row + 2 < x.length && (x[row + 1] ?? NaN) < at) row += 1;
    const [x0, x1, y0, y1] = [x[row], x[row + 1], y[row], y[row + 1]].map((value) => value ?? NaN);
    if (x0 === undefined || x1 === undefined || y0 === undefined || y1 === undefined) return NaN;
    return x1 > x0 ? y0 + ((y1 - y0) * (at - x0)) / (x1 - x0) : y0;
  });
}
