/**
 * Exact area that a circle shares with a region bounded by circular arcs.
 *
 * Green's theorem: area = ½∮(x dy − y dx) along the boundary of the overlap, which consists of those pieces of either
 * outline that lie inside the other. On an arc of centre c, radius r from angle a to b the integral has a closed form.
 */

export interface Arc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Start angle [rad]. */
  readonly start: number;
  /** Signed length in angle [rad]; positive runs anticlockwise. */
  readonly sweep: number;
}

export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** A region: its outline anticlockwise, and a test for a point. */
export interface ArcRegion {
  readonly outline: readonly Arc[];
  contains(x: number, y: number): boolean;
}

const TURN = 2 * Math.PI;

/** ½∮(x dy − y dx) along an arc. */
function boundaryIntegral({ x, y, radius: r, start, sweep }: Arc): number {
  const end = start + sweep;
  return (
    0.5 * r * (r * sweep + x * (Math.sin(end) - Math.sin(start)) - y * (Math.cos(end) - Math.cos(start)))
  );
}

/** Angles on circle `on` at which it crosses circle `other`; none when they do not cross. */
function crossings(on: Circle, other: Circle): readonly number[] {
  const dx = other.x - on.x;
  const dy = other.y - on.y;
  const distance = Math.hypot(dx, dy);
  const cos = (distance ** 2 + on.radius ** 2 - other.radius ** 2) / (2 * distance * on.radius);
  if (!(Math.abs(cos) < 1)) return [];
  const middle = Math.atan2(dy, dx);
  const half = Math.acos(cos);
  return [middle - half, middle + half];
}

/** How far along an arc (0 to |sweep|) an angle of its circle lies; undefined when the arc does not reach it. */
function alongArc(arc: Arc, angle: number): number | undefined {
  const signed = arc.sweep > 0 ? angle - arc.start : arc.start - angle;
  const along = ((signed % TURN) + TURN) % TURN;
  return along < Math.abs(arc.sweep) ? along : undefined;
}

/** The pieces of an arc between cuts, each either wholly inside the other shape or wholly outside. */
function pieces(arc: Arc, cuts: readonly number[]): Arc[] {
  const direction = Math.sign(arc.sweep);
  const stations = [0, ...cuts.toSorted((a, b) => a - b), Math.abs(arc.sweep)];
  return stations.slice(1).map((end, i) => {
    const begin = stations[i]!;
    return { ...arc, start: arc.start + direction * begin, sweep: direction * (end - begin) };
  });
}

const isNumber = (value: number | undefined): value is number => value !== undefined;

function midpoint({ x, y, radius, start, sweep }: Arc): readonly [number, number] {
  const angle = start + sweep / 2;
  return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
}

export function sharedArea(region: ArcRegion, circle: Circle): number {
  const circleCuts: number[] = [];
  let area = 0;
  for (const arc of region.outline) {
    const cuts = crossings(arc, circle)
      .map((angle) => alongArc(arc, angle))
      .filter(isNumber);
    for (const along of cuts) {
      const angle = arc.start + Math.sign(arc.sweep) * along;
      const px = arc.x + arc.radius * Math.cos(angle) - circle.x;
      const py = arc.y + arc.radius * Math.sin(angle) - circle.y;
      circleCuts.push((Math.atan2(py, px) + TURN) % TURN);
    }
    for (const piece of pieces(arc, cuts)) {
      const [x, y] = midpoint(piece);
      if (Math.hypot(x - circle.x, y - circle.y) < circle.radius) area += boundaryIntegral(piece);
    }
  }
  for (const piece of pieces({ ...circle, start: 0, sweep: TURN }, circleCuts)) {
    if (region.contains(...midpoint(piece))) area += boundaryIntegral(piece);
  }
  return area;
}
