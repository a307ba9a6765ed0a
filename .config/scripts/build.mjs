/**
 * Builds dist/: the library and the command line by tsc, the report's browser script and style sheet by esbuild
 * into two files that the report writer pastes into its HTML.
 */
import { build } from 'esbuild';
import { existsSync } from 'node:fs';
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { projectRoot, succeeds, toolPath } from './steps.mjs';

const clientFolder = join(projectRoot, 'src/report/client');
const clientScript = join(clientFolder, 'main.ts');
const clientStyle = join(clientFolder, 'style.css');
const plotStyle = join(projectRoot, 'node_modules/uplot/dist/uPlot.min.css');
const target = join(projectRoot, 'dist/report');

async function buildClient() {
  await mkdir(target, { recursive: true });
  await build({
    entryPoints: [clientScript],
    outfile: join(target, 'client.js'),
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    // Text outside ASCII would depend on the encoding the host page declares.
    charset: 'ascii',
    legalComments: 'inline',
    logLevel: 'warning',
  });
  const styles = await Promise.all([plotStyle, clientStyle].map((file) => readFile(file, 'utf8')));
  await writeFile(join(target, 'client.css'), styles.join('\n'));
}

await rm(join(projectRoot, 'dist'), { recursive: true, force: true });
if (!succeeds(toolPath('tsc'), ['-p', '.config/tsconfig.build.json'])) process.exit(1);
if (existsSync(clientScript)) await buildClient();
else console.log('build: no src/report/client/main.ts, report script left out');
