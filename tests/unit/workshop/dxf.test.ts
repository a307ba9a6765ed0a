/** Files for the machine, through an independent reader: units, layers, closedness, arcs, sizes; the same bytes. */
import { describe, expect, it } from 'vitest';
import { layers } from '../../../src/workshop/drawing/drawing.ts';
import { dxfText, layerName } from '../../../src/workshop/files/dxf.ts';
import { outlineArea, outlineBounds, segmentsOf } from '../../../src/workshop/geometry/outline.ts';
import { arcSlot, circle, roundedRectangle } from '../../../src/workshop/geometry/shapes.ts';
import { drawn, fileOf, shippedSpec } from '../../support/drawn.ts';
import { readDxf, shapesOn } from '../../support/read-dxf.ts';

const press = shippedSpec('cider-press.yaml');
const disc = shippedSpec('cider-press-disc.yaml');

describe('a drawing as DXF', () => {
  const outlines = [roundedRectangle(40e-3, 30e-3, 3e-3), arcSlot(10e-3, 4e-3, 0.2, 1.4), circle(2.5e-3)];
  const text = dxfText(outlines.map((outline) => ({ type: 'outline', layer: 'cut inside', outline })));

  it('is in millimetres, with a layer for each operation', () => {
    const read = readDxf(text);
    expect(read.units).toBe(4);
    expect(read.layers).toEqual(expect.arrayContaining(layers.map(layerName)));
  });

  it('gives every shape back, arcs as arcs', () => {
    const back = shapesOn(text, 'CUT-INSIDE');
    expect(back).toHaveLength(3);
    for (const [i, outline] of outlines.entries()) {
      expect(outlineArea(back[i]!)).toBeCloseTo(outlineArea(outline), 10);
      expect(segmentsOf(back[i]!).filter(({ arc }) => arc)).toHaveLength(
        segmentsOf(outline).filter(({ arc }) => arc).length,
      );
    }
  });

  it('writes a round hole as a circle', () => {
    expect(readDxf(text).entities.map(({ type }) => type)).toEqual(['LWPOLYLINE', 'LWPOLYLINE', 'CIRCLE']);
  });
});

describe.each([
  ['spools', press],
  ['disc', disc],
])('the files of the %s', (_name, spec) => {
  const files = drawn(spec);
  const names = [...files.keys()].filter((name) => name.endsWith('.dxf'));

  it('have the same bytes each time', () => {
    expect([...drawn(spec)]).toEqual([...files]);
  });

  it.each(names)('%s: what a tool follows is closed, and nothing else lies on its layers', (name) => {
    const text = fileOf(files, name);
    const edges = shapesOn(text, 'CUT-OUTSIDE');
    const inside = [...shapesOn(text, 'CUT-INSIDE'), ...shapesOn(text, 'DRILL')];
    expect(edges.length).toBeLessThanOrEqual(1);
    for (const [edge] of [edges]) {
      if (edge === undefined) continue;
      const outer = outlineBounds(edge);
      expect(outlineArea(edge)).toBeGreaterThan(0);
      for (const opening of inside) {
        const own = outlineBounds(opening);
        expect(outlineArea(opening)).toBeGreaterThan(0);
        expect(own.left > outer.left && own.right < outer.right).toBe(true);
        expect(own.bottom > outer.bottom && own.top < outer.top).toBe(true);
      }
    }
    expect(text).not.toMatch(/NaN|Infinity|undefined/u);
  });
});

it('a disc has the sizes of its scenario', () => {
  const files = drawn(disc);
  const [edge] = shapesOn(fileOf(files, 'disc.dxf'), 'CUT-OUTSIDE');
  const { left, right, bottom, top } = outlineBounds(edge ?? []);
  expect([left, right, bottom, top].map((own) => Number((own * 1e3).toFixed(6)))).toEqual([-50, 50, -50, 50]);
});

describe('a kerf of 1.2 mm', () => {
  const plain = drawn(disc);
  const cut = drawn(disc, '1.2mm');

  it('moves the edge out and the openings in by 0.6 mm', () => {
    const radius = (text: string): number => outlineBounds(shapesOn(text, 'CUT-OUTSIDE')[0] ?? []).right;
    expect(radius(fileOf(cut, 'disc.dxf')) - radius(fileOf(plain, 'disc.dxf'))).toBeCloseTo(0.6e-3, 9);
    const slots = (text: string): number[] => shapesOn(text, 'CUT-INSIDE').map(outlineArea);
    const [before, after] = [slots(fileOf(plain, 'disc.dxf')), slots(fileOf(cut, 'disc.dxf'))];
    expect(after).toHaveLength(before.length);
    for (const [i, area] of after.entries()) expect(area).toBeLessThan(before[i]!);
  });

  it('leaves drilled holes and the sheets at their finished size', () => {
    expect(fileOf(cut, 'sheets.html')).toBe(fileOf(plain, 'sheets.html'));
    expect(shapesOn(fileOf(cut, 'front-plate.dxf'), 'DRILL')).toEqual(
      shapesOn(fileOf(plain, 'front-plate.dxf'), 'DRILL'),
    );
  });
});

it('leaves a hole smaller than the plate is thick to the drill, and says so', () => {
  // Plates of 8 mm: bolt holes of 5.5 mm are too small to be cut, the ports of 8 and 9 mm are not.
  const files = drawn(disc);
  const cut = shapesOn(fileOf(files, 'front-plate.dxf'), 'CUT-INSIDE').map((own) => outlineBounds(own));
  const diameters = cut.map(({ left, right }) => Math.round((right - left) * 1e4) / 10);
  expect(diameters).toEqual([8, 9]);
  expect(fileOf(files, 'sheets.html')).toContain('left to the drill: M5 bolt');
});
