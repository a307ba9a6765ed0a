/**
 * A law of the crank angle that several others start from, each asked at the same angle one after the other: works out each
 * angle once. In an array, because a number that a function keeps for itself would go to the heap each time.
 */
export function remembered(law: (angle: number) => number): (angle: number) => number {
  const last = new Float64Array([NaN, NaN]);
  return (angle) => {
    if (last[0] !== angle) {
      last[1] = law(angle);
      last[0] = angle;
    }
    return last[1]!;
  };
}
