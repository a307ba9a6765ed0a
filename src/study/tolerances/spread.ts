/** A size that strays by so much either way. */
import { text } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import { readNumber } from '../../quantity/number.ts';
import { rampText } from '../variations/variation.ts';
import { place, shape } from './shape.ts';
import type { Tolerance } from './tolerance.ts';

export const spread = kindOf({
  kind: 'spread',
  doc: 'A size that strays by so much either way.',
  parameters: {
    setting: text(300, 'Path of the value in the scenario.'),
    plus_minus: text(80, 'How far it may stray either way, in the unit that the scenario uses there.'),
    shape,
  },
  complaints: ({ plus_minus }): readonly Complaint[] => {
    const most = readNumber(plus_minus, '0.1 mm');
    const expected = 'a number above zero with its unit';
    if (!most.ok)
      return [
        { path: ['plus_minus'], expected, received: `"${plus_minus}" (${most.reason})`, hint: most.hint },
      ];
    return most.value > 0 ? [] : [{ path: ['plus_minus'], expected, received: `"${plus_minus}"` }];
  },
  build: (own, _context: null): Tolerance => ({
    path: own.setting,
    words: `${own.setting} ± ${own.plus_minus}`,
    stray: (nominal, random) => {
      const away = place(own.shape, random);
      const [middle, most] = [readNumber(nominal.text, ''), readNumber(own.plus_minus, '')];
      if (!most.ok || !middle.ok || middle.rest !== most.rest)
        return {
          ok: false,
          expected: `the unit of the scenario there, "${nominal.text}"`,
          received: own.plus_minus,
        };
      return { ok: true, text: rampText(middle.value + away * most.value, middle.rest) };
    },
  }),
});
