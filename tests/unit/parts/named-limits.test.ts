/** A complaint that names a limit names the true one: just within it the part can be made, just beyond it cannot. */
import { describe, expect, it } from 'vitest';
import type { Complaint } from '../../../src/kinds/kind.ts';
import { flywheels } from '../../../src/parts/flywheels/registry.ts';
import { loads } from '../../../src/parts/loads/registry.ts';
import { valveGears } from '../../../src/parts/valve-gears/registry.ts';
import { chosen } from '../../support/chosen.ts';
import { DEGREE, RPM } from '../../support/reference-engine.ts';
import { context } from './valve-gears/bench.ts';

const mm = 1e-3;
const at = (degrees: number) => ({ by: 'angle', angle: degrees * DEGREE });

const spool = (hole: number) => ({
  spool_diameter: 12 * mm,
  waist_diameter: 6 * mm,
  waist_length: 7 * mm,
  hole_diameter: hole,
  clearance: { by: 'gap', gap: 6e-6 },
  lap: 1 * mm,
  end_land: 10 * mm,
  lift: 7.2 * mm,
  lash: 0.2 * mm,
  flank: 55 * DEGREE,
});

/** Complaints about cam-driven spools whose admission differs from good ones. */
const ofSpools = (admission: object): readonly Complaint[] =>
  chosen(valveGears, 'cam-driven spools', {
    drive_torque: 0.06,
    admission: { ...spool(6 * mm), opens: at(-5), closes: at(100), ...admission },
    exhaust: { ...spool(6 * mm), opens: at(165), closes: at(320) },
  }).complaints(context);

const track = (pitch: number, size: number, opens: number, closes: number) => ({
  pitch_radius: pitch,
  hole_diameter: size,
  slot_width: size,
  opens: at(opens),
  closes: at(closes),
});

/** Complaints about a disc with these pitch radii [m]. */
const ofDisc = (admission: number, exhaust: number): readonly Complaint[] =>
  chosen(valveGears, 'rotary disc', {
    disc_diameter: 100 * mm,
    shaft_diameter: 12 * mm,
    face_gap: 20e-6,
    admission: track(admission, 6 * mm, -5, 100),
    exhaust: track(exhaust, 8 * mm, 165, 325),
  }).complaints(context);

/** The numbers that follow in a text. */
const numbersIn = (text: string): readonly number[] => (text.match(/[\d.]*\d/gu) ?? []).map(Number);
const limits = (complaints: readonly Complaint[], path: string): readonly number[] =>
  numbersIn(complaints.find((one) => one.path.join('.') === path)?.expected ?? '');

describe('cams', () => {
  it('fit between opening and closing with flanks up to the limit named', () => {
    const complaints = ofSpools({ flank: 120 * DEGREE });
    expect(complaints).toMatchObject([{ path: ['admission', 'flank'], received: '120.0 deg' }]);
    const [most] = limits(complaints, 'admission.flank') as [number];
    expect(ofSpools({ flank: (most - 0.1) * DEGREE })).toEqual([]);
    expect(limits(ofSpools({ flank: (most + 0.1) * DEGREE }), 'admission.flank')).toEqual([most]);
  });

  it('may have a closing flank of their own up to the limit named', () => {
    const closing = (degrees: number) => ofSpools({ closing_flank: degrees * DEGREE });
    const [most] = limits(closing(170), 'admission.closing_flank') as [number];
    expect(closing(most - 0.1)).toEqual([]);
    expect(limits(closing(most + 0.1), 'admission.closing_flank')).toEqual([most]);
  });

  it('leave no room for a closing flank behind a rise that is too long by itself', () => {
    const complaints = ofSpools({ flank: 200 * DEGREE, closing_flank: 40 * DEGREE });
    expect(limits(complaints, 'admission.closing_flank')).toEqual([0]);
  });

  it('are back on the base circle within a turn', () => {
    const open = (degrees: number) => ofSpools({ opens: at(0), closes: at(degrees) });
    expect(open(300)).toEqual([]);
    const [complaint] = open(345);
    expect(complaint).toMatchObject({ path: ['admission', 'closes'] });
    expect(numbersIn(complaint!.received)[0]).toBeGreaterThan(360);
  });

  it('open the port only with more lift than lash and lap, and are otherwise not asked about their flanks', () => {
    for (const lift of [0.9 * mm, 1.2 * mm])
      expect(ofSpools({ lift, flank: 130 * DEGREE }).map(({ path }) => path)).toEqual([
        ['admission', 'lift'],
      ]);
    expect(ofSpools({ lift: 1.25 * mm })).toEqual([]);
  });
});

it('the cross hole of a spool is narrower than the spool', () => {
  expect(ofSpools({ hole_diameter: 11.9 * mm, waist_length: 13 * mm })).toEqual([]);
  for (const hole of [12, 13])
    expect(ofSpools({ hole_diameter: hole * mm, waist_length: 13 * mm })).toMatchObject([
      { path: ['admission', 'hole_diameter'], received: `${hole}.00 mm` },
    ]);
});

describe('a track of a rotary disc', () => {
  it('lies between the pitch radii named', () => {
    const complaints = ofDisc(8 * mm, 30 * mm);
    expect(complaints[0]).toMatchObject({ path: ['admission', 'pitch_radius'], received: '8.00 mm' });
    const [least, most] = limits(complaints, 'admission.pitch_radius') as [number, number];
    // Half the shaft, half the hole and 1 mm; half the disc less as much.
    expect([least, most]).toEqual([10, 46]);
    const refused = (radius: number) => limits(ofDisc(radius * mm, 30 * mm), 'admission.pitch_radius');
    for (const radius of [least + 0.01, most - 0.01]) expect(refused(radius)).toEqual([]);
    for (const radius of [least - 0.01, most + 0.01]) expect(refused(radius)).not.toEqual([]);
  });

  it('is as far from the other as named', () => {
    const complaints = ofDisc(30 * mm, 25 * mm);
    expect(complaints).toMatchObject([{ path: ['exhaust', 'pitch_radius'], received: '5.00 mm away' }]);
    const [apart] = limits(complaints, 'exhaust.pitch_radius') as [number];
    expect(ofDisc(30 * mm, (30 - apart - 0.01) * mm)).toEqual([]);
    expect(ofDisc(30 * mm, (30 - apart + 0.01) * mm)).not.toEqual([]);
  });
});

it('the bore of a flywheel ring is narrower than its rim, and the complaint says what it is', () => {
  const ring = (inner: number) =>
    chosen(flywheels, 'ring', {
      outer_diameter: 0.2,
      inner_diameter: inner,
      thickness: 0.02,
      material: 'steel',
    }).complaints(context);
  expect(ring(0.19)).toEqual([]);
  expect(ring(0.25)).toMatchObject([{ path: ['inner_diameter'], received: '250.0 mm' }]);
});

it('a load given as a formula is tried at speeds up to 10 000 rpm', () => {
  const brake = (torque: (speed: number) => number) =>
    chosen(loads, 'formula', { torque }).complaints(context);
  expect(brake((speed) => Math.sqrt(11_000 * RPM - speed))).toEqual([]);
  expect(brake((speed) => Math.sqrt(200 * RPM - speed))).toMatchObject([{ received: 'none at 300 rpm' }]);
  expect(brake((speed) => Math.log(speed))).toMatchObject([{ received: 'none at 0 rpm' }]);
});
