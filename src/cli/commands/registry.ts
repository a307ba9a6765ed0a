/** Every command, in the order of the help. */
import { attempts } from './attempts.ts';
import { bench } from './bench.ts';
import { best } from './best.ts';
import { check } from './check.ts';
import type { Command } from './command.ts';
import { compare } from './compare.ts';
import { completion } from './completion.ts';
import { draw } from './draw.ts';
import { explainCommand } from './explain.ts';
import { limit } from './limit.ts';
import { merge } from './merge.ts';
import { newCommand } from './new.ts';
import { next } from './next.ts';
import { odds } from './odds.ts';
import { run } from './run.ts';
import { supply } from './supply.ts';
import { sweep } from './sweep.ts';
import { why } from './why.ts';

export const commands: readonly Command[] = [
  newCommand,
  explainCommand,
  check,
  run,
  compare,
  supply,
  draw,
  next,
  sweep,
  best,
  limit,
  odds,
  merge,
  bench,
  attempts,
  why,
  completion,
];
