import { describe, expect, it } from 'vitest';
import { engineParameters } from '../../../src/parts/engine-description.ts';
import { describedKeys } from '../../../src/scenario/described-keys.ts';
import { explainKey, type KeyExplanation } from '../../../src/scenario/explain.ts';

function explained(key?: string): readonly KeyExplanation[] {
  const explaining = explainKey(engineParameters, key);
  return explaining.ok ? explaining.explanations : [];
}

describe('a key is explained', () => {
  it('by its whole path, with meaning, range, absence, example and how to measure it', () => {
    const [bore, ...others] = explained('cylinder.bore');
    expect(others).toEqual([]);
    expect(bore).toMatchObject({
      paths: ['cylinder.bore'],
      kinds: [],
      meaning: 'Inside diameter of the cylinder.',
      expected: 'a length from 2 mm to 500 mm',
      leftOut: 'must be given',
      example: 'bore: 50 mm',
    });
    expect(bore?.measure).toContain('callipers');
  });

  it('by its end, wherever it occurs', () => {
    expect(explained('bore').map(({ paths }) => paths)).toEqual([['cylinder.bore'], ['supply.hose.bore']]);
  });

  it('once where it means the same in several places', () => {
    const [spool] = explained('end_land');
    expect(spool?.paths).toEqual(['valve_gear.admission.end_land', 'valve_gear.exhaust.end_land']);
    expect(spool?.kinds).toEqual(['cam-driven spools']);
  });

  it('as an entry of a list, with its number or without', () => {
    expect(explained('leaks.0.diameter')).toEqual(explained('leaks.diameter'));
  });

  it('in the units asked for', () => {
    const imperial = explainKey(engineParameters, 'cylinder.bore', 'imperial');
    expect(imperial.ok && imperial.explanations[0]?.expected).toBe('a length from 0.07874 in to 19.69 in');
  });

  it('with its default, if it has one', () => {
    expect(explained('atmosphere.pressure')[0]?.leftOut).toBe('1.01325 bar absolute');
    expect(explained('start')[0]?.leftOut).toBe('may be left out');
    expect(explained('wall_heat')[0]?.leftOut).toBe('kind: none');
    expect(explained('wall_thickness')[0]?.leftOut).toBe('see the meaning');
  });

  it('as a part with its kinds, and a kind with its keys', () => {
    expect(explained('load')[0]?.members.map(([kind]) => kind)).toContain('fan');
    expect(explained('fan')[0]?.members.map(([key]) => key)).toEqual(['torque', 'at_speed']);
  });

  it('as the whole scenario when no key is named', () => {
    expect(explained()[0]?.members.map(([key]) => key)).toEqual(Object.keys(engineParameters));
  });
});

it('a key that does not exist is answered with the nearest that does', () => {
  expect(explainKey(engineParameters, 'cylinder.boore')).toEqual({ ok: false, nearest: 'cylinder.bore' });
  expect(explainKey(engineParameters, 'zzzzzzzzzzzzzzzzzzzzzzzzzzzzz')).toEqual({ ok: false });
});

/** Chosen and not measured, or read off a sheet or a habit and not off an engine. */
const NOT_MEASURED = [
  'crank_end_clearance',
  'cylinders',
  'critical_pressure_ratio',
  'eccentricity',
  'longest_time',
  'sonic_conductance',
  'stribeck_speed',
];

/** Groups of what is only drawn and has yet to be made. */
const TO_BE_MADE = ['blocks', 'cams', 'making', 'plates', 'springs'];

it('of every size, share and place it is said how to measure it', () => {
  const silent = describedKeys(engineParameters).flatMap(({ path, kinds, parameter }) => {
    const own = parameter.type === 'optional' ? parameter.parameter : parameter;
    const measurable = ['quantity', 'number', 'count', 'crank position', 'table', 'clearance'].includes(
      own.type,
    );
    const said = 'measure' in own && (own.measure ?? '').trim().endsWith('.');
    const chosen = NOT_MEASURED.includes(path.at(-1) ?? '') || path.some((key) => TO_BE_MADE.includes(key));
    return measurable && !said && !chosen ? [`${path.join('.')} (${kinds.join(', ')})`] : [];
  });
  expect(silent).toEqual([]);
});
