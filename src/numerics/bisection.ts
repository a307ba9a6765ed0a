/** Where a condition that holds at one place and not at another changes over. */

const HALVINGS = 100;

/**
 * The end of the closing bracket at which `holds` does not; `yes` may lie on either side of `no`. `close` is the width of
 * the last bracket as a share of the place.
 */
export function bisected(
  holds: (x: number) => boolean,
  yes: number,
  no: number,
  close = Number.EPSILON,
): number {
  let [good, bad] = [yes, no];
  for (let i = 0; i < HALVINGS && Math.abs(bad - good) > close * Math.abs(bad); i += 1) {
    const middle = (good + bad) / 2;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return bad;
}
