/** Every faulty scenario beside this file, with the exact text its author gets to read. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Attachments } from '../../src/scenario/attachments.ts';
import { problemListing } from '../../src/scenario/problem.ts';
import { readScenario } from '../../src/scenario/read-scenario.ts';

const folder = new URL('.', import.meta.url);
const files = readdirSync(folder);
const names = (extension: string) =>
  files.filter((file) => file.endsWith(extension)).map((file) => file.slice(0, -extension.length));
const contents = (file: string) => readFileSync(new URL(file, folder), 'utf8');

/** Tables that fixtures name stand beside them. */
const beside: Attachments = (path) =>
  files.includes(path) ? { ok: true, text: contents(path) } : { ok: false, reason: 'there is no such file' };

describe('messages for faulty scenarios', () => {
  it('has a text for each fixture and a fixture for each text', () => {
    expect(names('.yaml').length).toBeGreaterThan(0);
    expect(names('.txt')).toEqual(names('.yaml'));
  });

  it.each(names('.yaml'))('%s', (name) => {
    const reading = readScenario(contents(`${name}.yaml`), `${name}.yaml`, beside);
    const text = reading.ok ? 'nothing wrong' : problemListing(reading.problems);
    expect(`${text}\n`).toBe(contents(`${name}.txt`));
  });
});
