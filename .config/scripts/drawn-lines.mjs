/**
 * A share of the lines of some files, drawn by lot, always the same ones: the lot falls by the words of a line, so that a
 * change elsewhere in the file changes nothing here.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectRoot } from './steps.mjs';

/**
 * The lines as Stryker's option `mutate` wants them, `src/gas/gap.ts:12-12`: those with a lot from one number up to
 * another, so that a second sample can begin where a first one ended.
 * @param {readonly string[]} files
 * @param {number} from
 * @param {number} to
 */
export function drawnLines(files, from, to) {
  return files.flatMap((file) =>
    readFileSync(join(projectRoot, file), 'utf8')
      .split('\n')
      .flatMap((text, index) => {
        const drawn = lot(`${file} ${text.trim()}`);
        return drawn >= from && drawn < to ? [`${file}:${index + 1}-${index + 1}`] : [];
      }),
  );
}

/**
 * A number from 0 to 1 that belongs to a text.
 * @param {string} text
 */
function lot(text) {
  return createHash('sha256').update(text).digest().readUInt32BE() / 2 ** 32;
}
