/**
 * Sheets to print: one HTML page of its own without script, whose pictures stand at full size. Each part begins a new
 * sheet that fits the printable area of A4 and of Letter, 190 × 255 mm inside margins of 10 mm, so that the paper is
 * left to the printer; a line of 100 mm says whether the printer has left the size alone.
 */
import type { DrawingTable, Layer, Mark, PartDrawing } from '../drawing/drawing.ts';
import { isLeftToTheDrill, isTooSmallToCut } from '../drawing/kerf.ts';
import { mm } from '../drawing/words.ts';
import { drawingBounds, escaped, svgPicture } from './svg.ts';

const PAGE_WIDTH = 190e-3;
const PICTURE_HEIGHT = 200e-3;

/** A sheet of the set. */
export interface Sheet {
  readonly id: string;
  readonly heading: string;
  readonly body: string;
}

const style = `
@page { margin: 10mm }
* { box-sizing: border-box }
body { margin: 0 auto; width: 190mm; font: 9.5pt/1.35 "DejaVu Sans", Arial, sans-serif; color: #000; background: #fff }
section { break-before: page; padding-top: 1mm }
section:first-of-type { break-before: auto }
header { display: flex; justify-content: space-between; align-items: baseline; border-bottom: 0.4mm solid; margin-bottom: 2mm }
h1 { font-size: 15pt; margin: 0 } h2 { font-size: 11pt; margin: 3mm 0 1mm }
p { margin: 1mm 0 } ul, ol { margin: 1mm 0; padding-left: 5mm }
.picture { display: block; margin: 1mm auto; break-inside: avoid; max-width: none }
.scale { display: block; margin: 1mm 0 }
table { border-collapse: collapse; margin: 1mm 0 3mm; break-inside: avoid }
td, th { border: 0.2mm solid #888; padding: 0.5mm 2mm; text-align: left; vertical-align: top; font-weight: normal }
th { background: #eee } td.number { text-align: right; font-variant-numeric: tabular-nums }
.keep { break-inside: avoid } .columns table { display: inline-table; vertical-align: top; margin-right: 3mm } .columns { font-size: 8.5pt } .columns td, .columns th { padding: 0 1.5mm }
.caution { border: 0.5mm solid; padding: 1.5mm 3mm; margin: 2mm 0; break-inside: avoid }
figure { margin: 2mm 0; break-inside: avoid } figcaption { font-weight: bold }
@media screen { body { padding: 6mm 0 } section { border-top: 0.3mm dashed #888; margin-top: 8mm } }
`;

/** A line of exactly 100 mm, in tens. */
function checkScale(): string {
  const ticks = Array.from({ length: 11 }, (_, i) => `M${1 + 10 * i} ${i % 5 === 0 ? 1 : 2.5}V5`).join('');
  return (
    `<svg class="scale" width="190mm" height="6mm" viewBox="0 0 190 6"><path d="M1 5H101${ticks}" fill="none" stroke="#000" stroke-width="0.25"/>` +
    `<text x="104" y="4.8" font-size="3">100 mm. Measure it: print at 100 %, never “fit to page”.</text></svg>`
  );
}

const row = (label: string, value: string): string =>
  `<tr><th>${escaped(label)}</th><td>${escaped(value)}</td></tr>`;

const factTable = (facts: PartDrawing['facts']): string =>
  `<table>${facts.map(([label, value]) => row(label, value)).join('')}</table>`;

export const list = (items: readonly string[], tag: 'ul' | 'ol' = 'ul'): string =>
  items.length === 0 ? '' : `<${tag}>${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</${tag}>`;

export function numberTable({ head, rows }: Pick<DrawingTable, 'head' | 'rows'>): string {
  const heads = head.map((name) => `<th>${escaped(name)}</th>`).join('');
  const lines = rows
    .map(
      (cells) =>
        `<tr>${cells.map((cell) => `<td${/^[\d−+Ø-]/u.test(cell) ? ' class="number"' : ''}>${escaped(cell)}</td>`).join('')}</tr>`,
    )
    .join('');
  return `<table><thead><tr>${heads}</tr></thead><tbody>${lines}</tbody></table>`;
}

function longTable(table: DrawingTable): string {
  const perColumn = Math.ceil(table.rows.length / 3);
  const pieces = [0, 1, 2].map((i) => table.rows.slice(i * perColumn, (i + 1) * perColumn));
  const shown = pieces
    .filter((rows) => rows.length > 0)
    .map((rows) => numberTable({ head: table.head, rows }));
  return `<div class="keep"><h2>${escaped(table.caption)}</h2><div class="columns">${shown.join('')}</div></div>`;
}

