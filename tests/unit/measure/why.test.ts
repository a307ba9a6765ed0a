/** Causes for what is seen on the bench: the one that was built in comes first. */
import { describe, expect, it } from 'vitest';
import { diagnosis } from '../../../src/measure/why/diagnosis.ts';
import { restScan, STEP_ANGLE, worstStretch, type Standing } from '../../../src/measure/why/rest-scan.ts';
import { symptomNames } from '../../../src/measure/why/symptoms.ts';
import { causes } from '../../../src/measure/why/causes/registry.ts';
import { DEGREE, inertia, pistonLeak, referenceSpec } from '../../support/reference-engine.ts';

type Finding = ReturnType<typeof diagnosis>;

const causeOf = ({ tables = [] }: Finding, rank = 0): string => tables[0]?.rows[rank]?.[0] ?? '';

describe('hisses at rest', () => {
  it('is the piston that was made with far too much clearance', () => {
    const found = diagnosis(referenceSpec({ leaks: [pistonLeak(70e-6)] }), 'hisses at rest', 30 * DEGREE);
    expect(causeOf(found)).toBe('1. The gap “past the piston”');
    expect(found.tables![0]!.rows[0]![1]).toMatch(
      /lets \d+ L\/min ANR away at this angle, (9\d|100) % of all that leaks/,
    );
    expect(found.tables![0]!.rows[0]![2]).toContain('pressure decay');
    expect(found.statements.join()).toContain('Looked at for 30° after top dead centre.');
  });

  it('is something else when everything in the scenario is tight', () => {
    const found = diagnosis(referenceSpec({ leaks: [] }), 'hisses at rest', 120 * DEGREE);
    expect(causeOf(found)).toContain('A leak that the scenario does not know');
  });
});

it('moves and stops: the wheel of next to nothing that cannot carry it over', () => {
  const found = diagnosis(referenceSpec({ flywheel: inertia(2e-3) }), 'moves and stops');
  expect(causeOf(found)).toBe('1. A wheel too light for the stretch without push');
  expect(found.tables![0]!.rows[0]![1]).toMatch(/falls short by [\d.]+ J/);
});

it.each(symptomNames)('%s has causes, each of them asked for some symptom', (symptom) => {
  expect(causes.filter((own) => own.symptoms.includes(symptom)).length).toBeGreaterThanOrEqual(3);
});

describe('the stretch where the air falls shortest', () => {
  const standing = (missing: readonly number[]): Standing[] =>
    missing.map((value, i) => ({
      angle: i * STEP_ANGLE,
      applied: 0,
      holding: value,
      admission: false,
      exhaust: false,
      chestPressure: 0,
      cylinderPressure: 0,
      airFlowAnr: 0,
      leaks: [],
    }));

  it('is the one with the most work missing, across the dead centre too', () => {
    const found = worstStretch(standing([2, 1, -1, -1, 1, -1, 1, 2]))!;
    expect(found.from).toBeCloseTo(6 * STEP_ANGLE, 12);
    expect(found.to).toBeCloseTo(STEP_ANGLE, 12);
    expect(found.work).toBeCloseTo(6 * STEP_ANGLE, 12);
  });

  it('is none when the air pushes everywhere, and the whole turn when nowhere', () => {
    expect(worstStretch(standing([-1, -1]))).toBeUndefined();
    expect(worstStretch(standing([1, 1]))!.work).toBeCloseTo(2 * STEP_ANGLE, 12);
  });
});

it('standing pressures are those of the places that the open port joins', () => {
  const scan = restScan(referenceSpec({ leaks: [] }));
  for (const { admission, exhaust, chestPressure, cylinderPressure } of scan) {
    if (admission && !exhaust) expect(cylinderPressure / chestPressure).toBeCloseTo(1, 2);
    if (exhaust && !admission) expect(cylinderPressure).toBeLessThan(1.05 * 101_325);
  }
});
