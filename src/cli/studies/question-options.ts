/** What the commands that ask a study a question have in common. */
import type { ExitCode } from '../exit-codes.ts';
import { InputError } from '../exit-codes.ts';
import type { UnitSystem } from '../../index.ts';
import { unitsOption } from '../options.ts';
import { jsonOption, outOption, quietOption, setOption, workersOption } from '../commands/study-options.ts';

export const questionOptions = {
  set: setOption,
  out: outOption,
  workers: workersOption,
  json: jsonOption,
  quiet: quietOption,
  ...unitsOption,
} as const;

export interface QuestionOptions {
  readonly file: string;
  readonly set: readonly string[];
  readonly out: string | undefined;
  readonly workers: number | undefined;
  readonly json: boolean;
  readonly quiet: boolean;
  readonly units: UnitSystem;
}

export type Asker = (options: QuestionOptions, print: (text: string) => void) => Promise<ExitCode>;

/** A study that does not ask what the command answers. */
export const notAsked = (file: string, key: string, example: string): InputError =>
  new InputError(`${file}: the study has no "${key}". Add it, for example:\n\n${example}`);
