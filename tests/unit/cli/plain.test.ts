/** What reaches a terminal or a program behind a pipe, whatever the files said. */
import { expect, it } from 'vitest';
import { jsonText } from '../../../src/cli/json-text.ts';
import { plain, plainLines } from '../../../src/cli/plain.ts';

const hostile = 'a\u001b[2J\u009b1m\u202eb\u2028c\u200bd\u0007';

it('a text of a file becomes one plain line', () => {
  expect(plain(`${hostile}\n`)).toBe('a\uFFFD[2J\uFFFD1m\uFFFDb\uFFFDc\uFFFDd\uFFFD\uFFFD');
});

it('paragraphs keep their lines and our few styles, nothing else', () => {
  const text = `\u001b[1mbold\u001b[22m\n\u001b[32mgood\u001b[39m ${hostile}\u001b[8mhidden\u001b[0m`;
  expect(plainLines(text)).toBe(
    `\u001b[1mbold\u001b[22m\n\u001b[32mgood\u001b[39m ${plain(hostile)}\uFFFD[8mhidden\uFFFD[0m`,
  );
});

it('JSON says the same without disturbing a terminal', () => {
  const value = { title: `${hostile}\u{e0041}`, lines: ['é 💥', 1] };
  const text = jsonText(value);
  expect(JSON.parse(text)).toEqual(value);
  expect(text).not.toMatch(/[^\n\P{Cc}]|[\p{Cf}\p{Zl}\p{Zp}]/u);
  expect(text).toContain('é 💥');
});
