/** What a command of the command line is: how it is called, and what it does. */
import type { Argv } from 'yargs';
import type { ExitCode } from '../exit-codes.ts';

/** What a command may do to the world besides files: say something, and end. */
export interface Session {
  /** A line for standard output. */
  readonly print: (text: string) => void;
  /** Does the command's work; turns whatever it throws into an exit code and words for the right person. */
  readonly guarded: (work: () => Promise<ExitCode>) => Promise<void>;
}

/** Adds a command with its arguments, help and examples. */
export type Command = (args: Argv, session: Session) => Argv;
