import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Drive } from '../../../src/run/drive-result.ts';
import { summaryJson } from '../../../src/report/summary/summary-json.ts';
import type { RunResult } from '../../../src/run/result.ts';
import * as results from './synthetic-result.ts';

const { noStartResult, saggingResult, settledResult, triedResult } = results;
const doc = readFileSync(new URL('../../../docs/json-output.md', import.meta.url), 'utf8');

/** Every leaf as a path; list entries as `[]`. */
function leaves(value: unknown, path = ''): string[] {
  if (Array.isArray(value)) return value.flatMap((entry) => leaves(entry, `${path}[]`));
  if (typeof value !== 'object' || value === null) return [path];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, path === '' ? key : `${path}.${key}`));
}

const position = { crankAngle: 1, startsUnaided: false };
const drive: Drive = {
  curve: { speed: Float64Array.of(2), torque: Float64Array.of(3), airMassFlow: Float64Array.of(1e-3) },
  curveWithoutLeaks: {
    speed: Float64Array.of(2),
    torque: Float64Array.of(4),
    airMassFlow: Float64Array.of(1e-3),
  },
  load: Float64Array.of(1),
  stallTorque: 3,
  operatingPoints: [{ speed: 10 * Math.PI, stable: true }],
  startMap: {
    positions: [
      { crankAngle: 0, startsUnaided: true, push: 0, secondsToSpeed: 1 },
      { ...position, push: Math.PI, secondsToSpeed: 2 },
      { ...position, push: 2 * Math.PI, secondsToSpeed: 2 },
      position,
    ],
    unaidedShare: 0.25,
  },
};

test('what it can drive and how it starts', () => {
  expect(summaryJson({ ...settledResult, drive }).drive).toEqual({
    stall_torque_N_m: 3,
    operating_points: [{ speed_rpm: 300, stable: true }],
    starts: { positions: 4, unaided_share: 0.25, pushed: 2, hardest_push_rpm: 60 },
    starts_reversed: null,
  });
  const { starts_reversed } = summaryJson({
    ...settledResult,
    drive: { ...drive, startMapReversed: drive.startMap },
  }).drive!;
  expect(starts_reversed).toMatchObject({ positions: 4, pushed: 2 });
});

test('docs/json-output.md lists exactly the keys there are', () => {
  const listed = [...doc.matchAll(/^\| `([^`]+)`/gmu)].map(([, key]) => key!);
  expect(new Set(listed).size).toBe(listed.length);
  const { stand_still, trials, ...running } = summaryJson({ ...settledResult, drive });
  expect([stand_still, trials]).toEqual([null, null]);
  const atRest = leaves(summaryJson(noStartResult).stand_still, 'stand_still');
  const tried = leaves(summaryJson(triedResult).trials, 'trials');
  expect([...new Set([...leaves(running), ...atRest, ...tried])].sort()).toEqual(listed.sort());
});

test('what was tried', () => {
  expect(summaryJson(triedResult).trials).toMatchObject({
    running: {
      changes: [
        { settings: [{ path: 'supply.pressure', then: '60 psi gauge' }] },
        { what: 'a lighter load' },
      ],
      speed_rpm: 300,
      brake_power_W: 55.3,
      unaided_share: 0.125,
      keeps_up: true,
    },
    slow_torque_now_N_m: 0.35,
    in_vain: [
      { slow_torque_N_m: 0.9, slow_load_N_m: 1.15 },
      { slow_torque_N_m: 0.35, slow_load_N_m: 0.6 },
    ],
  });
  expect(summaryJson({ ...noStartResult, trials: { inVain: [] } }).trials).toEqual({
    running: null,
    slow_torque_now_N_m: null,
    in_vain: [],
  });
});

test('figures are in the units of their keys', () => {
  const { settled, engine, compressor } = summaryJson(settledResult);
  expect(settled?.speed_rpm).toBeCloseTo(315.13, 2);
  expect(settled?.air_anr_L_per_min).toBeCloseTo(settledResult.settled!.airFlowAnr * 60e3, 6);
  expect(settled!.air_anr_L_per_min! / settled!.air_cfm!).toBeCloseTo(28.3168, 4);
  expect(engine.events.release_deg).toBeCloseTo(158, 9);
  expect(engine.events.cut_off_percent_of_stroke).toBeCloseTo(100 * settledResult.engine.cutOffFraction, 6);
  expect(compressor).toMatchObject({ delivery_anr_L_per_min: 150, keeps_up: true, minutes_until_sag: null });
});

test('what is not there is null', () => {
  expect(summaryJson(noStartResult)).toMatchObject({ settled: null, compressor: null });
  expect(summaryJson(noStartResult).outcome.missing_torque_N_m).toBe(0.42);
  expect(summaryJson(settledResult).outcome.missing_torque_N_m).toBeNull();
  expect(summaryJson(saggingResult).compressor?.minutes_until_sag).toBe(3.4);
});

test('a number that is none never gets in', () => {
  const broken: RunResult = {
    ...settledResult,
    ledger: { mass: NaN, energy: Infinity },
    settled: { ...settledResult.settled!, speed: NaN, brakePower: -Infinity },
  };
  const summary = summaryJson(broken);
  expect(summary.ledger).toEqual({ mass_residual: null, energy_residual: null });
  expect(summary.settled).toMatchObject({ speed_rpm: null, brake_power_W: null });
  expect(JSON.parse(JSON.stringify(summary))).toEqual(summary);
});

test.each(Object.entries(results))('%s survives JSON and gives the same bytes again', (_name, result) => {
  const summary = summaryJson(result);
  expect(JSON.parse(JSON.stringify(summary))).toEqual(summary);
  expect(JSON.stringify(summaryJson({ ...result }))).toBe(JSON.stringify(summary));
});
