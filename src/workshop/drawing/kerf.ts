/**
 * What a cutter has to follow: the shapes of a plate, moved aside by half its kerf, outwards round the edge and inwards
 * in every opening; and which holes it should rather leave to the drill.
 *
 * A hole narrower than the plate is thick comes out tapered and hard at its edge from a flame, plasma or laser jet
 * (common practice, no source), so it is only marked. The same goes for holes that need a fit or a thread.
 */
import { parallelOutline } from '../geometry/offset.ts';
import type { Outline } from '../geometry/outline.ts';
import { circle } from '../geometry/shapes.ts';
import type { Hole, Mark, PartDrawing } from './drawing.ts';

export interface CutPaths {
  readonly marks: readonly Mark[];
  /** What cannot be cut with this kerf, in words; the paths are then not to be used. */
  readonly refusals: readonly string[];
}

/** Too small to be cut through this plate. */
export const isTooSmallToCut = ({ finish, diameter }: Hole, thickness: number): boolean =>
  finish === 'cut' && diameter < thickness;

export const isLeftToTheDrill = (hole: Hole, thickness: number | undefined): boolean =>
  hole.finish !== 'cut' || thickness === undefined || isTooSmallToCut(hole, thickness);

export function cutPaths(part: PartDrawing, kerf: number): CutPaths {
  const { thickness, edge, openings, holes } = part;
  const refusals: string[] = [];
  const half = kerf / 2;
  const cut = (layer: Mark['layer'], outline: Outline, aside: number, what: string): Mark[] => {
    const path = parallelOutline(outline, aside);
    if (path !== undefined) return [{ type: 'outline', layer, outline: path }];
    refusals.push(`${part.id}: a kerf of ${Number((kerf * 1e3).toFixed(3))} mm does not fit ${what}`);
    return [];
  };
  if (thickness === undefined)
    return { marks: edge ? [{ type: 'outline', layer: 'outline', outline: edge }] : [], refusals };
  const marks = [
    ...(edge ? cut('cut outside', edge, half, 'its outer edge') : []),
    ...openings.flatMap((opening) => cut('cut inside', opening, -half, 'one of its openings')),
    ...holes
      .filter((hole) => !isLeftToTheDrill(hole, thickness))
      .flatMap((hole) =>
        cut('cut inside', circle(hole.diameter / 2, hole.centre), -half, `the hole "${hole.purpose}"`),
      ),
  ];
  return { marks, refusals };
}

/** Every line of a part, its cutting paths first. */
export function allMarks(part: PartDrawing, cuts: readonly Mark[]): readonly Mark[] {
  const drilled = part.holes
    .filter((hole) => isLeftToTheDrill(hole, part.thickness))
    .map(({ centre, diameter }): Mark => ({ type: 'circle', layer: 'drill', centre, radius: diameter / 2 }));
  return [...cuts, ...drilled, ...part.marks];
}
