/**
 * A figure over two settings as a chequered field: the darker, the more. Engines that do not run are hatched; a thick line
 * parts them from those that do, a thin one parts those that meet the conditions from those that do not.
 */
import { svg, type Markup } from '../html/markup.ts';
import { coordinate } from './scale.ts';

export interface HeatCell {
  /** `undefined` where there is nothing to show. */
  readonly value: number | undefined;
  readonly text: string;
  readonly runs: boolean;
  readonly holds: boolean;
}

export interface HeatMap {
  readonly x: { readonly label: string; readonly ticks: readonly string[] };
  readonly y: { readonly label: string; readonly ticks: readonly string[] };
  /** Row by row from the first tick of y, each from the first tick of x. */
  readonly cells: readonly (readonly HeatCell[])[];
  readonly alternative: string;
}

const WIDTH = 640;
const [RIGHT, TOP, BELOW] = [WIDTH - 6, 28, 48] as const;
/** About what a character takes at the size of the drawing. */
const CHARACTER = 7.5;
const TEXT_ROOM = 30;
/** Of the ink: figures upon it keep a contrast of 4.5 to 1, in light and dark. */
const DEEPEST = 0.46;

const longest = (texts: readonly string[]): number => Math.max(...texts.map(({ length }) => length));

export function heatMap({ x, y, cells, alternative }: HeatMap): Markup {
  const columns = x.ticks.length;
  const rows = y.ticks.length;
  const left = Math.min(WIDTH / 3, 14 + CHARACTER * longest(y.ticks));
  const width = (RIGHT - left) / columns;
  const height = Math.max(14, Math.min(34, 360 / rows));
  const bottom = TOP + rows * height;
  const values = cells.flat().flatMap(({ value }) => value ?? []);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const strength = (value: number): number => (high > low ? (value - low) / (high - low) : 1);
  // The first row stands at the foot, as on a chart.
  const place = (row: number, column: number): readonly [number, number] => [
    left + column * width,
    bottom - (row + 1) * height,
  ];
  const field = cells.map((line, row) =>
    line.map((cell, column) => field1(cell, place(row, column), width, height, strength)),
  );
  return svg`<svg class="drawing heat" viewBox="0 0 ${WIDTH} ${coordinate(bottom + BELOW)}" role="img" aria-label="${alternative}">
<defs><pattern id="still" width="8" height="8" patternUnits="userSpaceOnUse"><path class="hatch" d="M-2 2L2 -2M0 8L8 0M6 10L10 6"/></pattern></defs>
${field}
<path class="holds-border" d="${border(cells, place, width, height, ({ holds }) => holds)}"/>
<path class="runs-border" d="${border(cells, place, width, height, ({ runs }) => runs)}"/>
${ticksBelow(x.ticks, left, width, bottom)}${y.ticks.map((tick, row) => text('tick end', left - 7, bottom - (row + 0.5) * height + 4, tick))}
${text('axis middle', (left + RIGHT) / 2, bottom + 40, x.label)}${text('axis', 0, 15, y.label)}</svg>`;
}

function field1(
  { value, text: words, runs }: HeatCell,
  [left, top]: readonly [number, number],
  width: number,
  height: number,
  strength: (value: number) => number,
): Markup {
  const box = svg`x="${coordinate(left)}" y="${coordinate(top)}" width="${coordinate(width)}" height="${coordinate(height)}"`;
  if (!runs || value === undefined) return svg`<rect class="still" ${box} fill="url(#still)"/>`;
  const share = strength(value);
  const label = width < TEXT_ROOM ? undefined : text('middle', left + width / 2, top + height / 2 + 4, words);
  return svg`<rect class="warm" ${box} fill-opacity="${coordinate(0.04 + DEEPEST * share)}"/>${label}`;
}

/** Lines between neighbours that differ. */
function border(
  cells: HeatMap['cells'],
  place: (row: number, column: number) => readonly [number, number],
  width: number,
  height: number,
  of: (cell: HeatCell) => boolean,
): string {
  const differ = (a: HeatCell | undefined, b: HeatCell | undefined): boolean =>
    a !== undefined && b !== undefined && of(a) !== of(b);
  return cells
    .flatMap((line, row) =>
      line.flatMap((cell, column) => {
        const [left, top] = place(row, column).map(coordinate) as [string, string];
        return [
          ...(differ(cell, line[column + 1])
            ? [`M${coordinate(Number(left) + width)} ${top}v${coordinate(height)}`]
            : []),
          ...(differ(cell, cells[row + 1]?.[column]) ? [`M${left} ${top}h${coordinate(width)}`] : []),
        ];
      }),
    )
    .join('');
}

/** As many as there is room for. */
function ticksBelow(ticks: readonly string[], left: number, width: number, bottom: number): Markup[] {
  const every = Math.max(1, Math.ceil((CHARACTER * longest(ticks) + 8) / width));
  return ticks.flatMap((tick, i) =>
    i % every === 0 ? [text('tick middle', left + (i + 0.5) * width, bottom + 16, tick)] : [],
  );
}

const text = (
  classes: string,
  x: number,
  y: number,
  words: string,
): Markup => svg`<text class="${classes}" x="${coordinate(x)}" y="${coordinate(y)}">${words}</text>
`;
