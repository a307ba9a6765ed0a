/** Every command, in the order of the help. */
import type { Command } from './command.ts';
import { draw } from './draw.ts';
import { run } from './run.ts';

export const commands: readonly Command[] = [run, draw];
