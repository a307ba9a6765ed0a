/**
 * Compiles the kernel, src/kernel, to WebAssembly and writes it as a module of letters, src/kernel/wasm/kernel-bytes.ts.
 *
 * The kernel is TypeScript that two compilers take: plain, for types and tests, and AssemblyScript, for speed. Where the two
 * cannot say the same, a file `x.wasm.ts` stands in for `x.ts`.
 *
 * Whatever needs the kernel asks for it here first. What was written says of which sources it was made, and the compiler,
 * five seconds' work, is called only when they have changed since.
 */
import { Buffer } from 'node:buffer';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { projectRoot } from './steps.mjs';

const folder = join(projectRoot, 'src/kernel');
const target = join(folder, 'wasm/kernel-bytes.ts');

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

/** Of everything the bytes depend on: the sources, this script and the release of the compiler. */
function digest() {
  const sources = readdirSync(folder)
    .filter((name) => name.endsWith('.ts'))
    .sort()
    .map((name) => join(folder, name));
  const others = ['.config/scripts/kernel.mjs', 'node_modules/assemblyscript/package.json'];
  const hash = createHash('sha256');
  for (const path of [...sources, ...others.map((name) => join(projectRoot, name))])
    hash.update(`${path.slice(projectRoot.length)}\n`).update(readFileSync(path));
  return hash.digest('hex');
}

/**
 * Puts small functions, with loops too, where they are called. The engine of Node calls WebAssembly functions as they stand,
 * and a tenth of a step is calls.
 * @param {Uint8Array} bytes
 */
async function inlined(bytes) {
  const { default: binaryen } = await import('binaryen');
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

async function compiled() {
  const { default: asc } = await import('assemblyscript/asc');
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
  return inlined(bytes);
}

/** Makes sure that the kernel on disk is that of the sources; whether it had to be compiled. */
export async function buildKernel() {
  const heading = `/** Written by .config/scripts/kernel.mjs, of sources ${digest()}. */\n`;
  if (existsSync(target) && readFileSync(target, 'utf8').startsWith(heading)) return false;
  const letters = Buffer.from(await compiled()).toString('base64');
  await mkdir(join(folder, 'wasm'), { recursive: true });
  await writeFile(target, `${heading}export const KERNEL_BYTES =\n  '${letters}';\n`);
  return true;
}

if (process.argv[1]?.endsWith('kernel.mjs'))
  console.log(`kernel: ${(await buildKernel()) ? 'compiled' : 'as its sources are already'}`);
