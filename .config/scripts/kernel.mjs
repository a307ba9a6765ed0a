/**
 * Compiles the kernel, src/kernel, to WebAssembly and writes it as a module of letters, src/kernel/wasm/kernel-bytes.ts.
 *
 * The kernel is TypeScript that two compilers take: plain, for types and tests, and AssemblyScript, for speed. Where the two
 * cannot say the same, a file `x.wasm.ts` stands in for `x.ts`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import asc from 'assemblyscript/asc';
import binaryen from 'binaryen';
import { projectRoot } from './steps.mjs';

const folder = join(projectRoot, 'src/kernel');
const target = join(folder, 'wasm');

/** As numerics/kernel.ts makes them. */
const PAGES = '256';

/** @param {string} name */
function read(name) {
  const path = [name.replace(/\.ts$/, '.wasm.ts'), name].map((own) => join(folder, own)).find(existsSync);
  if (path === undefined) return null;
  // Its imports know neither endings nor types.
  return readFileSync(path, 'utf8')
    .replace(/\.ts';/g, "';")
    .replace(/^import type/gm, 'import')
    .replace(/^import \{[^}]*\}/gm, (names) => names.replace(/\btype /g, ''));
}

/**
 * Puts small functions, with loops too, where they are called. The engine of Node calls WebAssembly functions as they stand,
 * and a tenth of a step is calls.
 * @param {Uint8Array} bytes
 */
function inlined(bytes) {
  const module = binaryen.readBinary(bytes);
  const { MVP, MutableGlobals, SignExt, NontrappingFPToInt, BulkMemory } = binaryen.Features;
  module.setFeatures(MVP | MutableGlobals | SignExt | NontrappingFPToInt | BulkMemory);
  binaryen.setOptimizeLevel(3);
  binaryen.setShrinkLevel(0);
  binaryen.setAlwaysInlineMaxSize(40);
  binaryen.setFlexibleInlineMaxSize(200);
  binaryen.setOneCallerInlineMaxSize(3000);
  binaryen.setAllowInliningFunctionsWithLoops(true);
  module.optimize();
  module.optimize();
  return module.emitBinary();
}

export async function buildKernel() {
  /** @type {Uint8Array | undefined} */
  let bytes;
  const memory = ['--importMemory', '--initialMemory', PAGES, '--maximumMemory', PAGES];
  const options = ['-O3', '--converge', '--noAssert', '--runtime', 'stub', ...memory];
  const { error, stderr } = await asc.main(['main.ts', '--outFile', 'kernel.wasm', ...options], {
    readFile: read,
    writeFile: (_name, contents) => {
      if (contents instanceof Uint8Array) bytes = contents;
    },
    listFiles: () => [],
  });
  if (error || bytes === undefined) throw new Error(`the kernel cannot be compiled:\n${stderr.toString()}`);
  await mkdir(target, { recursive: true });
  const module = inlined(bytes);
  const letters = Buffer.from(module).toString('base64');
  await writeFile(
    join(target, 'kernel-bytes.ts'),
    `/** Written by .config/scripts/kernel.mjs. */\nexport const KERNEL_BYTES =\n  '${letters}';\n`,
  );
  return module.length;
}

if (process.argv[1]?.endsWith('kernel.mjs')) console.log(`kernel: ${await buildKernel()} bytes`);
