/** The compressor can feed it for good. */
import { pureNumber } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { FAR_OFF, type Condition } from './condition.ts';

const percent = (share: number): string => `${Number((100 * share).toPrecision(3))} %`;

export const withinCompressor = kindOf({
  kind: 'within the compressor',
  doc: 'The compressor keeps up with it, running no more than a share of the time; the scenario must describe one.',
  parameters: {
    duty: pureNumber({ min: 0.05, max: 1, default: 1 }, '60 %', 'Largest share of the time that it may run.'),
  },
  build: ({ duty }, _context: null): Condition => ({
    words: `stays within the compressor, running at most ${percent(duty)} of the time`,
    margin: ({ values }) => compressorMargin(values.compressorDuty, values.lasts, duty),
  }),
});

/** A duty of all the time may mean any lack of air; how long a receiver lasts then tells how much. */
function compressorMargin(used: number | undefined, lasts: number | undefined, allowed: number): number {
  if (used === undefined || lasts === undefined) return FAR_OFF;
  if (Number.isFinite(lasts)) return Math.min(-1e-3, -(1 - allowed)) - 1 / (1 + lasts);
  return 1 - used / allowed;
}
