/** Values said beside a scenario file. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { optionOverrides, type Override } from '../../../src/scenario/override.ts';
import { problemListing } from '../../../src/scenario/problem.ts';
import { readScenario, scenarioReader, type ScenarioReading } from '../../../src/scenario/read-scenario.ts';

const press = readFileSync(new URL('../../../scenarios/cider-press.yaml', import.meta.url), 'utf8');

function set(...texts: readonly string[]): readonly Override[] {
  const reading = optionOverrides(texts);
  if (!reading.ok) throw new Error(problemListing(reading.problems));
  return reading.overrides;
}

const read = (text: string, ...texts: readonly string[]): ScenarioReading =>
  readScenario(text, 'press.yaml', undefined, set(...texts));

const specOf = (reading: ScenarioReading) => {
  if (!reading.ok) throw new Error(problemListing(reading.problems));
  return reading.spec;
};

const complaintsAbout = (...texts: readonly string[]): string => {
  const reading = read(press, ...texts);
  return reading.ok ? 'nothing wrong' : problemListing(reading.problems);
};

/** Both spools described once, under an anchor. */
const alike = press
  .replace('  admission:\n', '  admission: &port\n')
  .replace(/ {2}exhaust:\n(?: {4}.*\n)+/u, '  exhaust: *port\n');

describe('a value said beside the file', () => {
  it('stands above the file, with its unit', () => {
    const spec = specOf(
      read(press, 'cylinder.bore=60 mm', 'leaks.0.clearance=20 um', 'supply.pressure=2 bar gauge'),
    );
    expect(spec.cylinder.bore).toBeCloseTo(0.06, 12);
    expect(spec.leaks[0]?.values['clearance']).toEqual({ by: 'gap', gap: 20e-6 });
    expect(spec.supply.pressure).toBeCloseTo(101_300 + 2e5, 6);
    expect(spec.cylinder.stroke).toBe(specOf(read(press)).cylinder.stroke);
  });

  it('may be one that the file leaves out, in a group that it leaves out', () => {
    const spec = specOf(
      read(
        press,
        'start.hand_speed=60 rpm',
        'supply.regulator.inlet_pressure=8 bar gauge',
        'supply.regulator.sonic_conductance=4 dm3/(s bar)',
        'supply.regulator.droop=0.4 bar',
      ),
    );
    expect(spec.start.hand_speed).toBeCloseTo(2 * Math.PI, 9);
    expect(spec.supply.regulator?.inlet_pressure).toBeCloseTo(901_300, 3);
  });

  it('may be the pressure of the room, which gauge pressures then count from', () => {
    expect(specOf(read(press, 'atmosphere.pressure=900 mbar absolute')).supply.pressure).toBeCloseTo(
      390_000,
      6,
    );
  });

  it('is read in place of a wrong one', () => {
    expect(read(press.replace('bore: 50 mm', 'bore: 50'), 'cylinder.bore=50 mm').ok).toBe(true);
  });

  it('leaves alone what an alias elsewhere stands for', () => {
    const text = press
      .replace('stroke: 60 mm', 'stroke: &size 60 mm')
      .replace('length: 45 mm', 'length: *size');
    const spec = specOf(read(text, 'cylinder.stroke=50 mm'));
    expect(spec.cylinder.stroke).toBeCloseTo(0.05, 12);
    expect(spec.leaks[0]?.values['length']).toBeCloseTo(0.06, 12);
  });

  it('below an alias leaves alone what it was an alias of', () => {
    const { values } = specOf(
      read(alike, 'valve_gear.exhaust.opens=165 deg', 'valve_gear.exhaust.closes=330 deg'),
    ).valve_gear;
    expect(values['admission']).toMatchObject({ closes: { by: 'outward stroke', fraction: 0.5 } });
    expect(values['exhaust']).toMatchObject({ opens: { by: 'angle' }, closes: { by: 'angle' } });
  });

  it('may be a kind, which then starts from nothing', () => {
    const spec = specOf(read(press, 'flywheel.moment_of_inertia=0.1 kg m^2', 'flywheel.kind=given'));
    expect(spec.flywheel.kind).toBe('given');
    expect(
      specOf(read(press, 'flywheel.kind=disc', 'flywheel.diameter=300 mm')).flywheel.values['diameter'],
    ).toBeCloseTo(0.3, 12);
  });

  it('may be a new entry of a list', () => {
    const spec = specOf(
      read(press, 'leaks.1.kind=plain piston', 'leaks.1.clearance=10 um', 'leaks.1.length=40 mm'),
    );
    expect(spec.leaks).toHaveLength(2);
  });

  it('may be said twice; the last one counts', () => {
    expect(specOf(read(press, 'cylinder.bore=60 mm', 'cylinder.bore=40 mm')).cylinder.bore).toBeCloseTo(
      0.04,
      12,
    );
  });

  it('goes through one reader again and again without a trace', () => {
    const reader = scenarioReader(press, 'press.yaml');
    if (!reader.ok) throw new Error('the press must read');
    const before = specOf(reader.read([])).cylinder.bore;
    expect(specOf(reader.read(set('cylinder.bore=70 mm'))).cylinder.bore).toBeCloseTo(0.07, 12);
    expect(specOf(reader.read([])).cylinder.bore).toBe(before);
  });

  it('goes through one reader as through a new one, whatever was read before', () => {
    const reader = scenarioReader(alike, 'press.yaml');
    if (!reader.ok) throw new Error('the press must read');
    const ways = [
      [],
      ['atmosphere.pressure=900 mbar absolute'],
      ['valve_gear.exhaust.clearance=40 um'],
      ['flywheel.kind=given', 'flywheel.moment_of_inertia=0.1 kg m^2'],
      ['cylinder.bore=50'],
      ['leaks.0.clearance=20 um', 'supply.pressure=2 bar gauge'],
      [],
    ].map((own) => set(...own));
    const told = (reading: ScenarioReading): string =>
      reading.ok ? JSON.stringify(reading.spec) : problemListing(reading.problems);
    const again = ways.map((own) => told(reader.read(own)));
    expect(again).toEqual(ways.map((own) => told(readScenario(alike, 'press.yaml', undefined, own))));
    expect(again[1]).not.toBe(again[0]);
  });
});

