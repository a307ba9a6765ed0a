/**
 * A search asks for the value of a function at one point after another and returns what it found. Being a generator it
 * does not care where the answer comes from: a formula at once, an engine from another thread after a while.
 */
export type Search<Point, Found> = Generator<Point, Found, number>;

/** Drives a search with a function that answers at once. */
export function searched<Point, Found>(search: Search<Point, Found>, value: (at: Point) => number): Found {
  let step = search.next();
  while (step.done !== true) step = search.next(value(step.value));
  return step.value;
}

/** Drives a search with a function that answers in its own time. */
export async function searchedLater<Point, Found>(
  search: Search<Point, Found>,
  value: (at: Point) => Promise<number>,
): Promise<Found> {
  let step = search.next();
  while (step.done !== true) step = search.next(await value(step.value));
  return step.value;
}
