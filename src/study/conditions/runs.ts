/** It runs at all. */
import { kindOf } from '../../kinds/kind.ts';
import { runs as doesRun } from '../engine-answer.ts';
import { FAR_OFF, type Condition } from './condition.ts';

export const runs = kindOf({
  kind: 'runs',
  doc: 'It starts from where the scenario starts it, and settles.',
  parameters: {},
  build: (_own, _context: null): Condition => ({
    words: 'runs',
    margin: (answer) => (doesRun(answer) ? 1 : FAR_OFF),
  }),
});
