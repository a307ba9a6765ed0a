/** What the scripts beside this file share: where the project is, and how to run a tool of its own. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const projectRoot = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Path of a command that an installed package provides.
 * @param {string} name
 */
export function toolPath(name) {
  return join(projectRoot, 'node_modules', '.bin', name);
}

/**
 * Runs a command in the project with its output on the terminal; true when it succeeded.
 * @param {string} command
 * @param {readonly string[]} args
 */
export function succeeds(command, args) {
  const done = spawnSync(command, args, { cwd: projectRoot, stdio: 'inherit' });
  if (done.error) console.error(`${command}: ${done.error.message}`);
  return done.status === 0;
}
