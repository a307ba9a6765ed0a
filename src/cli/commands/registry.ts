/** Every command, in the order of the help. */
import { best } from './best.ts';
import type { Command } from './command.ts';
import { limit } from './limit.ts';
import { merge } from './merge.ts';
import { next } from './next.ts';
import { odds } from './odds.ts';
import { run } from './run.ts';
import { sweep } from './sweep.ts';

export const commands: readonly Command[] = [run, next, sweep, best, limit, odds, merge];
