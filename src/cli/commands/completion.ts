/** `tickover completion`: a script that teaches the shell the commands, options and keys. */
import { describedKeys, engineParameters } from '../../index.ts';
import type { Command } from './command.ts';

interface Typed {
  /** The words so far. */
  readonly _: readonly (string | number)[];
}

function complete(
  _current: string,
  typed: Typed,
  byDefault: () => void,
  done: (completions: string[]) => void,
): void {
  if (typed._.includes('explain')) done(keysToExplain());
  else byDefault();
}

const keysToExplain = (): string[] => [
  ...new Set(describedKeys(engineParameters).map(({ path }) => path.join('.'))),
];

/** Its name alone prints the script, whatever stands beside it, so its example is in the help of all. */
export const completion: Command = (args) =>
  args
    .completion(
      'completion',
      'Print a script for the shell, so that it completes commands, options and keys.',
      complete,
    )
    .example('$0 completion >> ~/.bashrc', 'teaches the shell, once');
