import { describe, expect, it } from 'vitest';
import { problemText } from '../../../src/scenario/problem.ts';
import { openSource } from '../../../src/scenario/source.ts';

function problemsOf(text: string): string[] {
  const opened = openSource(text, 'f.yaml');
  return opened.ok ? [] : opened.problems.map(problemText);
}

const tooDeep = 'expected at most 32 levels of nesting, received a deeper one.';

describe('text that is not parsed at all', () => {
  it.each([
    [
      'a huge file',
      'a: 1\n'.repeat(200_001),
      'f.yaml:1:1  expected at most 1 million characters, received 1000005 characters.',
    ],
    [
      'a huge line',
      `a: 1\n${'- '.repeat(400_000)}`,
      'f.yaml:2:1  expected lines of at most 1000 characters, received a line of 799999.',
    ],
    ['brackets', '[\n'.repeat(400_000), `f.yaml:65:1  ${tooDeep}`],
    [
      'indentation',
      Array.from({ length: 1000 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
      `f.yaml:202:1  ${tooDeep}`,
    ],
  ])('%s', (_name, text, problem) => {
    expect(problemsOf(text)).toEqual([problem]);
  });
});

describe('the form of a file', () => {
  const deepMap = Array.from({ length: 40 }, (_, i) => `${' '.repeat(i)}a:`).join('\n');
  it.each([
    ['an empty file', '', ['f.yaml:1:1  expected a description, received an empty file.']],
    ['only comments', '---\n# later\n...\n', ['f.yaml:1:1  expected a description, received an empty file.']],
    ['deep groups', deepMap, [`f.yaml:33:33  ${tooDeep}`]],
    ['deep lists on one line', '- '.repeat(450), [`f.yaml:1:65  ${tooDeep}`]],
    [
      'tags',
      'a: !!str b\nc: !!map {}\nd: !x 1',
      [
        'f.yaml:1:10  expected plain values without tags, received a tag ("!name").',
        'f.yaml:2:10  expected plain values without tags, received a tag ("!name").',
        'f.yaml:3:7  expected plain values without tags, received a tag ("!name").',
      ],
    ],
    [
      'two slips on two lines',
      'a: @\nb: %\n',
      [
        'f.yaml:1:4  expected a value, received a character with a meaning of its own in YAML. Put the value in quotes.',
        'f.yaml:2:4  expected a value, received a character with a meaning of its own in YAML. Put the value in quotes.',
      ],
    ],
    [
      'an open bracket',
      'a: [1',
      [
        'f.yaml:1:6  expected valid YAML, received a slip in its form (Flow sequence in block collection must be sufficiently indented and end with a ]). Look at the indentation here and above, and for quotation marks and brackets that are left open.',
      ],
    ],
    [
      'an open quotation mark',
      'a: 1\nb: "2\nc: 3\n',
      [
        'f.yaml:2:4  expected a closing quotation mark, received none. The text opened here goes on to the end of the file.',
      ],
    ],
  ])('%s', (_name, text, problems) => {
    expect(problemsOf(text)).toEqual(problems);
  });

  it('allows twenty aliases and no more', () => {
    const file = (aliases: number) =>
      `a: &a 1\nb: [${Array.from({ length: aliases }, () => '*a').join(', ')}]`;
    expect(problemsOf(file(20))).toEqual([]);
    expect(problemsOf(file(21))).toEqual([
      'f.yaml:2:85  expected at most 20 aliases ("*name") in a file, received one more. Write the values out.',
    ]);
  });

  it('survives a group that holds itself', () => {
    expect(problemsOf('a: &a\n  b: *a\n')).toEqual([]);
  });
});
