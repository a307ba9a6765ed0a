/** Every valve gear keeps its contract, with plausible values and with some far off; a bad one is found out. */
import { describe, expect, it } from 'vitest';
import { gap, port } from '../../src/parts/passage.ts';
import { valveGears } from '../../src/parts/valve-gears/registry.ts';
import type { ValveGear } from '../../src/parts/valve-gears/valve-gear.ts';
import { context, crankEnd, samplesOf } from './context.ts';
import { valveGearComplaints } from './contract-of-valve-gears.ts';

/** TICKOVER_CASES asks for more. */
const SAMPLES = Number(process.env['TICKOVER_CASES'] ?? 10);

describe.each(valveGears.kinds)('the valve gear $kind', (kind) => {
  it('keeps its contract with plausible values', () => {
    const complaints = samplesOf(kind, SAMPLES, 0).flatMap((choice) =>
      valveGearComplaints(choice.build(context)),
    );
    expect(complaints).toEqual([]);
  });

  it('keeps its contract with some values anywhere in their range', () => {
    const complaints = samplesOf(kind, SAMPLES, 4).flatMap((choice) =>
      valveGearComplaints(choice.build(context)),
    );
    expect(complaints).toEqual([]);
  });
});

/** Some are refused on a double-acting cylinder, whatever their values. */
const servesBothEnds = (kind: (typeof valveGears.kinds)[number]): boolean =>
  samplesOf(kind, 1, 0).every(
    (choice) => !choice.complaints(crankEnd).some(({ path }) => path.join() === 'kind'),
  );

describe.each(valveGears.kinds.filter(servesBothEnds))('the valve gear $kind', (kind) => {
  it('keeps its contract at the crank end too', () => {
    const complaints = samplesOf(kind, 6, 0, crankEnd).flatMap((choice) =>
      valveGearComplaints(choice.build(crankEnd)),
    );
    expect(complaints).toEqual([]);
  });
});

it('most valve gears serve both ends', () => {
  expect(valveGears.kinds.filter(servesBothEnds).length).toBeGreaterThan(valveGears.kinds.length / 2);
});

describe('a bad valve gear', () => {
  const { gas } = context;
  const into = { name: 'in', from: 'chest', to: 'cylinder' } as const;
  const outOf = { name: 'out', from: 'cylinder', to: 'atmosphere' } as const;
  /** A hump of area between two angles. */
  const hump = (opens: number, closes: number) => (angle: number) => {
    const wrapped = ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
    const s = (wrapped - opens) / (closes - opens);
    return s <= 0 || s >= 1 ? 0 : 1e-5 * Math.sin(Math.PI * s) ** 2;
  };
  const good: ValveGear = {
    ports: [port(gas, 'admission', into, hump(0.1, 1.5)), port(gas, 'exhaust', outOf, hump(3, 6))],
    sealingGaps: [gap(gas, { ...outOf, name: 'past' }, 1e15, 1e-7)],
    edges: [0.1, 1.5, 3, 6],
    events: { admission: 0.1, cutOff: 1.5, release: 3, compression: 6 },
    derivedSizes: [],
    dragTorque: () => 0.1,
  };
  const [admission, exhaust] = good.ports as [ValveGear['ports'][0], ValveGear['ports'][0]];
  const withAdmission = (area: (angle: number) => number): ValveGear => ({
    ...good,
    ports: [port(gas, 'admission', into, area), exhaust],
  });
  const leaking = (resistance: (angle: number) => number): ValveGear => ({
    ...good,
    sealingGaps: [
      {
        ...good.sealingGaps[0]!,
        massFlow: (angle, p1, _t1, p2) => (p1 * p1 - p2 * p2) / resistance(angle),
      },
    ],
  });

  it('would be a good one but for one thing', () => {
    expect(valveGearComplaints(good)).toEqual([]);
  });

  it.each<[string, ValveGear]>([
    ['has two admissions', { ...good, ports: [admission, admission] }],
    ['has no exhaust', { ...good, ports: [admission] }],
    ['has edges out of order', { ...good, edges: [1.5, 0.1, 3, 6] }],
    ['has an edge twice', { ...good, edges: [0.1, 1.5, 1.5, 3, 6] }],
    ['has an edge beyond the turn', { ...good, edges: [0.1, 1.5, 3, 6, 7] }],
    ['forgets the edge of an event', { ...good, edges: [0.1, 1.5, 3] }],
    ['names a wrong event', { ...good, events: { ...good.events, cutOff: 3 } }],
    ['runs with a driving drag', { ...good, dragTorque: () => -0.1 }],
    ['has a drag that is no number at rest', { ...good, dragTorque: (_angle, speed) => 0 / speed }],
    ['has a steady drag that is another', { ...good, steadyDrag: 0.11 }],
    [
      'has a steady drag that goes with the pressure',
      { ...good, steadyDrag: 0.1, dragTorque: (_angle, _speed, { chest }) => (chest > 1e6 ? 0.2 : 0.1) },
    ],
    ['has a drag that hides a kink', { ...good, dragTorque: (angle) => Math.abs(Math.sin(angle - 0.7)) }],
    ['has an area below zero', withAdmission((angle) => hump(0.1, 1.5)(angle) - 1e-9)],
    ['never shuts', withAdmission((angle) => hump(0.1, 1.5)(angle) + 1e-6)],
    ['opens once more', withAdmission((angle) => hump(0.1, 1.5)(angle) + hump(2, 2.5)(angle))],
    ['opens every other turn', withAdmission((angle) => hump(0.1, 1.5)(angle / 2))],
    ['hides a kink', withAdmission((angle) => hump(0.1, 1.5)(angle) * (1 + Math.abs(Math.sin(angle - 0.7))))],
    ['hides a step', withAdmission((angle) => hump(0.1, 1.5)(angle) * (angle % (2 * Math.PI) > 0.7 ? 2 : 1))],
    ['has a leak with a kink', leaking((angle) => 1e16 * (1.1 + Math.abs(Math.sin(angle - 2))))],
    ['has a leak of another turn', leaking((angle) => 1e16 * (1.1 + Math.sin(angle / 2)))],
  ])('that %s is found out', (_fault, gear) => {
    expect(valveGearComplaints(gear)).not.toEqual([]);
  });
});
