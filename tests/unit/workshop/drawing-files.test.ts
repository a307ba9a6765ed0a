/** What is said instead of drawings: geometry that cannot be made, and wishes that cannot be met. */
import { describe, expect, it } from 'vitest';
import { drawingFiles, workshopPreview, type EngineSpec } from '../../../src/index.ts';
import { RPM } from '../../support/reference-engine.ts';
import { drawn, fileOf, shippedSpec, withGear } from '../../support/drawn.ts';

const press = shippedSpec('cider-press.yaml');
const disc = shippedSpec('cider-press-disc.yaml');
const DEGREE = Math.PI / 180;

function complaintsOf(spec: EngineSpec): string[] {
  const drawings = drawingFiles(spec, { parts: [], kerf: undefined });
  if (drawings.ok || !('complaints' in drawings)) throw new Error('nothing to complain of');
  return drawings.complaints.map(({ path, expected }) => `${path.join('.')}: ${expected}`);
}

function refusalsOf(kerf: string | undefined, ...parts: readonly string[]): readonly string[] {
  const drawings = drawingFiles(press, { parts, kerf });
  if (drawings.ok || !('refusals' in drawings)) throw new Error('nothing refused');
  return drawings.refusals;
}

describe('geometry that cannot be made', () => {
  it.each<[string, EngineSpec, RegExp]>([
    [
      'a sharp nose',
      withGear(press, { cams: { base_circle: 20e-3, smallest_radius: 9e-3 } }),
      /^valve_gear\.cams\.base_circle: at least/u,
    ],
    [
      'slots that meet',
      withGear(press, { cams: { adjustment: 85 * DEGREE, clamp_screws: 4 } }),
      /^valve_gear\.cams\.adjustment: at most [\d.]+°/u,
    ],
    [
      'a clamp circle on the shaft',
      withGear(press, { cams: { clamp_circle: 16e-3 } }),
      /^valve_gear\.cams\.clamp_circle: at least 23\.6 mm/u,
    ],
    [
      'a key as wide as the shaft',
      withGear(press, { cams: { key_width: 10e-3 } }),
      /^valve_gear\.cams\.key_width: less than/u,
    ],
    [
      'a speed no spring holds',
      withGear(press, { springs: { top_speed: 9000 * RPM } }),
      /^valve_gear\.springs\.top_speed: a speed that a spring/u,
    ],
    [
      'coils wider than the collar',
      withGear(press, { springs: { coil_diameter: 30e-3, wire_diameter: 2e-3, active_coils: 5 } }),
      /^valve_gear\.springs\.coil_diameter: between/u,
    ],
    [
      'plates within the disc',
      withGear(disc, { plates: { plate_diameter: 0.1 } }),
      /^valve_gear\.plates\.plate_diameter: at least 126 mm/u,
    ],
    [
      'a crowd of bolts',
      withGear(disc, { plates: { bolts: 12, bolt_diameter: 16e-3, dowel_diameter: 16e-3 } }),
      /^valve_gear\.plates\.bolts: at most \d+/u,
    ],
    [
      'a block without walls',
      withGear(press, { blocks: { width: 14e-3 } }),
      /^valve_gear\.blocks\.width: at least 18 mm/u,
    ],
    [
      'a keyway into the slots',
      withGear(disc, { plates: { key_depth: 13e-3 } }),
      /^valve_gear\.plates\.key_depth: at most/u,
    ],
  ])('%s', (_what, spec, text) => {
    expect(complaintsOf(spec)[0]).toMatch(text);
  });

  it('does not keep the report from saying why', () => {
    const { parts, obstacles } = workshopPreview(withGear(press, { cams: { base_circle: 20e-3 } }));
    expect(parts).toEqual([]);
    expect(obstacles[0]).toMatch(/^valve_gear\.cams\.base_circle: expected at least/u);
  });
});

describe('wishes that cannot be met', () => {
  it.each<[string, readonly string[], string]>([
    [
      'a kerf without a unit',
      refusalsOf('1.2'),
      '--kerf: expected a length such as "1.2 mm", received "1.2" (no unit).',
    ],
    [
      'a kerf of a spade',
      refusalsOf('40 mm'),
      '--kerf: expected a length from 0 mm to 10 mm, received "40 mm".',
    ],
    [
      'a part there is not',
      refusalsOf(undefined, 'gudgeon'),
      '--part: no part is called "gudgeon"; there are admission-cam,',
    ],
    [
      'a kerf wider than the slots',
      refusalsOf('6 mm'),
      'admission-cam: a kerf of 6 mm does not fit one of its openings',
    ],
  ])('%s', (_what, refusals, text) => {
    expect(refusals[0]).toContain(text);
  });
});

it('a part is drawn for each cylinder and each end', () => {
  const twin = { ...press, cylinder: { ...press.cylinder, cylinders: 2 } };
  expect(fileOf(drawn(twin), 'sheets.html')).toContain('2 off');
  const double = {
    ...press,
    cylinder: { ...press.cylinder, action: 'double' as const, piston_rod_diameter: 10e-3 },
  };
  const files = drawn(double);
  expect(files.has('crank-end-admission-cam.dxf')).toBe(true);
  expect(fileOf(files, 'crank-end-admission-cam.svg')).toContain('BDC');
  expect(fileOf(files, 'setting.html')).toContain('Events of the crank end');
});

it('a title cannot break out of the page', () => {
  const files = drawn({ ...press, title: '<script>alert(1)</script> & "co"' });
  for (const name of ['sheets.html', 'setting.html']) {
    expect(fileOf(files, name)).not.toContain('<script');
    expect(fileOf(files, name)).toContain('&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;co&quot;');
  }
});
