/** Every command, in the order of the help. */
import { check } from './check.ts';
import type { Command } from './command.ts';
import { compare } from './compare.ts';
import { completion } from './completion.ts';
import { draw } from './draw.ts';
import { explainCommand } from './explain.ts';
import { newCommand } from './new.ts';
import { run } from './run.ts';

export const commands: readonly Command[] = [
  newCommand,
  explainCommand,
  check,
  run,
  draw,
  compare,
  completion,
];
