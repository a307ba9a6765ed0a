/**
 * Builds the kernel, then dist/: the library by tsc; the command line by esbuild into one file, because loading a thousand small ones
 * takes five times as long as most runs wait for; the report's browser script and style sheet by esbuild into two files
 * that the report writer pastes into its HTML.
 */
import { build } from 'esbuild';
import { chmod, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { buildKernel } from './kernel.mjs';
import { projectRoot, succeeds, toolPath } from './steps.mjs';

const client = join(projectRoot, 'src/report/client');

async function buildClient() {
  const notice = `/*!\n${(await licenceOf('uplot')).replaceAll('*/', '* /')}\n*/`;
  await build({
    banner: { js: notice, css: notice },
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

/**
 * Packages that became part of bundles, by the paths of their files.
 * @param {readonly import('esbuild').Metafile[]} metafiles
 */
function packagesIn(metafiles) {
  const paths = metafiles.flatMap(({ inputs }) => Object.keys(inputs));
  const names = paths.flatMap((path) => /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1] ?? []);
  return [...new Set(names)].sort();
}

/**
 * The licence text of an installed package, as its authors ask to be passed on.
 * @param {string} name
 */
async function licenceOf(name) {
  const folder = join(projectRoot, 'node_modules', name);
  const { version, license } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8'));
  const files = (await readdir(folder)).filter((file) => /^(licen[cs]e|notice|copying)/i.test(file)).sort();
  const texts = await Promise.all(files.map((file) => readFile(join(folder, file), 'utf8')));
  return [`${name} ${version} (${license})`, ...texts].join('\n\n');
}

/** The command, and the worker of its studies beside it: each a file of its own, so that a thread loads the model and no pages. */
async function buildCommandLine() {
  const cli = join(projectRoot, 'src/cli');
  const bundles = await Promise.all(
    [
      { in: join(cli, 'main.ts'), out: 'main' },
      { in: join(cli, 'studies/worker.ts'), out: 'study-worker' },
    ].map((entryPoint) =>
      build({
        entryPoints: [entryPoint],
        outdir: join(projectRoot, 'dist/cli'),
        bundle: true,
        // Whitespace and names stay, so that a stack trace in a fault report can be read.
        minifySyntax: true,
        platform: 'node',
        target: 'node20',
        format: 'esm',
        metafile: true,
        // Bundled CommonJS packages ask for Node's own modules by `require`.
        banner: {
          js: "import { createRequire as requireOf } from 'node:module';\nconst require = requireOf(import.meta.url);",
        },
        logLevel: 'warning',
      }),
    ),
  );
  await chmod(join(projectRoot, 'dist/cli/main.js'), 0o755);
  const licences = await Promise.all(packagesIn(bundles.map(({ metafile }) => metafile)).map(licenceOf));
  await writeFile(
    join(projectRoot, 'dist/cli/LICENCES-OF-PARTS.txt'),
    `${licences.join(`\n\n${'-'.repeat(80)}\n\n`)}\n`,
  );
}

await buildKernel();
await rm(join(projectRoot, 'dist'), { recursive: true, force: true });
if (!succeeds(toolPath('tsc'), ['-p', '.config/tsconfig.build.json'])) process.exit(1);
await Promise.all([buildClient(), buildCommandLine()]);
