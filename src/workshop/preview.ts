/** Small pictures of the parts for a page that has room for a glance only. */
import type { EngineSpec } from '../parts/engine-description.ts';
import type { Mark, PartDrawing } from './drawing/drawing.ts';
import { allMarks, cutPaths } from './drawing/kerf.ts';
import { svgPreview } from './files/svg.ts';
import { workshopOf } from './workshop.ts';

/** A small picture of a part. */
export interface PartPreview {
  readonly id: string;
  readonly name: string;
  /** Safe markup, one class for each layer and no looks of its own. */
  readonly svg: string;
}

/** What the report shows of the parts to make. */
export interface WorkshopPreview {
  readonly parts: readonly PartPreview[];
  /** Why there are none, if that is so, each a sentence. */
  readonly obstacles: readonly string[];
}

/** Dimensions, words and arrows are left to the sheets. */
const isShape = ({ layer, type }: Mark): boolean =>
  layer !== 'dimension' &&
  layer !== 'centre' &&
  type !== 'text' &&
  !(layer === 'reference' && (type === 'arc' || type === 'line'));

function preview(part: PartDrawing): PartPreview {
  const marks = allMarks(part, cutPaths(part, 0).marks).filter(isShape);
  return { id: part.id, name: part.name, svg: svgPreview(marks, part.name) };
}

/** Pictures of the parts of an engine's valve gear, or what stands in their way. */
export function workshopPreview(spec: EngineSpec): WorkshopPreview {
  const { parts, complaints } = workshopOf(spec);
  return {
    parts: complaints.length > 0 ? [] : parts.map(preview),
    obstacles: complaints.map(
      ({ path, expected, received }) => `${path.join('.')}: expected ${expected}, received ${received}.`,
    ),
  };
}
