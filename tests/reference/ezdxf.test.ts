/** Every drawing of two engines through ezdxf, a DXF library of another make: no faults, closed, areas and sizes alike. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { outlineArea, outlineBounds } from '../../src/workshop/geometry/outline.ts';
import { drawn, fileOf, shippedSpec } from '../support/drawn.ts';
import { shapesOn } from '../support/read-dxf.ts';

interface Found {
  readonly faults: number;
  readonly units: number;
  readonly closed: boolean;
  readonly areas: Readonly<Record<string, number>>;
  readonly size: readonly [number, number] | null;
}

const script = fileURLToPath(new URL('read_drawings.py', import.meta.url));

describe.each([
  ['cider-press.yaml', undefined],
  ['cider-press-disc.yaml', '0.3 mm'],
])('%s with a kerf of %s', (scenario, kerf) => {
  const files = drawn(shippedSpec(scenario), kerf);
  const names = [...files.keys()].filter((name) => name.endsWith('.dxf'));
  const folder = mkdtempSync(join(tmpdir(), 'tickover-dxf-'));
  for (const name of names) writeFileSync(join(folder, name), fileOf(files, name));
  const said = spawnSync('/usr/bin/python3', [script, ...names], { cwd: folder, encoding: 'utf8' });
  const found = JSON.parse(said.stdout || '{}') as Readonly<Record<string, Found>>;

  it('is read at all', () => {
    expect(said.stderr).toBe('');
    expect(Object.keys(found)).toEqual(names);
  });

  it.each(names)('%s', (name) => {
    const own = found[name]!;
    expect(own.faults).toBe(0);
    expect(own.units).toBe(4);
    expect(own.closed).toBe(true);
    const text = fileOf(files, name);
    for (const layer of ['CUT-OUTSIDE', 'CUT-INSIDE', 'DRILL']) {
      const area = shapesOn(text, layer).reduce((sum, outline) => sum + outlineArea(outline), 0);
      // Files hold millimetres to a nanometre.
      expect(Math.abs((own.areas[layer] ?? NaN) - area * 1e6), layer).toBeLessThan(1e-4);
    }
    const [edge] = shapesOn(text, 'CUT-OUTSIDE');
    if (edge === undefined) return;
    // That library takes chords for arcs when it measures a box.
    const { left, right, bottom, top } = outlineBounds(edge);
    expect(Math.abs((own.size?.[0] ?? NaN) - (right - left) * 1e3)).toBeLessThan(0.01);
    expect(Math.abs((own.size?.[1] ?? NaN) - (top - bottom) * 1e3)).toBeLessThan(0.01);
  });
});
