/**
 * `npm run bench [part of a scenario's name, or studies]`: bundles tests/bench as the command is bundled, and runs it. It measures in
 * processes of its own, which need the garbage collector at hand.
 */
import { build } from 'esbuild';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { projectRoot } from './steps.mjs';

const folder = mkdtempSync(join(tmpdir(), 'tickover-bench-'));
const outfile = join(folder, 'bench.mjs');
await build({
  entryPoints: [join(projectRoot, 'tests/bench/main.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  // Bundled CommonJS packages ask for Node's own modules by `require`.
  banner: {
    js: "import { createRequire as requireOf } from 'node:module';\nconst require = requireOf(import.meta.url);",
  },
  logLevel: 'warning',
});
const done = spawnSync(process.execPath, [outfile, projectRoot, ...process.argv.slice(2)], {
  stdio: 'inherit',
});
rmSync(folder, { recursive: true });
process.exitCode = done.status ?? 1;
