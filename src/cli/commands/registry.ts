/** Every command, in the order of the help. */
import type { Command } from './command.ts';
import { run } from './run.ts';
import { sweep } from './sweep.ts';

export const commands: readonly Command[] = [run, sweep];