function holeTable({ holes, thickness }: PartDrawing): string {
  if (holes.length === 0) return '';
  const rows = holes.map((hole, i) => [
    String(i + 1),
    mm(hole.centre.x),
    mm(hole.centre.y),
    `Ø${mm(hole.diameter)}`,
    hole.finish === 'cut' && isLeftToTheDrill(hole, thickness) ? 'drill' : hole.finish,
    hole.purpose,
  ]);
  const small =
    thickness === undefined
      ? []
      : holes.filter((hole) => isTooSmallToCut(hole, thickness)).map(({ purpose }) => purpose);
  const warning =
    small.length === 0
      ? ''
      : `<p>Smaller than the plate is thick, and so left to the drill: ${escaped([...new Set(small)].join('; '))}.</p>`;
  return `<div class="keep"><h2>Holes, from the crossing of the centre lines</h2>${numberTable({ head: ['no.', 'x [mm]', 'y [mm]', 'size', 'how', 'what for'], rows })}${warning}</div>`;
}

/** The largest of the usual scales at which a picture fits the sheet. */
function scaleFor(marks: readonly Mark[]): number {
  const { left, right, bottom, top } = drawingBounds(marks);
  const fits = Math.min(1, PAGE_WIDTH / (right - left), PICTURE_HEIGHT / (top - bottom));
  return [1, 0.5, 0.2, 0.1].find((scale) => scale <= fits + 1e-9) ?? 0.05;
}

/** Words stay readable in a picture that is smaller than the part. */
const readable = (marks: readonly Mark[], scale: number): Mark[] =>
  marks.map((mark) =>
    mark.type === 'text' ? { ...mark, height: mark.height / Math.max(0.6, scale) } : mark,
  );

const picture = (marks: readonly Mark[], title: string, scale: number): string =>
  svgPicture(scale === 1 ? marks : readable(marks, scale), title, scale);

/** What is left of a drawing to be glued on the metal. */
const templateLayers: readonly Layer[] = ['cut outside', 'cut inside', 'drill', 'engrave', 'centre'];

/** A part whose dimensions make it too large for the paper may fit without them. */
function template(part: PartDrawing, marks: readonly Mark[]): Sheet[] {
  const bare = marks.filter(({ layer }) => templateLayers.includes(layer));
  if (part.thickness === undefined || scaleFor(marks) === 1 || bare.length === 0 || scaleFor(bare) < 1)
    return [];
  return [
    {
      id: `${part.id}-template`,
      heading: `${part.name}, template`,
      body: `<p>Full size, 1 : 1, without dimensions, to be glued on and punched through.</p>${picture(bare, part.name, 1)}${checkScale()}`,
    },
  ];
}

/** The sheet of a part, and a template of its own if only that fits the paper at full size. */
export function partSheets(part: PartDrawing, marks: readonly Mark[]): Sheet[] {
  const scale = scaleFor(marks);
  const scaleWords =
    scale === 1
      ? 'Full size, 1 : 1.'
      : `Shown at 1 : ${Math.round(1 / scale)} because it is larger than the paper with its dimensions; DXF and SVG are full size.`;
  const sheet: Sheet = {
    id: part.id,
    heading: part.name,
    body: [
      `<p>${escaped(`${part.quantity} off · ${part.stock} · dimensions in mm · ISO 2768-m where nothing is said`)} · ${scaleWords}</p>`,
      picture(marks, part.name, scale),
      checkScale(),
      list(part.notes),
      factTable(part.facts),
      holeTable(part),
      ...(part.charts ?? []).map(
        ({ title, svg }) => `<figure><figcaption>${escaped(title)}</figcaption>${svg}</figure>`,
      ),
      part.table === undefined ? '' : longTable(part.table),
    ].join('\n'),
  };
  return [sheet, ...template(part, marks)];
}

export function pageText(engine: string, title: string, sheets: readonly Sheet[]): string {
  const sections = sheets.map(
    ({ id, heading, body }) =>
      `<section id="${escaped(id)}"><header><h1>${escaped(heading)}</h1><span><bdi>${escaped(engine)}</bdi></span></header>\n${body}\n</section>`,
  );
  return [
    '<!doctype html>',
    '<html lang="en-GB"><head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(`${engine}: ${title}`)}</title><style>${style}</style></head><body>`,
    ...sections,
    '</body></html>',
    '',
  ].join('\n');
}
