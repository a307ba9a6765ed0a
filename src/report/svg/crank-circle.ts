/**
 * The crank circle as a drawing: top dead centre above, the running direction clockwise, arcs and marks at crank angles.
 * Names stand in a column on either side, moved apart where they would touch.
 */
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import { svg, type Markup } from '../html/markup.ts';
import { svgText } from './paper.ts';
import { coordinate } from './scale.ts';

const WIDTH = 452;
const HEIGHT = 290;
const centre = { x: WIDTH / 2, y: HEIGHT / 2 } as const;
const CIRCLE = 62;
const COLUMN = 124;
/** Between the lines of neighbouring names. */
const LEAST_DISTANCE = 34;
/** A whole circle cannot be drawn as one arc. */
const ALMOST_A_TURN = 2 * Math.PI * 0.9999;

export const ringRadii = { outer: 102, inner: 82 } as const;

export interface CircleArc {
  readonly from: number;
  /** Crank angle that it covers [rad], 0 to 2π. */
  readonly length: number;
  readonly radius: number;
  /** A class of the style sheet. */
  readonly ink: string;
}

/** A line along a radius. */
export interface CircleBar {
  readonly angle: number;
  readonly from: number;
  readonly to: number;
}

export interface CircleLabel {
  readonly angle: number;
  readonly radius: number;
  readonly words: string;
  readonly below: string;
}

export interface CrankCircle {
  readonly arcs: readonly CircleArc[];
  readonly bars?: readonly CircleBar[];
  readonly labels: readonly CircleLabel[];
  /** Where the crank is drawn. */
  readonly crankAngle?: number;
  readonly alternative: string;
}

export function crankCircle({ arcs, bars = [], labels, crankAngle, alternative }: CrankCircle): Markup {
  return svg`<svg class="drawing" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${alternative}">
    ${graduation()}
    ${arcs.map(arcMarkup)}
    ${bars.map(({ angle, from, to }) => svg`<path class="push" d="M${point(angle, from)}L${point(angle, to)}"/>`)}
    ${crankAngle === undefined ? undefined : crank(crankAngle)}
    ${placedLabels(labels).map(labelMarkup)}
  </svg>`;
}

const place = (angle: number, radius: number): readonly [number, number] => [
  centre.x + radius * sin(angle),
  centre.y - radius * cos(angle),
];

const point = (angle: number, radius: number): string => place(angle, radius).map(coordinate).join(' ');

/** Ticks every thirty degrees, numbers at the quarters, and an arrow that says which way it turns. */
function graduation(): Markup {
  const ticks = Array.from({ length: 12 }, (_, i) => (i * Math.PI) / 6).map(
    (angle) => svg`<path class="grid" d="M${point(angle, CIRCLE)}L${point(angle, CIRCLE - 6)}"/>`,
  );
  const quarters = [0, 90, 180, 270].map((degrees) => {
    const [x, y] = place((degrees * Math.PI) / 180, CIRCLE - 19);
    return svgText('tick middle', coordinate(x), coordinate(y + 4), `${degrees}°`);
  });
  const [from, to] = [0.3, 1.1];
  return svg`<circle class="grid bare" cx="${centre.x}" cy="${centre.y}" r="${CIRCLE}"/>${ticks}${quarters}
<path class="turning" d="M${point(from, 26)}A26 26 0 0 1 ${point(to, 26)}m-8 -1.5l8 1.5l2.5 -8"/>`;
}

function arcMarkup({ from, length, radius, ink }: CircleArc): Markup {
  const to = from + Math.min(length, ALMOST_A_TURN);
  const large = length > Math.PI ? 1 : 0;
  return svg`<path class="arc ${ink}" d="M${point(from, radius)}A${radius} ${radius} 0 ${large} 1 ${point(to, radius)}"/>`;
}

const crank = (angle: number): Markup => {
  const [x, y] = place(angle, CIRCLE);
  return svg`<path class="crank" d="M${centre.x} ${centre.y}L${coordinate(x)} ${coordinate(y)}"/><circle class="crank" cx="${coordinate(x)}" cy="${coordinate(y)}" r="6"/><circle class="crank" cx="${centre.x}" cy="${centre.y}" r="4"/>`;
};

interface PlacedLabel extends CircleLabel {
  readonly side: 1 | -1;
  readonly y: number;
}

function placedLabels(labels: readonly CircleLabel[]): PlacedLabel[] {
  return ([1, -1] as const).flatMap((side) =>
    apart(
      labels
        .filter(({ angle }) => (sin(angle) >= 0 ? 1 : -1) === side)
        .map((label) => ({ ...label, side, y: place(label.angle, 1.18 * label.radius)[1] })),
    ),
  );
}

/** From top to bottom, none closer to the one above than a line and a half, all on the paper. */
function apart(labels: readonly PlacedLabel[]): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const label of [...labels].sort((a, b) => a.y - b.y)) {
    const above = placed.at(-1)?.y ?? 16 - LEAST_DISTANCE;
    placed.push({ ...label, y: Math.max(label.y, above + LEAST_DISTANCE) });
  }
  const over = Math.max(0, (placed.at(-1)?.y ?? 0) - (HEIGHT - 22));
  return placed.map((label, i) => ({ ...label, y: Math.max(label.y - over, 16 + i * LEAST_DISTANCE) }));
}

function labelMarkup({ angle, radius, words, below, side, y }: PlacedLabel): Markup {
  const column = centre.x + side * COLUMN;
  const anchor = side === 1 ? 'label start' : 'label end';
  const mark = point(angle, radius + 9);
  const inward = point(angle, radius - 9);
  return svg`<path class="event-tick" d="M${inward}L${mark}"/><path class="leader" d="M${mark}L${coordinate(column - side * 4)} ${coordinate(y)}"/>
${svgText(anchor, coordinate(column), coordinate(y - 1), words)}${svgText(`${anchor} quiet`, coordinate(column), coordinate(y + 13), below)}`;
}
