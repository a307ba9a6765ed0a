/**
 * Plane potential flow between edges held at given potentials, solved by the method of fundamental solutions: point
 * sources hidden behind the edges, as strong as it takes to hold each edge at its potential. For smooth edges the error
 * falls exponentially with the number of sources. Independent of any closed form.
 */

interface Point {
  readonly x: number;
  readonly y: number;
}

/** The field of a unit source, with the symmetry of the film: walls, repeats, images. */
interface SourceField {
  readonly potential: (at: Point, source: Point) => number;
  /** Whether a line at zero is part of it. */
  readonly earthed: boolean;
}

/** A closed curve, once round for t from 0 to 2π. */
export type Curve = (t: number) => Point;

/** An edge held at a potential, and the curve behind it that carries the sources. */
export interface Edge {
  readonly curve: Curve;
  readonly behind: Curve;
  readonly potential: number;
}

export const circle =
  (x: number, y: number, radius: number): Curve =>
  (t) => ({ x: x + radius * Math.cos(t), y: y + radius * Math.sin(t) });

/** In the open plane: −ln r. */
export const openPlane: SourceField = {
  earthed: false,
  potential: (at, source) => -Math.log(Math.hypot(at.x - source.x, at.y - source.y)),
};

/** On a strip rolled up in y: −ln |sin(π z/P)| repeats every P. */
export const rolledUp = (circumference: number): SourceField => ({
  earthed: false,
  potential: (at, source) => {
    const x = (Math.PI * (at.x - source.x)) / circumference;
    const y = (Math.PI * (at.y - source.y)) / circumference;
    return -0.5 * Math.log(Math.sinh(x) ** 2 + Math.sin(y) ** 2);
  },
});

/** The same field with a straight edge at x = `line`, held at zero by an image of every source. */
export const withEarthedLine = ({ potential }: SourceField, line: number): SourceField => ({
  earthed: true,
  potential: (at, source) => potential(at, source) - potential(at, { x: 2 * line - source.x, y: source.y }),
});

const SOURCES = 72;

const around = (curve: Curve): Point[] =>
  Array.from({ length: SOURCES }, (_, i) => curve((2 * Math.PI * (i + 0.5)) / SOURCES));

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * Flux out of each edge over unit potential, as a shape factor S. The potential may float by a constant, with which the
 * fluxes add up to nothing, unless an earthed line takes in what is left over.
 */
export function shapeFactors(edges: readonly Edge[], field: SourceField): readonly number[] {
  const sources = edges.flatMap(({ behind }) => around(behind));
  const floats = field.earthed ? [] : [1];
  const rows = edges.flatMap((edge) =>
    around(edge.curve).map((at) => [
      ...sources.map((source) => field.potential(at, source)),
      ...floats,
      edge.potential,
    ]),
  );
  if (!field.earthed) rows.push([...sources.map(() => 1), 0, 0]);
  const strengths = solveLinear(rows);
  return edges.map((_, k) => 2 * Math.PI * sum(strengths.slice(k * SOURCES, (k + 1) * SOURCES)));
}

/** Gaussian elimination with row exchange; each row ends with its right-hand side. */
function solveLinear(rows: number[][]): number[] {
  const n = rows.length;
  for (let k = 0; k < n; k += 1) {
    let pivot = k;
    for (let i = k + 1; i < n; i += 1) if (Math.abs(rows[i]![k]!) > Math.abs(rows[pivot]![k]!)) pivot = i;
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    for (let i = k + 1; i < n; i += 1) eliminate(rows[i]!, rows[k]!, k);
  }
  const solution = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k -= 1) {
    const row = rows[k]!;
    const known = sum(solution.map((value, i) => (i > k ? value * row[i]! : 0)));
    solution[k] = (row[n]! - known) / row[k]!;
  }
  return solution;
}

function eliminate(row: number[], pivotRow: readonly number[], k: number): void {
  const factor = row[k]! / pivotRow[k]!;
  for (let j = k; j < row.length; j += 1) row[j]! -= factor * pivotRow[j]!;
}
