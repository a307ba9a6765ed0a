/** Every kind of entry. To add one: a file beside this one and a line here. */
import type { AttemptFamily } from './attempt.ts';
import { didNotRun } from './did-not-run.ts';
import { measured } from './measured.ts';
import { ran } from './ran.ts';

export const attemptKinds: AttemptFamily = { name: 'attempt', kinds: [ran, didNotRun, measured] };
