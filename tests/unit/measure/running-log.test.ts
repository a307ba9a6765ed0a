/**
 * The running log through the whole model. Each fit takes dozens of runs, so one log is fitted here, and the interval
 * arithmetic is tried on 500 seeds with a made-up engine (tests/laws/intervals-cover.test.ts). TICKOVER_LOG_SEEDS=40
 * fits as many logs through the real model instead of one and asks for the same cover; it takes minutes.
 */
import { describe, expect, it } from 'vitest';
import type { Estimate, Finding } from '../../../src/measure/finding.ts';
import { problemListing } from '../../../src/scenario/problem.ts';
import { readScenario } from '../../../src/scenario/read-scenario.ts';
import { settledAnswer } from '../../../src/measure/settled-answer.ts';
import { noise } from '../../support/noise.ts';
import { csv, findingOf, shipped, type Changes } from './sheets.ts';

const RPM = Math.PI / 30;
const ROOM = { pressure: 101_300, temperature: 285.15 };
const GAP = '24 um';
const DISCHARGE = '0.58';

/** The press with its true friction; the two unknowns as drawn. */
const press = shipped('press-as-drawn.yaml').replace('running_torque: 0.12 N m', 'running_torque: 0.19 N m');

function truth(): ReturnType<typeof settledAnswer>[] {
  const at = { file: '', line: 0, column: 0 };
  const reading = readScenario(press, 'press.yaml', undefined, [
    { path: ['leaks', '0', 'clearance'], value: GAP, at },
    { path: ['valve_gear', 'discharge_coefficient'], value: DISCHARGE, at },
  ]);
  if (!reading.ok) throw new Error(problemListing(reading.problems));
  return [2.6, 3.4].map((gauge) =>
    settledAnswer(reading.spec, { supplyPressure: ROOM.pressure + gauge * 1e5, near: 260 * RPM, room: ROOM }),
  );
}

const answers = truth();

const drawn = `    leaks.0.clearance: 12 um
    friction.running_torque: 0.12 N m
    valve_gear.discharge_coefficient: 0.65`;

const unknowns = (lines: string): NonNullable<Changes['replace']> => [[drawn, lines]];

function logged(seed: number, air: boolean): NonNullable<Changes['files']> {
  const own = noise(seed);
  const rows = answers.map((answer, i) => {
    const speed = answer!.speed / RPM + 1.5 * own.normal();
    const flow = answer!.airFlow * 60e3 * (1 + 0.02 * own.normal());
    return [[2.6, 3.4][i]!, speed, ...(air ? [flow] : [])];
  });
  const header = `supply_pressure_bar_gauge,speed_rpm${air ? ',air_flow_L/min' : ''}`;
  return { 'running-log.csv': csv(header, rows), 'press-as-drawn.yaml': press };
}

const fitted = (seed: number): Finding =>
  findingOf('running-log.yaml', {
    files: logged(seed, true),
    replace: unknowns('    leaks.0.clearance: 15 um\n    valve_gear.discharge_coefficient: 0.65'),
  });

const holds = ({ low, high }: Estimate, value: number): boolean => low <= value && value <= high;

const seeds = Number(process.env['TICKOVER_LOG_SEEDS'] ?? 1);

describe('speed and air at two pressures', () => {
  it(
    `find leak and discharge coefficient again, ${seeds === 1 ? 'once' : `${seeds} times`}`,
    () => {
      const covered = [0, 0];
      for (let seed = 0; seed < seeds; seed += 1) {
        const [gap, discharge] = fitted(seed).estimates as [Estimate, Estimate];
        covered[0]! += Number(holds(gap, 24));
        covered[1]! += Number(holds(discharge, 0.58));
        expect(gap.high / gap.low).toBeLessThan(3);
        expect(discharge.high / discharge.low).toBeLessThan(1.3);
      }
      for (const count of covered) expect(count / seeds).toBeGreaterThanOrEqual(0.9);
    },
    seeds * 60_000,
  );
});

it('says plainly when friction of bearings and of piston cannot be told apart', () => {
  const found = findingOf('running-log.yaml', {
    files: logged(3, true),
    replace: unknowns('    friction.running_torque: 0.19 N m\n    friction.piston_force: 6 N'),
  });
  expect(found.warnings.join()).toMatch(
    /cannot tell friction\.running_torque from friction\.piston_force: more of one with less of the other fits as well/,
  );
  expect(found.warnings.join()).toContain(
    'A bench test of kind “coast-down” measures friction.running_torque by itself.',
  );
  expect(found.next).toContain('bench test that is named above');
}, 60_000);
