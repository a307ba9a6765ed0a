/** Which rows of a long trace to draw so that no peak is lost: per stretch its first, lowest, highest and last row. */
const STRETCHES = 300;

export function thinnedRows(values: ArrayLike<number>): number[] {
  const count = values.length;
  if (count <= 4 * STRETCHES) return Array.from({ length: count }, (_, row) => row);
  return Array.from({ length: STRETCHES }, (_, stretch) =>
    stretchRows(
      values,
      Math.floor((stretch * count) / STRETCHES),
      Math.floor(((stretch + 1) * count) / STRETCHES) - 1,
    ),
  ).flat();
}

function stretchRows(values: ArrayLike<number>, first: number, last: number): number[] {
  let lowest = first;
  let highest = first;
  for (let row = first; row <= last; row += 1) {
    if ((values[row] ?? NaN) < (values[lowest] ?? NaN)) lowest = row;
    if ((values[row] ?? NaN) > (values[highest] ?? NaN)) highest = row;
  }
  return [...new Set([first, lowest, highest, last])].sort((a, b) => a - b);
}
