/**
 * Builds dist/: the library and the command line by tsc, the report's browser script and style sheet by esbuild
 * into two files that the report writer pastes into its HTML.
 */
import { build } from 'esbuild';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { projectRoot, succeeds, toolPath } from './steps.mjs';

const client = join(projectRoot, 'src/report/client');

async function buildClient() {
  await build({
    entryPoints: [
      { in: join(client, 'main.ts'), out: 'client' },
      { in: join(client, 'style.css'), out: 'client' },
    ],
    outdir: join(projectRoot, 'dist/report'),
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    // Text outside ASCII would depend on the encoding the host page declares.
    charset: 'ascii',
    legalComments: 'inline',
    logLevel: 'warning',
  });
}

await rm(join(projectRoot, 'dist'), { recursive: true, force: true });
if (!succeeds(toolPath('tsc'), ['-p', '.config/tsconfig.build.json'])) process.exit(1);
await buildClient();
