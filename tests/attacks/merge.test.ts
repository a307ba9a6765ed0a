/** Shards put together by a command that is killed: nothing half-written looks whole, no row passes for another study's. */
import { cpSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, tickover } from '../end-to-end/command.ts';
import { toyStudy, twelve } from '../end-to-end/studies/toy.ts';
import { contentsOf, expectOnlyWhole, failing, inFull } from './half-way.ts';

describe('merge, killed half way', () => {
  const sharded = toyStudy(twelve);
  const sweep = ['sweep', 'study.yaml', '--workers', '1', '--quiet', '--out'];
  for (const shard of ['1/2', '2/2']) tickover(sharded, ...sweep, 'out', '--shard', shard);
  const shards = contentsOf(join(sharded, 'out'));
  const merged = emptyFolder();
  cpSync(join(sharded, 'out'), join(merged, 'out'), { recursive: true });
  tickover(merged, 'merge', 'out');
  const whole = contentsOf(join(merged, 'out'));
  /** A table is added to and named, so are the lines; the sheet is written and named. */
  const changes = 6;

  it.each(Array.from({ length: changes }, (_, i) => i + 1))(
    'at change %i leaves shards and whole files, and does it all when it is run again',
    (at) => {
      const folder = emptyFolder();
      cpSync(join(sharded, 'out'), join(folder, 'out'), { recursive: true });
      writeFileSync(join(folder, 'out/sweep.study.json'), 'of an earlier sweep');
      expect(failing(folder, at, 'SIGKILL', 'merge', 'out').signal).toBe('SIGKILL');
      const left = contentsOf(join(folder, 'out'));
      const sheet = 'sweep.study.json';
      expectOnlyWhole(left, shards, whole, new Map([[sheet, 'of an earlier sweep']]));
      for (const [name, text] of shards) expect(left.get(name), name).toBe(text);
      // A sheet of another study never stands beside rows of this one.
      if (left.has('sweep.csv') || left.has('sweep.jsonl')) expect(left.has(sheet)).toBe(false);
      expect(tickover(folder, 'merge', 'out').status).toBe(0);
      const again = [...contentsOf(join(folder, 'out'))].filter(inFull);
      expect(new Map(again)).toEqual(whole);
    },
  );
});
