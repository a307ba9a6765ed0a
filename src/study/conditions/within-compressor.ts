/** The compressor can feed it for good. */
import { pureNumber } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { FAR_OFF, lacking, type Condition } from './condition.ts';

const percent = (share: number): string => `${Number((100 * share).toPrecision(3))} %`;

export const withinCompressor = kindOf({
  kind: 'within the compressor',
  doc: 'The compressor keeps up with it, running no more than a share of the time; the scenario must describe one.',
  parameters: {
    duty: pureNumber({ min: 0.05, max: 1, default: 1 }, '60 %', 'Largest share of the time that it may run.'),
  },
  build: ({ duty }, _context: null): Condition => ({
    words: `stays within the compressor (running at most ${percent(duty)} of the time)`,
    margin: ({ values: { compressorDuty } }) =>
      compressorDuty === undefined ? FAR_OFF : lacking(1 - compressorDuty / duty),
  }),
});
