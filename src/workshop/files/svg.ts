/** A drawing as SVG, one unit to the millimetre, so that it prints and imports at full size. */
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import type { Layer, Mark } from '../drawing/drawing.ts';
import {
  boundsOf,
  outlineBounds,
  pointOfArc,
  segmentsOf,
  type Bounds,
  type Outline,
} from '../geometry/outline.ts';

/** How the lines of a layer look: colour, width [mm] and dashes [mm]. */
interface Look {
  readonly colour: string;
  readonly width: number;
  readonly dashes?: string;
}

/** Tools and readers tell layers by colour; on paper by width and dashes. */
const looks: Readonly<Record<Layer, Look>> = {
  'cut outside': { colour: '#c00000', width: 0.35 },
  'cut inside': { colour: '#0040c0', width: 0.35 },
  drill: { colour: '#007030', width: 0.35 },
  outline: { colour: '#000000', width: 0.35 },
  hidden: { colour: '#404040', width: 0.2, dashes: '2 1' },
  engrave: { colour: '#8a4b00', width: 0.25 },
  centre: { colour: '#606060', width: 0.15, dashes: '6 1 1 1' },
  dimension: { colour: '#404040', width: 0.15 },
  reference: { colour: '#7030a0', width: 0.2, dashes: '3 1.5' },
};

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

