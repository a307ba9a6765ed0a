/** A bore and its rod that come out anywhere within the limits of their fit or their finishes. */
import { text } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { clearanceWords } from '../../parts/fits/clearance.ts';
import { deviationsOf, type Limits } from '../../parts/fits/limits-of-size.ts';
import { parseClearance } from '../../quantity/clearance.ts';
import { rampText } from '../variations/variation.ts';
import { place, shape } from './shape.ts';
import type { Strayed, Tolerance } from './tolerance.ts';

const MICROMETRE = 1e-6;

export const fit = kindOf({
  kind: 'fit',
  doc: 'A clearance whose bore and rod come out anywhere within the limits of their ISO fit or their finishes.',
  parameters: {
    setting: text(
      300,
      'Path of a clearance that the scenario or the study gives as a fit or as two finishes.',
    ),
    shape,
  },
  build: (own, _context: null): Tolerance => ({
    path: own.setting,
    words: `${own.setting} within its fit`,
    stray: (nominal, random): Strayed => {
      // Drawn before anything else, so that every engine takes as many numbers.
      const bore = place(own.shape, random);
      const rod = place(own.shape, random);
      const clearance = parseClearance(nominal.text, clearanceWords, 'H7/g6');
      if (!clearance.ok || clearance.value.by === 'gap' || nominal.diameter === undefined)
        return {
          ok: false,
          expected: 'a clearance given as a fit or two finishes there',
          received: `"${nominal.text}"`,
        };
      const deviations = deviationsOf(nominal.diameter, clearance.value);
      const gap = (within(deviations.bore, bore) - within(deviations.rod, rod)) / 2;
      return { ok: true, text: rampText(Math.max(0, gap) / MICROMETRE, 'um') };
    },
  }),
});

/** From −1 at the least to 1 at the most. */
const within = ({ least, most }: Limits, away: number): number =>
  (least + most) / 2 + (away * (most - least)) / 2;
