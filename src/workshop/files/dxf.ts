/**
 * A drawing as DXF (AC1021, millimetres): closed polylines whose arcs are bulges, round holes as circles, one layer for
 * each operation. The bytes depend on the drawing only. The package that writes the format lives in this file.
 */
import {
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  TextVerticalAlignment,
  Units,
} from '@tarikjabiri/dxf';
import { hypot } from '../../numerics/elementary/roots.ts';
import { layers, type Layer, type Mark } from '../drawing/drawing.ts';
import type { Outline } from '../geometry/outline.ts';

/** Colour numbers that every reader knows, and a line type. */
const dress: Readonly<Record<Layer, readonly [colour: number, lineType: string]>> = {
  'cut outside': [1, 'Continuous'],
  'cut inside': [5, 'Continuous'],
  drill: [3, 'Continuous'],
  outline: [7, 'Continuous'],
  hidden: [8, 'HIDDEN'],
  engrave: [30, 'Continuous'],
  centre: [8, 'CENTRE'],
  dimension: [9, 'Continuous'],
  reference: [6, 'HIDDEN'],
};

/** "cut outside" as a layer name that every reader takes. */
export const layerName = (layer: Layer): string => layer.toUpperCase().replaceAll(' ', '-');

/** Millimetres to a nanometre, without a trace of the rounding of sums. */
const mm = (length: number): number => Number((length * 1e3).toFixed(6)) + 0;
const degrees = (angle: number): number => Number(((angle * 180) / Math.PI).toFixed(9)) + 0;

/** A circle drawn as an outline of two half turns is written as what it is. */
function roundHole(outline: Outline): { x: number; y: number; radius: number } | undefined {
  const [a, b, ...more] = outline;
  if (a === undefined || b === undefined || more.length > 0 || a.bulge !== 1 || b.bulge !== 1)
    return undefined;
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, radius: hypot(a.x - b.x, a.y - b.y) / 2 };
}

function addOutline(dxf: DxfWriter, layer: string, outline: Outline): void {
  const round = roundHole(outline);
  if (round !== undefined) {
    dxf.addCircle(point3d(mm(round.x), mm(round.y)), mm(round.radius), { layerName: layer });
    return;
  }
  dxf.addLWPolyline(
    outline.map(({ x, y, bulge }) => ({
      point: point2d(mm(x), mm(y)),
      bulge: Number(bulge.toFixed(12)) + 0,
    })),
    { flags: LWPolylineFlags.Closed, layerName: layer },
  );
}

const alignments = {
  start: TextHorizontalAlignment.Left,
  middle: TextHorizontalAlignment.Center,
  end: TextHorizontalAlignment.Right,
} as const;

function addMark(dxf: DxfWriter, mark: Mark): void {
  const options = { layerName: layerName(mark.layer) };
  switch (mark.type) {
    case 'outline':
      addOutline(dxf, options.layerName, mark.outline);
      return;
    case 'circle':
      dxf.addCircle(point3d(mm(mark.centre.x), mm(mark.centre.y)), mm(mark.radius), options);
      return;
    case 'line':
      dxf.addLine(point3d(mm(mark.from.x), mm(mark.from.y)), point3d(mm(mark.to.x), mm(mark.to.y)), options);
      return;
    case 'arc': {
      const { x, y, radius, start, sweep } = mark.arc;
      const [from, to] = sweep > 0 ? [start, start + sweep] : [start + sweep, start];
      dxf.addArc(point3d(mm(x), mm(y)), mm(radius), degrees(from), degrees(to), options);
      return;
    }
    case 'text': {
      const at = point3d(mm(mark.at.x), mm(mark.at.y));
      dxf.addText(at, mm(mark.height), mark.text, {
        ...options,
        rotation: degrees(mark.angle),
        secondAlignmentPoint: at,
        horizontalAlignment: alignments[mark.anchor],
        verticalAlignment: TextVerticalAlignment.BaseLine,
      });
    }
  }
}

export function dxfText(marks: readonly Mark[]): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.tables.addLType('HIDDEN', '_ _ _', [2, -1]);
  dxf.tables.addLType('CENTRE', '__ . __', [6, -1, 1, -1]);
  for (const layer of layers) {
    const [colour, lineType] = dress[layer];
    dxf.addLayer(layerName(layer), colour, lineType);
  }
  for (const mark of marks) addMark(dxf, mark);
  return dxf.stringify();
}
