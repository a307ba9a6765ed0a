/** A new scenario runs as it stands, explains every key, and stays readable when everything in it is given. */
import { describe, expect, it } from 'vitest';
import { engineParameters, readScenario, runEngine } from '../../../src/index.ts';
import { describedKeys } from '../../../src/scenario/described-keys.ts';
import { newScenario, valveGearKinds } from '../../../src/scenario/new-scenario.ts';
import { readDescription } from '../../../src/scenario/read-description.ts';
import type { Attachments } from '../../../src/scenario/attachments.ts';

const beside =
  (files: Readonly<Record<string, string>>): Attachments =>
  (path) => {
    const text = files[path];
    return text === undefined ? { ok: false, reason: 'there is no such file' } : { ok: true, text };
  };

const isKey = (line: string): boolean => /^#?\s*(- )?[a-z_]+:/u.test(line);
const isRemark = (line: string): boolean => /^ *# /u.test(line);

describe.each(valveGearKinds)('a new scenario with %s', (gear) => {
  const { text, files } = newScenario(gear);
  const lines = text.trimEnd().split('\n');

  it('settles', () => {
    const reading = readScenario(text, 'new.yaml', beside(files));
    expect(reading.ok ? [] : reading.problems).toEqual([]);
    if (reading.ok) expect(runEngine(reading.spec).outcome.kind).toBe('settled');
  });

  it('says of every key what it is, in lines that fit a screen', () => {
    const bare = lines.filter((line, i) => isKey(line) && !isRemark(lines[i - 1] ?? ''));
    // A kind that is chosen, the list entry it opens, and the first key of a group that is explained above it.
    expect(bare.filter((line) => !/^#?\s*(- )?kind:/u.test(line))).toEqual([]);
    expect(lines.filter((line) => line.length > 100)).toEqual([]);
  });

  it('is still a scenario by its form when all that is left out is given', () => {
    const whole = lines
      .map((line) => (/^#\s*[a-z_]+:|^# {2,}- /u.test(line) ? line.slice(1) : line))
      .join('\n');
    expect(whole).not.toBe(text.trimEnd());
    const reading = readDescription(whole, 'whole.yaml', engineParameters, beside(files));
    expect(reading.ok ? [] : reading.problems).toEqual([]);
  });

  it('names every key of its gear and every key outside the parts', () => {
    const keys = describedKeys(engineParameters)
      .filter(({ kinds }) => kinds.length === 0 || kinds[0] === gear)
      .map(({ path }) => path.at(-1) ?? '');
    const named = new Set(lines.map((line) => /^#?\s*(?:- )?([a-z_]+):/u.exec(line)?.[1]));
    expect(keys.filter((key) => !named.has(key))).toEqual([]);
  });
});
