/** Every kind of leak, and the hose, keeps the contract of passages; a bad one is found out. */
import { describe, expect, it } from 'vitest';
import { leaks } from '../../src/parts/leaks/registry.ts';
import type { Passage } from '../../src/parts/passage.ts';
import { hosePassage } from '../../src/parts/supply.ts';
import { referenceSpec } from '../support/reference-engine.ts';
import { context, possibleContext, samplesOf } from './context.ts';
import { passageComplaints } from './contract-of-passages.ts';

describe.each(leaks.kinds)('the leak $kind', (kind) => {
  const own = possibleContext(kind.kind);

  it('keeps the contract of passages', () => {
    const complaints = samplesOf(kind, 12, 3, own).flatMap((choice) =>
      passageComplaints(choice.build(own), [0, 1]),
    );
    expect(complaints).toEqual([]);
  });

  it('is a leak that the crank does not change', () => {
    const passages = samplesOf(kind, 5, 3, own).map((choice) => choice.build(own));
    const flow = (passage: Passage, angle: number): number => passage.massFlow(angle, 4e5, 290, 1e5, 290, 20);
    for (const passage of passages) {
      expect(passage.role).toBe('leak');
      expect(flow(passage, 2)).toBe(flow(passage, 0));
    }
  });
});

it('the hose keeps the contract of passages', () => {
  expect(passageComplaints(hosePassage(referenceSpec().supply, context.gas), [0])).toEqual([]);
});

describe('a bad passage', () => {
  const good: Passage = {
    name: 'plain',
    role: 'leak',
    from: 'cylinder',
    to: 'atmosphere',
    massFlow: (_angle, p1, _t1, p2) => 1e-8 * (p1 - p2),
  };
  const withFlow = (massFlow: Passage['massFlow']): Passage => ({ ...good, massFlow });

  it('would be a good one but for one thing', () => {
    expect(passageComplaints(good, [0])).toEqual([]);
  });

  it.each([
    ['never flows back', withFlow((_a, p1, _t1, p2) => Math.max(0, p1 - p2))],
    ['flows between equal pressures', withFlow((_a, p1, _t1, p2) => p1 - p2 + 1e-3)],
    ['flows uphill', withFlow((_a, p1, _t1, p2) => p2 - p1)],
    [
      'passes less the more it is pushed',
      withFlow((_a, p1, _t1, p2) => (p1 - p2) * Math.exp(-(((p1 - p2) / 1e5) ** 2))),
    ],
    [
      'jumps as it chokes',
      withFlow((_a, p1, _t1, p2) => Math.sign(p1 - p2) * (Math.abs(p1 - p2) > 5e4 ? 2 : 1)),
    ],
    ['is sometimes not a number', withFlow((_a, p1, _t1, p2) => (p1 > 2e6 ? NaN : p1 - p2))],
    ['leads nowhere', { ...good, to: 'cylinder' as const }],
    ['has no name', { ...good, name: ' ' }],
  ])('that %s is found out', (_fault, passage) => {
    expect(passageComplaints(passage, [0])).not.toEqual([]);
  });
});
