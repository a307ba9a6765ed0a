/** The files of a set of drawings: DXF and SVG of each part, sheets to print, the sheet to set the engine by. */
import type { EngineSpec } from '../parts/engine-description.ts';
import type { Complaint } from '../kinds/kind.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { PartDrawing } from './drawing/drawing.ts';
import { allMarks, cutPaths } from './drawing/kerf.ts';
import { dxfText } from './files/dxf.ts';
import { pageText, partSheets } from './files/page.ts';
import { svgDocument } from './files/svg.ts';
import { cautions, settingSheets } from './setting/setting-sheet.ts';
import { workshopOf } from './workshop.ts';

/** Which drawings, and for which cutter. */
export interface DrawingWish {
  /** Parts by their names; none names all. */
  readonly parts: readonly string[];
  /** Width of the cut as one writes it, "1.2 mm"; undefined for finished sizes. */
  readonly kerf: string | undefined;
}

/** A file to be written, by its name. */
export interface DrawingFile {
  readonly name: string;
  readonly text: string;
}

/** The files, or why there are none. */
export type Drawings =
  | {
      readonly ok: true;
      readonly files: readonly DrawingFile[];
      /** What the user should know besides. */
      readonly remarks: readonly string[];
    }
  /** Something about the engine, with its place in the scenario. */
  | { readonly ok: false; readonly complaints: readonly Complaint[] }
  /** Something about the wish. */
  | { readonly ok: false; readonly refusals: readonly string[] };

const WIDEST_KERF = 10e-3;

/** [m], or why not. */
function kerfOf(text: string | undefined): number | string {
  if (text === undefined) return 0;
  const reading = parseQuantity(text, 'length', '1.2 mm');
  if (!reading.ok)
    return `--kerf: expected a length such as "1.2 mm", received "${text}" (${reading.reason}).`;
  if (reading.value < 0 || reading.value > WIDEST_KERF)
    return `--kerf: expected a length from 0 mm to 10 mm, received "${text}".`;
  return reading.value;
}

function unknownParts(wanted: readonly string[], parts: readonly PartDrawing[]): string[] {
  const names = parts.map(({ id }) => id);
  const known =
    names.length === 0
      ? 'this valve gear has no drawings, only a setting sheet'
      : `there are ${names.join(', ')}`;
  return wanted
    .filter((name) => !names.includes(name))
    .map((name) => `--part: no part is called "${name}"; ${known}.`);
}

const kerfRemark = (kerf: number): string =>
  `DXF and SVG files hold the path of the cutter for a kerf of ${Number((kerf * 1e3).toFixed(3))} mm: half of it outside the edges and inside the openings. Lead-ins are left to the cutter's software; set its own compensation to none. The sheets show finished sizes.`;

/** One part's files for the machine. */
function partFiles(part: PartDrawing, kerf: number): { files: DrawingFile[]; refusals: readonly string[] } {
  const { marks: cuts, refusals } = cutPaths(part, kerf);
  const marks = allMarks(part, cuts);
  return {
    files: [
      { name: `${part.id}.dxf`, text: dxfText(marks) },
      { name: `${part.id}.svg`, text: svgDocument(marks, part.name) },
    ],
    refusals,
  };
}

/** Draws the valve gear of an engine: files for the cutter and the bench, and the sheet to set it by. */
export function drawingFiles(spec: EngineSpec, wish: DrawingWish): Drawings {
  const kerf = kerfOf(wish.kerf);
  if (typeof kerf === 'string') return { ok: false, refusals: [kerf] };
  const { parts, setting, complaints } = workshopOf(spec);
  if (complaints.length > 0) return { ok: false, complaints };
  const unknown = unknownParts(wish.parts, parts);
  if (unknown.length > 0) return { ok: false, refusals: unknown };
  const wanted = parts.filter(({ id }) => wish.parts.length === 0 || wish.parts.includes(id));
  const made = wanted.map((part) => partFiles(part, kerf));
  const refusals = made.flatMap((own) => own.refusals);
  if (refusals.length > 0) return { ok: false, refusals };
  const sheets = wanted.flatMap((part) => partSheets(part, allMarks(part, cutPaths(part, 0).marks)));
  return {
    ok: true,
    files: [
      ...(sheets.length === 0
        ? []
        : [{ name: 'sheets.html', text: pageText(spec.title, 'drawings', sheets) }]),
      { name: 'setting.html', text: pageText(spec.title, 'setting', settingSheets(setting)) },
      ...made.flatMap(({ files }) => files),
    ],
    remarks: [
      ...(parts.length === 0
        ? [
            `There are no drawings for the valve gear "${spec.valve_gear.kind}" yet; the setting sheet stands.`,
          ]
        : ['Print the sheets at 100 % and measure the 100 mm line before you trust a template.']),
      ...(kerf > 0 ? [kerfRemark(kerf)] : []),
      ...cautions.slice(0, 1),
    ],
  };
}
