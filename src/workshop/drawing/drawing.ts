/**
 * A part as the workshop needs it: the shapes to cut, the lines around them that say how, and a sheet of words and sizes.
 * Lengths in metres; x to the right, y up.
 */
import type { Outline, Point, SegmentArc } from '../geometry/outline.ts';

/** What a line is for, one layer each in every file. Only the first three are to be followed by a tool. */
export const layers = [
  'cut outside',
  'cut inside',
  'drill',
  'outline',
  'hidden',
  'engrave',
  'centre',
  'dimension',
  'reference',
] as const;

export type Layer = (typeof layers)[number];

export type Anchor = 'start' | 'middle' | 'end';

export type Mark =
  | { readonly type: 'outline'; readonly layer: Layer; readonly outline: Outline }
  | { readonly type: 'circle'; readonly layer: Layer; readonly centre: Point; readonly radius: number }
  | { readonly type: 'arc'; readonly layer: Layer; readonly arc: SegmentArc }
  | { readonly type: 'line'; readonly layer: Layer; readonly from: Point; readonly to: Point }
  | {
      readonly type: 'text';
      readonly layer: Layer;
      readonly at: Point;
      readonly text: string;
      readonly height: number;
      readonly anchor: Anchor;
      /** Anticlockwise from level [rad]. */
      readonly angle: number;
    };

/** How a round hole gets its size. Only a cut one is left to the cutter. */
export type HoleFinish = 'cut' | 'drill' | 'ream' | 'tap';

export interface Hole {
  readonly centre: Point;
  readonly diameter: number;
  readonly finish: HoleFinish;
  /** As the hole table says it: "M4, clamp screw". */
  readonly purpose: string;
}

export interface DrawingTable {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface PartDrawing {
  /** Name of its files, and what `--part` asks for. */
  readonly id: string;
  readonly name: string;
  readonly quantity: number;
  /** Plate or stock, in words. */
  readonly stock: string;
  /** Thickness of the plate it is cut from [m]; a turned or milled part has none and is not for the cutter. */
  readonly thickness?: number;
  /** Outer edge of a plate. */
  readonly edge?: Outline;
  /** Openings that are not round. */
  readonly openings: readonly Outline[];
  readonly holes: readonly Hole[];
  readonly marks: readonly Mark[];
  /** From which side it is seen, and anything else to read before cutting. */
  readonly notes: readonly string[];
  /** Sizes and results, as label and value. */
  readonly facts: readonly (readonly [label: string, value: string])[];
  /** Numbers to set a dividing head or a dial by. */
  readonly table?: DrawingTable;
  /** Further pictures of the part's behaviour, drawn by hand: standalone SVG. */
  readonly charts?: readonly { readonly title: string; readonly svg: string }[];
}
