/** Every command, in the order of the help. */
import type { Command } from './command.ts';
import { attempts } from './attempts.ts';
import { bench } from './bench.ts';
import { run } from './run.ts';
import { why } from './why.ts';

export const commands: readonly Command[] = [run, bench, attempts, why];
