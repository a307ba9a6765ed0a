/**
 * A share of the lines of a folder, drawn by lot, always the same ones: the lot falls by the words of a line, so that a change
 * elsewhere in the file changes nothing here.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectRoot } from './steps.mjs';

/**
 * The lines as Stryker's option `mutate` wants them, `src/gas/gap.ts:12-12`.
 * @param {string} folder
 * @param {number} share
 */
export function drawnLines(folder, share) {
  const files = readdirSync(join(projectRoot, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${folder}/${name}`);
  return files.flatMap((file) =>
    readFileSync(join(projectRoot, file), 'utf8')
      .split('\n')
      .flatMap((text, index) =>
        lot(`${file} ${text.trim()}`) < share ? [`${file}:${index + 1}-${index + 1}`] : [],
      ),
  );
}

/**
 * A number from 0 to 1 that belongs to a text.
 * @param {string} text
 */
function lot(text) {
  return createHash('sha256').update(text).digest().readUInt32BE() / 2 ** 32;
}
