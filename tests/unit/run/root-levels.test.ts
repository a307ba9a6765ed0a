/** Near the root of settled running: turns of ever closer levels, and when one is left for the next. */
import { describe, expect, it } from 'vitest';
import { SLOT } from '../../../src/model/slots.ts';
import { levelOf, settleByRoot } from '../../../src/run/settled-root.ts';
import { expectWithin } from '../../support/expect-within.ts';
import {
  atFirst,
  leading,
  levelByLaw,
  noisy,
  rootSystem,
  straight,
  type AskedLevel,
} from '../../support/level-by-law.ts';
import { stepperByLaw } from '../../support/stepper-by-law.ts';

describe('near the root, with its slope', () => {
  it('every turn serves to find all unknowns together', () => {
    const levels = [levelByLaw({ gain: straight, ...leading }), levelByLaw({ gain: straight })] as const;
    const y = atFirst(42);
    const search = settleByRoot(rootSystem, y, levels, 0.2 * 40);
    expect(search.kind).toBe('settled');
    expect(search.turns).toBeLessThanOrEqual(6);
    expectWithin(y[SLOT.speed]!, 40, 1e-3);
  });
});

describe('turns of ever closer levels', () => {
  const rough = () => levelByLaw({ gain: (speed) => straight(speed) - 0.2, ...leading });

  it('end at the first that is close enough', () => {
    const levels = [rough(), levelByLaw({ gain: straight }), levelByLaw({ gain: straight })] as const;
    const y = atFirst(38);
    const search = settleByRoot(rootSystem, y, levels, 8);
    expect(search).toMatchObject({ kind: 'settled', level: 1 });
    expect(search.turns).toBe(levels[0].asked.length + levels[1].asked.length);
    expect(levels[2].asked).toEqual([]);
    expectWithin(y[SLOT.speed]!, 40, 1e-3);
  });

  it('go on to the closer one where one never comes to repeat itself, and end with it', () => {
    const fine = (): AskedLevel => levelByLaw({ gain: straight });
    const levels = [rough(), noisy(fine()), noisy(fine())] as const;
    const search = settleByRoot(rootSystem, atFirst(38), levels, 8);
    expect(search.kind).toBe('lost');
    expect(levels[1].asked).toHaveLength(6);
    expect(levels[2].asked).toHaveLength(15);
    const good = [rough(), noisy(fine()), fine()] as const;
    expect(settleByRoot(rootSystem, atFirst(38), good, 8)).toMatchObject({ kind: 'settled', level: 2 });
    expect(good[2].asked.length).toBeLessThan(8);
  });

  it('leave a level that only leads as soon as it repeats itself, or after three turns near the root', () => {
    const near = levelByLaw({ gain: straight, speed: 0.05, gas: 0.5, enough: false });
    settleByRoot(rootSystem, atFirst(39), [near, levelByLaw({ gain: straight })], 8);
    expect(near.asked).toHaveLength(2);
    const never = levelByLaw({ gain: straight, speed: 0, gas: 0, enough: false });
    settleByRoot(rootSystem, atFirst(39), [never, levelByLaw({ gain: straight })], 8);
    expect(never.asked).toHaveLength(3);
  });

  it.each([
    { offset: 0.2, most: 4 },
    { offset: 1, most: 5 },
    { offset: 2, most: 6 },
  ])('do not take what tells two levels apart, here $offset J, for something learnt', ({ offset, most }) => {
    const rough = levelByLaw({ gain: (speed) => straight(speed) - offset, ...leading });
    const fine = levelByLaw({ gain: straight, speed: 1e-5, gas: 1e-4 });
    expect(settleByRoot(rootSystem, atFirst(42), [rough, fine], 5).kind).toBe('settled');
    expect(fine.asked.length).toBeLessThanOrEqual(most);
  });

  it('that all lead only find nothing', () => {
    expect(settleByRoot(rootSystem, atFirst(39), [rough()], 8)).toMatchObject({ kind: 'lost' });
  });
});

describe('a level that runs turns by a stepper', () => {
  it('hands over the state a turn later, leaves the one before, and says why a turn ended early', () => {
    const y = atFirst(20);
    const close = { speed: 1, gas: 2, enough: true };
    const level = levelOf(stepperByLaw({}).stepper, close);
    expect(level).toMatchObject(close);
    const after = level.turn(y) as Float64Array;
    expect(after[SLOT.crankAngle]).toBe(2 * Math.PI);
    expect(y).toEqual(atFirst(20));
    expect(level.turn(atFirst(0.1))).toEqual({ reason: 'slow' });
  });
});