describe('what is wrong with a value said beside the file', () => {
  it.each([
    ['cylinder.bore=50', '--set cylinder.bore=50  cylinder.bore: expected a length'],
    ['cylinder.bore=', '--set cylinder.bore=  cylinder.bore: expected a length'],
    ['cylinder.bore=5 m', 'received "5 m" (too large)'],
    ['cylinder.boar=50 mm', '--set cylinder.boar=50 mm  cylinder: expected only the keys'],
    ['cylinder.boar=50 mm', 'Did you mean "bore"?'],
    ['cylindre.bore=50 mm', 'Did you mean "cylinder"?'],
    ['valve_gear.admision.closes=40 deg', 'Did you mean "admission"?'],
    [
      'leaks.3.clearance=1 um',
      '--set leaks.3.clearance=1 um  leaks: expected a place in the list, 0, or 1 for a new entry, received "3".',
    ],
    ['cylinder.bore.x=1', 'received a group of keys'],
    ['valve_gear.kind=rotary disk', 'Did you mean "rotary disc"?'],
    ['valve_gear=40 deg', 'expected a kind of valve gear'],
    [
      'valve_gear.admission.clearance=honed / polished',
      '--set valve_gear.admission.clearance=honed / polished  ',
    ],
    // Impossible only together with the rest of the engine.
    ['cylinder.rod_length=29 mm', '--set cylinder.rod_length=29 mm  cylinder.rod_length: '],
    ['valve_gear.admission.lift=9 mm', '--set valve_gear.admission.lift=9 mm  '],
  ])('%s', (text, part) => {
    expect(complaintsAbout(text)).toContain(part);
  });

  it('is said together with what is wrong in the file, each at its place', () => {
    const reading = read(press.replace('stroke: 60 mm', 'stroke: 60'), 'cylinder.bore=50');
    const lines = reading.ok ? [] : problemListing(reading.problems).split('\n');
    expect(lines).toHaveLength(2);
    expect(lines[0]).toMatch(/^--set cylinder\.bore=50 {2}/);
    expect(lines[1]).toMatch(/^press\.yaml:\d+:\d+ {2}cylinder\.stroke: /);
  });

  it.each(['cylinder.bore', '=50 mm', 'cylinder..bore=5 mm', 'cylinder bore=5 mm'])(
    '%s is no path=value',
    (text) => {
      const reading = optionOverrides([text]);
      expect(reading.ok).toBe(false);
      if (!reading.ok)
        expect(problemListing(reading.problems)).toBe(
          `--set ${text}  expected path=value, received "${text}". Write it like "cylinder.bore=50 mm".`,
        );
    },
  );
});