export const escaped = (text: string): string =>
  text
    .replace(/[\p{Cc}\p{Cf}]/gu, '\uFFFD')
    .replace(/[&<>"]/gu, (character) => entities[character] ?? character);

/** Millimetres to a tenth of a micrometre; never "-0". */
const mmText = (length: number): string => String(Number((length * 1e3).toFixed(4)) + 0);

function outlinePath(outline: Outline): string {
  const steps = segmentsOf(outline).map(({ to, arc }) => {
    const end = `${mmText(to.x)} ${mmText(-to.y)}`;
    if (arc === undefined) return `L${end}`;
    const radius = mmText(arc.radius);
    const large = Math.abs(arc.sweep) > Math.PI ? 1 : 0;
    return `A${radius} ${radius} 0 ${large} ${arc.sweep > 0 ? 0 : 1} ${end}`;
  });
  const [first] = outline;
  return first === undefined ? '' : `M${mmText(first.x)} ${mmText(-first.y)}${steps.join('')}Z`;
}

function shapeText(mark: Mark): string {
  switch (mark.type) {
    case 'outline':
      return `<path d="${outlinePath(mark.outline)}"/>`;
    case 'circle':
      return `<circle cx="${mmText(mark.centre.x)}" cy="${mmText(-mark.centre.y)}" r="${mmText(mark.radius)}"/>`;
    case 'line':
      return `<path d="M${mmText(mark.from.x)} ${mmText(-mark.from.y)}L${mmText(mark.to.x)} ${mmText(-mark.to.y)}"/>`;
    case 'arc': {
      const { arc } = mark;
      const [begin, end] = [pointOfArc(arc, arc.start), pointOfArc(arc, arc.start + arc.sweep)];
      const large = Math.abs(arc.sweep) > Math.PI ? 1 : 0;
      const radius = mmText(arc.radius);
      return `<path d="M${mmText(begin.x)} ${mmText(-begin.y)}A${radius} ${radius} 0 ${large} ${arc.sweep > 0 ? 0 : 1} ${mmText(end.x)} ${mmText(-end.y)}"/>`;
    }
    case 'text': {
      const { at, angle, height, anchor } = mark;
      const [x, y] = [mmText(at.x), mmText(-at.y)];
      const turn =
        Math.abs(angle) < 1e-9
          ? ''
          : ` transform="rotate(${Number(((-angle * 180) / Math.PI).toFixed(3))} ${x} ${y})"`;
      // Capital letters of the usual sans-serif faces are 0.72 of the size high.
      const size = mmText(height / 0.72);
      return `<text x="${x}" y="${y}" font-size="${size}" text-anchor="${anchor}"${turn}>${escaped(mark.text)}</text>`;
    }
  }
}

/** What a mark covers; of words a fair guess. */
function reach(mark: Mark): Bounds {
  switch (mark.type) {
    case 'outline':
      return outlineBounds(mark.outline);
    case 'circle': {
      const { centre, radius } = mark;
      return {
        left: centre.x - radius,
        right: centre.x + radius,
        bottom: centre.y - radius,
        top: centre.y + radius,
      };
    }
    case 'line':
      return boundsOf([mark.from, mark.to]);
    case 'arc':
      return boundsOf(
        Array.from({ length: 25 }, (_, i) =>
          pointOfArc(mark.arc, mark.arc.start + (mark.arc.sweep * i) / 24),
        ),
      );
    case 'text': {
      const { at, angle, height, anchor, text } = mark;
      const length = 0.85 * height * text.length;
      const begin = anchor === 'start' ? 0 : anchor === 'end' ? -length : -length / 2;
      const ends = [begin, begin + length].flatMap((along) =>
        [-0.3 * height, height].map((up) => ({
          x: at.x + along * cos(angle) - up * sin(angle),
          y: at.y + along * sin(angle) + up * cos(angle),
        })),
      );
      return boundsOf(ends);
    }
  }
}

const MARGIN = 2e-3;

export function drawingBounds(marks: readonly Mark[]): Bounds {
  const all = marks.map(reach);
  return {
    left: Math.min(...all.map(({ left }) => left)) - MARGIN,
    right: Math.max(...all.map(({ right }) => right)) + MARGIN,
    bottom: Math.min(...all.map(({ bottom }) => bottom)) - MARGIN,
    top: Math.max(...all.map(({ top }) => top)) + MARGIN,
  };
}

/** Groups of lines, layer by layer, as a document or a page wraps them; `dress` gives a layer its attributes. */
function groups(marks: readonly Mark[], dress: (layer: Layer) => string): string {
  const order = Object.keys(looks) as Layer[];
  return order
    .map((layer) => {
      const own = marks.filter((mark) => mark.layer === layer);
      const lines = own.filter(({ type }) => type !== 'text').map(shapeText);
      const texts = own.filter(({ type }) => type === 'text').map(shapeText);
      if (own.length === 0) return '';
      return `<g ${dress(layer)}>${lines.join('')}${texts.length === 0 ? '' : `<g class="words" fill="currentColor" stroke="none">${texts.join('')}</g>`}</g>`;
    })
    .filter((group) => group !== '')
    .join('\n');
}

const box = ({ left, right, bottom, top }: Bounds): { width: string; height: string; viewBox: string } => {
  const [width, height] = [mmText(right - left), mmText(top - bottom)];
  return { width, height, viewBox: `${mmText(left)} ${mmText(-top)} ${width} ${height}` };
};

const idOf = (layer: Layer): string => layer.replaceAll(' ', '-');

/** Attributes of a layer that draw it in its own look. */
function lookOf(layer: Layer): string {
  const { colour, width, dashes } = looks[layer];
  const dashed = dashes === undefined ? '' : ` stroke-dasharray="${dashes}"`;
  return `fill="none" stroke="${colour}" color="${colour}" stroke-width="${width}"${dashed}`;
}

const FONT = 'font-family="DejaVu Sans, Arial, sans-serif"';

/** A document of its own, at full size, each layer a group that bears its name. */
export function svgDocument(marks: readonly Mark[], title: string): string {
  const { width, height, viewBox } = box(drawingBounds(marks));
  const body = groups(marks, (layer) => `id="${idOf(layer)}" ${lookOf(layer)}`);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${viewBox}" ${FONT}>\n<title>${escaped(title)}</title>\n${body}\n</svg>\n`;
}

/** The same inside a page, at a scale. */
export function svgPicture(marks: readonly Mark[], title: string, scale: number): string {
  const bounds = drawingBounds(marks);
  const [width, height] = [bounds.right - bounds.left, bounds.top - bounds.bottom].map((own) =>
    mmText(own * scale),
  );
  const { viewBox } = box(bounds);
  return `<svg class="picture" width="${String(width)}mm" height="${String(height)}mm" viewBox="${viewBox}" ${FONT} role="img" aria-label="${escaped(title)}">${groups(marks, lookOf)}</svg>`;
}

/** A small picture in a page that brings its own looks: one class for each layer, no colours. */
export function svgPreview(marks: readonly Mark[], title: string): string {
  const { viewBox } = box(drawingBounds(marks));
  const body = groups(marks, (layer) => `class="${idOf(layer)}"`);
  return `<svg class="drawn-part" viewBox="${viewBox}" role="img" aria-label="${escaped(title)}">${body}</svg>`;
}
