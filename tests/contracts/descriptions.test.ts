/** Every family, kind and parameter says what it is; a family that does not is found out. */
import { describe, expect, it } from 'vitest';
import { choice, count, group, pureNumber, quantity, text } from '../../src/kinds/describe.ts';
import type { Family } from '../../src/kinds/kind.ts';
import { attemptsParameters } from '../../src/measure/attempts-description.ts';
import { attemptKinds } from '../../src/measure/attempts/registry.ts';
import { gapShapes } from '../../src/measure/gap-shapes/registry.ts';
import { sheetParameters } from '../../src/measure/sheet-description.ts';
import { benchTests } from '../../src/measure/tests/registry.ts';
import { engineParameters } from '../../src/parts/engine-description.ts';
import { flywheels } from '../../src/parts/flywheels/registry.ts';
import { leaks } from '../../src/parts/leaks/registry.ts';
import { loads } from '../../src/parts/loads/registry.ts';
import type { PartContext } from '../../src/parts/part-context.ts';
import { valveGears } from '../../src/parts/valve-gears/registry.ts';
import { wallHeats } from '../../src/parts/wall-heat/registry.ts';
import { aims } from '../../src/study/aims/registry.ts';
import { conditions } from '../../src/study/conditions/registry.ts';
import { samples } from '../../src/study/samples/registry.ts';
import { studyParameters } from '../../src/study/study-description.ts';
import { tolerances } from '../../src/study/tolerances/registry.ts';
import { variations } from '../../src/study/variations/registry.ts';
import { possibleContext, samplesOf } from './context.ts';
import { familyComplaints, tableComplaints } from './contract-of-descriptions.ts';

const families: readonly Family<PartContext, unknown>[] = [flywheels, leaks, loads, valveGears, wallHeats];

describe.each(families)('the family $name', (family) => {
  it('describes its kinds and their parameters', () => {
    expect(familyComplaints(family)).toEqual([]);
  });

  it.each(family.kinds)('builds $kind from any values that pass its checks', (kind) => {
    const own = possibleContext(kind.kind);
    const built = samplesOf(kind, 20, 3, own).map((choice) => choice.build(own));
    expect(built.every((part) => typeof part === 'object')).toBe(true);
  });
});

it('a whole study is described', () => {
  expect(tableComplaints(studyParameters)).toEqual([]);
  const ofStudies: readonly Family<unknown, unknown>[] = [
    variations,
    samples,
    conditions,
    aims,
    tolerances,
  ] as never;
  expect(ofStudies.flatMap((family) => familyComplaints(family))).toEqual([]);
});

const benchFamilies: readonly Family<never, unknown>[] = [benchTests, gapShapes, attemptKinds];

it.each(benchFamilies)('the family $name of the bench describes its kinds and their parameters', (family) => {
  expect(familyComplaints(family as Family<unknown, unknown>)).toEqual([]);
});

it.each([sheetParameters, attemptsParameters])('a sheet and a notebook are described', (parameters) => {
  expect(tableComplaints(parameters)).toEqual([]);
});

it('the whole engine is described', () => {
  expect(tableComplaints(engineParameters)).toEqual([]);
});

describe('a badly described family', () => {
  const kind = (parameters: Family<unknown, unknown>['kinds'][number]['parameters'], name = 'bad') => ({
    kind: name,
    doc: 'A kind.',
    parameters,
    choose: () => {
      throw new Error('never built');
    },
  });
  const length = { min: 1e-3, max: 1e-2 };

  it.each([
    ['a kind twice', [kind({}), kind({})]],
    ['a kind without a name', [kind({}, '')]],
    ['no kinds', []],
    ['a key in capitals', [kind({ Bore: quantity('length', length, '5 mm', 'Bore.') })]],
    ['no doc', [kind({ bore: quantity('length', length, '5 mm', '') })]],
    ['an upside-down range', [kind({ bore: quantity('length', { min: 2, max: 1 }, '5 mm', 'Bore.') })]],
    ['a wild default', [kind({ bore: quantity('length', { ...length, default: 1 }, '5 mm', 'Bore.') })]],
    ['an example of another kind', [kind({ bore: quantity('length', length, '5 bar', 'Bore.') })]],
    ['an example out of range', [kind({ bore: quantity('length', length, '5 m', 'Bore.') })]],
    ['an example without unit', [kind({ bore: quantity('length', length, '0.005', 'Bore.') })]],
    ['a number out of range', [kind({ share: pureNumber({ min: 0, max: 1 }, '200 %', 'Share.') })]],
    ['an infinite count', [kind({ balls: count({ min: 1, max: Infinity }, 'Balls.') })]],
    ['a choice twice', [kind({ metal: choice(['tin', 'tin'], 'Metal.') })]],
    ['a long default', [kind({ name: text(2, 'Name.', 'long') })]],
    ['a fault in a group', [kind({ inner: group('A group.', { bore: text(2, '') }) })]],
  ])('with %s is found out', (_fault, kinds) => {
    expect(familyComplaints({ name: 'bad family', kinds })).not.toEqual([]);
  });
});
