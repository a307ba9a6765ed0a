/** Files beside a scenario: only its own folder and below, only plain files, only text, and not too much of it. */
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { attachmentsOf } from '../../../src/cli/scenario-file.ts';
import { emptyFolder } from '../../end-to-end/command.ts';

const folder = emptyFolder();
const own = join(folder, 'own');
mkdirSync(join(own, 'below'), { recursive: true });
for (const name of ['own/areas.csv', 'own/below/areas.csv', 'outside.csv'])
  writeFileSync(join(folder, name), name);
mkdirSync(join(own, 'folder.csv'));
writeFileSync(join(own, 'odd..name.csv'), 'odd');
writeFileSync(join(own, 'large.csv'), Buffer.alloc(4_000_001, '0'));
writeFileSync(join(own, 'binary.csv'), Buffer.from([0xff, 0xfe, 0xfd]));
symlinkSync('round.csv', join(own, 'round.csv'));

const read = attachmentsOf(join(own, 'engine.yaml'));
const reason = (path: string): string => {
  const attachment = read(path);
  return attachment.ok ? 'read' : attachment.reason;
};

describe('a file that a scenario names', () => {
  it('is read from its folder and below', () => {
    expect(read('areas.csv')).toEqual({ ok: true, text: 'own/areas.csv' });
    expect(read('below/areas.csv')).toEqual({ ok: true, text: 'own/below/areas.csv' });
    expect(read('./areas.csv').ok).toBe(true);
    expect(read('odd..name.csv').ok).toBe(true);
  });

  it.each([
    '../outside.csv',
    'below/../../outside.csv',
    '..\\outside.csv',
    join(folder, 'outside.csv'),
    'C:\\outside.csv',
    '\\outside.csv',
    'C:outside.csv',
    'file:///outside.csv',
  ])('is not read from elsewhere: %s', (path) => {
    expect(reason(path)).toContain("scenario's folder");
  });

  it.each([
    ['none.csv', 'there is no such file'],
    ['folder.csv', 'it is a folder, not a file'],
    ['large.csv', 'it holds 4.0 MB; a few kB are usual'],
    ['binary.csv', 'it is not UTF-8 text; save it as UTF-8 in a text editor'],
    ['round.csv', 'its links go round in a circle'],
    ['areas.csv/areas.csv', 'part of the path is not a folder'],
  ])('may be unreadable: %s', (path, expected) => {
    expect(reason(path)).toBe(expected);
  });
});
