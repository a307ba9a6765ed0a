/** Sheets and their readings: what is right is read in any unit, what is wrong is said with file, line and column. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Attachments } from '../../../src/scenario/attachments.ts';
import { problemListing } from '../../../src/scenario/problem.ts';
import { readAttempts } from '../../../src/scenario/read-attempts.ts';
import { readBenchSheet } from '../../../src/scenario/read-bench-sheet.ts';

const folder = new URL('../../../scenarios/bench/', import.meta.url);
/** Without the line that is for editors only, so that lines count from the title of what it shows. */
const shipped = (name: string): string =>
  readFileSync(new URL(name, folder), 'utf8').replace(/^# yaml-language-server.*\n/u, '');

const sheet = `title: Chest
atmosphere:
  pressure: 1000 mbar absolute
test:
  kind: pressure decay
  between: chest to room
  volume: 95 cm3
  gauge_step: 0.02 bar
  waited: 5 min
  shape: { kind: slit, width: 80 mm, length: 6 mm }
  readings: fall.csv
`;

const readings = `time_s,pressure_bar_gauge
0,3.00
10,2.40
20,1.92
30,1.58
40,1.30
50,1.08
`;

const beside =
  (csv: string): Attachments =>
  (path) => {
    if (path === 'fall.csv') return { ok: true, text: csv };
    try {
      return { ok: true, text: shipped(path) };
    } catch {
      return { ok: false, reason: 'there is no such file' };
    }
  };

function said(text: string, csv = readings): string {
  const reading = readBenchSheet(text, 'sheet.yaml', beside(csv));
  return reading.ok ? 'nothing wrong' : problemListing(reading.problems);
}

function leakOf(csv: string): number {
  const reading = readBenchSheet(sheet, 'sheet.yaml', beside(csv));
  if (!reading.ok) throw new Error(problemListing(reading.problems));
  return reading.sheet.finding().estimates[0]!.value;
}

describe('readings in other units and another order', () => {
  const inPsi = readings
    .replace('time_s,pressure_bar_gauge', 'pressure_psi_gauge,time_min')
    .replace(
      /^(\d+),([\d.]+)$/gmu,
      (_, t: string, p: string) => `${Number(p) * 14.503774},${Number(t) / 60}`,
    );
  const absolute = readings
    .replace('bar_gauge', 'kPa_absolute')
    .replace(/,([\d.]+)$/gmu, (_, p: string) => `,${100 + 100 * Number(p)}`);

  it.each([inPsi, absolute])('come to the same leak', (csv) => {
    expect(leakOf(csv) / leakOf(readings)).toBeCloseTo(1, 5);
  });
});

describe('what is wrong in the readings', () => {
  it.each([
    [
      'no unit',
      readings.replace('pressure_bar_gauge', 'pressure'),
      'fall.csv:1:8  expected "pressure" with its unit, received "pressure" (no unit). Say the unit in the header, such as "pressure_bar_gauge".',
    ],
    [
      'neither gauge nor absolute',
      readings.replace('_gauge', ''),
      'fall.csv:1:8  expected "pressure" with its unit, received "pressure_bar" (neither gauge nor absolute). Say the unit in the header, such as "pressure_bar_gauge".',
    ],
    [
      'a unit of something else',
      readings.replace('time_s', 'time_mm'),
      'fall.csv:1:1  expected "time" with its unit, received "time_mm" (a length). Say the unit in the header, such as "time_s".',
    ],
    [
      'a column nobody knows',
      readings.replace('time_s', 'tme_s'),
      'fall.csv:1:1  expected a column with its unit: time_s, pressure_bar_gauge, temperature_degC, received "tme_s". Did you mean "time_s"?',
    ],
    [
      'a missing column',
      readings.replace(/,.*$/gmu, ''),
      'fall.csv:1:7  expected a column "pressure_bar_gauge" too, received none.',
    ],
    [
      'a column twice',
      readings.replace('pressure_bar_gauge', 'time_min'),
      'fall.csv:1:8  expected each column once, received "time_min".',
    ],
    [
      'semicolons',
      readings.replaceAll(',', ';'),
      'fall.csv:1:1  expected a header such as "time_s,pressure_bar_gauge", received columns separated by ";". Save the file with commas between the columns and points in the numbers.',
    ],
    [
      'no header',
      readings.replace(/^.*\n/u, ''),
      'fall.csv:1:1  expected a header such as "time_s,pressure_bar_gauge", received numbers. Name each column and its unit in the first line.',
    ],
    [
      'words, units and empty cells among the numbers',
      readings.replace('2.40', 'two').replace('1.92', '1.92 bar').replace('1.58', ''),
      [
        'fall.csv:3:4  pressure_bar_gauge: expected a plain number of bar gauge, from 0.5 bar absolute to 50 bar absolute, received "two" (not a number).',
        'fall.csv:4:4  pressure_bar_gauge: expected a plain number of bar gauge, from 0.5 bar absolute to 50 bar absolute, received "1.92 bar" (more than a plain number; the unit stands in the header).',
        'fall.csv:5:4  pressure_bar_gauge: expected a plain number of bar gauge, from 0.5 bar absolute to 50 bar absolute, received nothing.',
      ].join('\n'),
    ],
    [
      'a time that goes back',
      readings.replace('30,', '15,'),
      'fall.csv:5:1  time_s: expected more than the 20 of the row before, received "15".',
    ],
    [
      'a row too short',
      readings.replace('20,1.92', '20'),
      'fall.csv:4:1  expected 2 numbers, one for each column of the header, received 1.',
    ],
    [
      'too few rows',
      readings.split('\n').slice(0, 4).join('\n'),
      'fall.csv:4:1  expected from 5 to 5000 rows of readings, received 3.',
    ],
    ['nothing', '', 'fall.csv:1:1  expected a header such as "time_s,pressure_bar_gauge", received nothing.'],
  ])('%s', (_what, csv, text) => {
    expect(said(sheet, csv)).toBe(text);
  });
});

const log = shipped('running-log.yaml');

describe('what is wrong in a sheet', () => {
  it.each([
    [
      'readings that are not there',
      sheet.replace('fall.csv', 'rise.csv'),
      'sheet.yaml:11:13  test.readings: expected the name of a CSV file with columns such as time_s,pressure_bar_gauge, and if need be temperature_degC, received "rise.csv" (there is no such file).',
    ],
    [
      'a test that needs an engine and names none',
      shipped('coast-down.yaml').replace(/^engine:.*$/mu, ''),
      'sheet.yaml:11:1  test: expected an "engine" beside the test: its flywheel says what the slowing means, received none. Write "engine: my-engine.yaml" above "test:", a scenario file in the same folder.',
    ],
    [
      'an engine that is not there',
      log.replace('press-as-drawn', 'other'),
      'sheet.yaml:9:9  engine: expected the name of a scenario file, received "other.yaml" (there is no such file).',
    ],
    [
      'an unknown that is not in the scenario',
      log.replace('friction.running_torque', 'friction.torque'),
      'sheet.yaml:15:22  friction: expected only the keys running_torque, breakaway_torque, stribeck_speed, viscous_torque, piston_force, piston_force_per_pressure, gland_force, gland_force_per_pressure, received the unknown key "torque".',
    ],
    [
      'a first guess that is no number',
      log.replace('leaks.0.clearance: 12 um', 'leaks.0.clearance: H7/g6'),
      'sheet.yaml:14:24  test.unknowns.leaks.0.clearance: expected a first guess, a positive number with its unit, received "H7/g6".',
    ],
    [
      'a path twice',
      log.replace('friction.running_torque: 0.12 N m', 'leaks.0.clearance: 12 um'),
      'sheet.yaml:15:5  test.unknowns: expected each path once, received "leaks.0.clearance" again.',
    ],
    [
      'a path that is none',
      log.replace('friction.running_torque', 'friction running torque'),
      'sheet.yaml:15:5  test.unknowns: expected a path such as leaks.0.clearance, received "friction running torque". Write "leaks.0.clearance: 12 um" below it, the path from the top of the scenario inwards.',
    ],
    [
      'a list in place of values',
      log.replace(/unknowns:\n(.*\n){3}/u, 'unknowns: [leaks.0.clearance]\n'),
      'sheet.yaml:13:3  test.unknowns: expected at most 5 values of the scenario by their paths, received a list. Write "leaks.0.clearance: 12 um" below it, the path from the top of the scenario inwards.',
    ],
  ])('%s', (_what, text, expected) => {
    expect(said(text)).toBe(expected);
  });
});

describe('what is wrong in a notebook', () => {
  const notebook = shipped('attempts.yaml');
  const saidOf = (text: string): string => {
    const reading = readAttempts(text, 'attempts.yaml', beside(''));
    return reading.ok ? 'nothing wrong' : problemListing(reading.problems);
  };

  it.each([
    ['nothing', notebook, 'nothing wrong'],
    [
      'a change that the scenario does not take',
      notebook.replace('58 % of stroke', '158 % of stroke'),
      'attempts.yaml:28:36  valve_gear.admission.closes: expected',
    ],
    [
      'a finding in another unit than its guess',
      notebook.replace('0.185 N m', '185 mN m'),
      'attempts.yaml:35:32  found.friction.running_torque: expected the unit of its first guess, as in "0.12 N m", received "185 mN m".',
    ],
    [
      'a finding that is no unknown',
      notebook.replace('friction.running_torque: 0.185 N m', 'friction.piston_force: 5 N'),
      'attempts.yaml:35:30  found.friction.piston_force: expected one of the unknowns, leaks.0.clearance, friction.running_torque, valve_gear.discharge_coefficient, received "friction.piston_force".',
    ],
    [
      'no attempts',
      notebook.replace(/^attempts:[^]*$/mu, 'attempts: []\n'),
      'attempts.yaml:17:1  attempts: expected at least one attempt, received none.',
    ],
  ])('%s', (_what, text, expected) => {
    expect(saidOf(text)).toContain(expected);
  });
});
