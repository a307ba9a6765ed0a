/**
 * What was drawn does what was wanted: the outline of a cam is read back from its DXF file by an independent reader, a
 * follower is rested on it degree by degree, and the areas that its spool then opens are given to the simulator.
 */
import { describe, expect, it } from 'vitest';
import { runEngine, type EngineSpec } from '../../src/index.ts';
import { FULL_TURN } from '../../src/parts/crank-positions.ts';
import { spoolLift } from '../../src/parts/cams/cam.ts';
import { partContext } from '../../src/parts/engine-description.ts';
import {
  camOf,
  spoolOf,
  type CamSpools,
  type SpoolName,
} from '../../src/parts/valve-gears/cam-spools-parameters.ts';
import { spoolArea } from '../../src/parts/valve-gears/spool.ts';
import { followerOf } from '../../src/parts/valve-gears/cam-spools-base-circle.ts';
import { valveGears } from '../../src/parts/valve-gears/registry.ts';
import { followerReach } from '../../src/workshop/cams/cam-outline.ts';
import type { Outline } from '../../src/workshop/geometry/outline.ts';
import { mirrored } from '../../src/workshop/geometry/placing.ts';
import { chosen } from '../support/chosen.ts';
import { drawn, fileOf, shippedSpec, withGear } from '../support/drawn.ts';
import { expectWithin } from '../support/expect-within.ts';
import { shapesOn } from '../support/read-dxf.ts';

const DEGREE = Math.PI / 180;
const press = shippedSpec('cider-press.yaml');

const gearOf = (spec: EngineSpec): CamSpools => spec.valve_gear.values as unknown as CamSpools;

/** The cut edge, as it would stand if the shaft turned clockwise. */
function cutOutline(spec: EngineSpec, name: SpoolName): Outline {
  const [edge] = shapesOn(fileOf(drawn(spec), `${name}-cam.dxf`), 'CUT-OUTSIDE');
  if (edge === undefined) throw new Error('no edge');
  return gearOf(spec).cams.turning === 'clockwise' ? edge : mirrored(edge);
}

/** Lift of the cut cam at a crank angle: the follower stands up, the cam turns clockwise under it. */
function cutLift(outline: Outline, spec: EngineSpec): (crankAngle: number) => number {
  const follower = followerOf(gearOf(spec));
  const reach = (angle: number): number => followerReach(outline, follower, Math.PI / 2 + angle);
  const rest = Math.min(...Array.from({ length: 72 }, (_, i) => reach(i * 5 * DEGREE)));
  return (angle) => reach(angle) - rest;
}

const followers = [
  ['a roller', {}],
  ['a roller beside the shaft', { follower_offset: 4e-3 }],
  ['a flat face', { follower: 'flat' }],
  ['a shaft that turns the other way', { turning: 'anticlockwise' }],
] as const;

/** Both flanks alike would hide which is which. */
const uneven = withGear(press, { admission: { closing_flank: 62 * DEGREE } });

describe.each(followers)('the cut cam under %s', (_what, cams) => {
  const spec = withGear(uneven, { cams });

  it.each(['admission', 'exhaust'] as const)('lifts as its law says, within 3 µm (%s)', (name) => {
    const cam = camOf(gearOf(spec), name, partContext(spec));
    const lift = cutLift(cutOutline(spec, name), spec);
    for (let degree = 0; degree < 360; degree += 7) {
      const angle = degree * DEGREE;
      const spool = Math.max(0, lift(angle) - cam.lash);
      // 1 µm of arcs, and as much along a flank that stands 25° askew.
      expect(Math.abs(spool - spoolLift(cam, angle)), `${degree}°`).toBeLessThan(3e-6);
    }
  });
});

describe('the engine with the cut cams', () => {
  const gear = gearOf(press);
  const rows = Array.from({ length: 721 }, (_, i) => (FULL_TURN * i) / 720);
  const areas = (name: SpoolName): number[] => {
    const lift = cutLift(cutOutline(press, name), press);
    const { lash } = gear[name];
    const spool = spoolOf(gear, name);
    const column = rows.slice(0, -1).map((angle) => {
      const effective = spoolArea(spool, gear.discharge_coefficient, Math.max(0, lift(angle) - lash));
      // What a tenth of a square millimetre-thousandth lets through is the rounding of the arcs.
      return effective < 1e-10 ? 0 : effective;
    });
    return [...column, column[0]!];
  };
  const cut: EngineSpec = {
    ...press,
    valve_gear: chosen(valveGears, 'tabulated', {
      areas: {
        file: 'cut.csv',
        argument: rows,
        columns: { admission_area: areas('admission'), exhaust_area: areas('exhaust') },
      },
      discharge_coefficient: 1,
      drive_torque: gear.drive_torque,
    }),
  };

  it('has the events it was drawn for, within half a degree', () => {
    const wanted = press.valve_gear.build(partContext(press)).events;
    const got = cut.valve_gear.build(partContext(cut)).events;
    for (const event of ['admission', 'cutOff', 'release', 'compression'] as const)
      expect(Math.abs(got[event] - wanted[event]) / DEGREE, event).toBeLessThanOrEqual(0.5);
  });

  it('runs at the speed of a perfect one', () => {
    // Compared without leaks: a table of areas has none of its spools.
    const tight = withGear(press, {
      admission: { clearance: { by: 'gap', gap: 0 } },
      exhaust: { clearance: { by: 'gap', gap: 0 } },
    });
    const speeds = [tight, cut].map((spec) => runEngine(spec).settled?.speed ?? NaN);
    // The rows of the table lie half a degree apart, and so do its events.
    expectWithin(speeds[1]!, speeds[0]!, 5e-3);
  });
});
