/** What `npm run mutation` may be asked to break: three rooms, and a fourth in two halves. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { projectRoot } from './steps.mjs';

/** What the minutes of supply need of `src/run`, besides a folder of their own. */
const ofSupply = /^src\/run\/(supply\/.*|compressor-verdict|moisture|operating-points|outcome-words)\.ts$/;

/** @type {Readonly<Record<string, (file: string) => boolean>>} */
const areas = {
  gas: (file) => file.startsWith('src/gas/'),
  parts: (file) => file.startsWith('src/parts/'),
  kernel: (file) => /^src\/kernel\/[^/]+(?<!\.wasm)\.ts$/.test(file),
  supply: (file) => ofSupply.test(file),
  run: (file) => file.startsWith('src/run/') && !ofSupply.test(file),
};

/** @param {string} area */
export function mutatedFiles(area) {
  const belongs = areas[area];
  if (!belongs) throw new Error(`TICKOVER_MUTATE is ${area}; it may be ${Object.keys(areas).join(', ')}`);
  return readdirSync(join(projectRoot, 'src'), { recursive: true, encoding: 'utf8' })
    .map((name) => `src/${name}`)
    .filter((name) => name.endsWith('.ts') && belongs(name))
    .sort();
}
