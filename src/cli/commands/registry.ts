/** Every command, in the order of the help. */
import { check } from './check.ts';
import type { Command } from './command.ts';
import { compare } from './compare.ts';
import { completion } from './completion.ts';
import { explainCommand } from './explain.ts';
import { newCommand } from './new.ts';
import { run } from './run.ts';
import { supply } from './supply.ts';

export const commands: readonly Command[] = [
  newCommand,
  explainCommand,
  check,
  run,
  compare,
  supply,
  completion,
];
