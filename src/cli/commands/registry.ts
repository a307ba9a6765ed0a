/** Every command, in the order of the help. */
import type { Command } from './command.ts';
import { run } from './run.ts';
import { supply } from './supply.ts';

export const commands: readonly Command[] = [run, supply];
