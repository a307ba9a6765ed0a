import { expect, it } from 'vitest';
import { openSource, type Source } from '../../../src/scenario/source.ts';
import { differentKeys, writtenValues } from '../../../src/scenario/written-values.ts';

function source(text: string): Source {
  const opened = openSource(text, 'x.yaml');
  if (!opened.ok) throw new Error('not a source');
  return opened.source;
}

it('values are found as written, in groups, lists and behind aliases', () => {
  const text =
    'a: &size 5 mm\nb: { c: 1e3, d: *size }\nleaks:\n  - kind: hole\n  - kind: gland\nnotes: >\n  two\n  lines\n';
  expect([...writtenValues(source(text))]).toEqual([
    ['a', '5 mm'],
    ['b.c', '1e3'],
    ['b.d', '5 mm'],
    ['leaks.0.kind', 'hole'],
    ['leaks.1.kind', 'gland'],
    ['notes', 'two lines'],
  ]);
});

it('differences leave out what is alike and what only people read', () => {
  const sources = [
    'title: A\nx: 1 mm\ny: 2 mm',
    'title: B\nx: 1 mm\ny: 3 mm',
    'title: C\nx: 1 mm\nz: 4 mm',
  ].map(source);
  expect(differentKeys(sources)).toEqual([
    { key: 'y', values: ['2 mm', '3 mm', undefined] },
    { key: 'z', values: [undefined, undefined, '4 mm'] },
  ]);
  expect(differentKeys([sources[0]!, sources[0]!])).toEqual([]);
});
