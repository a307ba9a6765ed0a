/**
 * Ways to spoil a file: what a slip of the hand, an editor, a broken disk or a stranger may do to it. The same seed spoils
 * it in the same way.
 */
import { randomFrom } from '../../src/study/random.ts';
import { keys, nastyValues, numbers, strayCharacters, units } from './nasty-words.ts';

/** Numbers from 0 up to 1. */
export type Random = () => number;

type Mutation = (text: string, random: Random) => string;

const below = (random: Random, count: number): number => Math.floor(random() * count);
const oneOf = <T>(random: Random, list: readonly T[]): T => list[below(random, list.length)]!;

/** The text with one line, chosen among those that fit, replaced. */
function withLine(text: string, random: Random, fits: RegExp, change: (line: string) => string): string {
  const lines = text.split('\n');
  const places = lines.flatMap((line, i) => (fits.test(line) ? [i] : []));
  if (places.length === 0) return text;
  const at = oneOf(random, places);
  return lines.with(at, change(lines[at]!)).join('\n');
}

const value = /^(\s*(?:- )?[\w.]+:) +\S/u;
const withValue = (text: string, random: Random, written: string): string =>
  withLine(text, random, value, (line) => `${value.exec(line)![1]!} ${written}`);

const number = /(?<![\w.])-?\d+(?:\.\d+)?/u;

const nested = (depth: number): string =>
  Array.from({ length: depth }, (_, i) => `${' '.repeat(i)}n:`).join('\n');

const bomb =
  'a: &a [x, x, x, x, x, x, x, x, x]\n' +
  ['b', 'c', 'd', 'e', 'f', 'g', 'h', 'i']
    .map((name, i) => {
      const before = `*${'abcdefgh'[i]!}`;
      return `${name}: &${name} [${Array.from({ length: 9 }, () => before).join(', ')}]`;
    })
    .join('\n');

const insertion = (text: string, random: Random, own: string): string => {
  const at = below(random, text.length + 1);
  return text.slice(0, at) + own + text.slice(at);
};

/** Every way works on the text of a file; what only bytes can do is in `encodings`. */
export const mutations: Readonly<Record<string, Mutation>> = {
  'a character lost': (text, random) => {
    const at = below(random, text.length);
    return text.slice(0, at) + text.slice(at + 1);
  },
  'a character too many': (text, random) => insertion(text, random, oneOf(random, strayCharacters)),
  'a piece lost': (text, random) => {
    const at = below(random, text.length);
    return text.slice(0, at) + text.slice(at + below(random, 80));
  },
  'a piece twice': (text, random) => {
    const at = below(random, text.length);
    return insertion(text, random, text.slice(at, at + below(random, 200)));
  },
  'torn off': (text, random) => text.slice(0, below(random, text.length)),
  'a line lost': (text, random) => withLine(text, random, /\S/u, () => ''),
  'a key twice': (text, random) => withLine(text, random, value, (line) => `${line}\n${line}`),
  'a key renamed': (text, random) =>
    withLine(text, random, value, (line) => line.replace(/[\w.]+:/u, `${oneOf(random, keys)}:`)),
  'a key misspelt': (text, random) =>
    withLine(text, random, value, (line) => line.replace(/(\w)(\w):/u, '$2$1:')),
  'lines the other way round': (text, random) => {
    const lines = text.split('\n');
    if (lines.length < 2) return text;
    const at = below(random, lines.length - 1);
    return lines
      .with(at, lines[at + 1]!)
      .with(at + 1, lines[at]!)
      .join('\n');
  },
  'another indentation': (text, random) =>
    withLine(text, random, /\S/u, (line) => `${oneOf(random, [' ', '  ', '\t', '        '])}${line}`),
  'another number': (text, random) =>
    withLine(text, random, number, (line) => line.replace(number, () => oneOf(random, numbers))),
  'a number of another size': (text, random) =>
    withLine(text, random, number, (line) =>
      line.replace(number, (own) =>
        String(Number(own) * oneOf(random, [-1, 0, 1e-9, 1e-3, 0.1, 0.5, 2, 10, 1e3, 1e9])),
      ),
    ),
  'a number a little off': (text, random) =>
    withLine(text, random, number, (line) =>
      line.replace(number, (own) => String(Number(own) * (0.7 + 0.6 * random()))),
    ),
  'another unit': (text, random) =>
    withLine(text, random, value, (line) =>
      line.replace(/(\d)\s*\D*$/u, (_all, digit: string) => `${digit} ${oneOf(random, units)}`),
    ),
  'something else as value': (text, random) => withValue(text, random, oneOf(random, nastyValues)),
  'a value of elsewhere': (text, random) => {
    const all = text.split('\n').filter((line) => value.test(line));
    return all.length === 0 ? text : withValue(text, random, oneOf(random, all).replace(/^[^:]*: */u, ''));
  },
  'a group of nothing': (text, random) => withLine(text, random, value, (line) => value.exec(line)![1]!),
  'deep nesting': (text, random) =>
    oneOf(random, [
      `${text}\n${nested(oneOf(random, [30, 40, 300]))}`,
      withValue(text, random, '['.repeat(oneOf(random, [20, 60, 900]))),
      withValue(text, random, '{a: '.repeat(oneOf(random, [20, 60, 200]))),
      withValue(text, random, `${'- '.repeat(450)}x`),
    ]),
  'an alias bomb': (text, random) =>
    oneOf(random, [`${bomb}\n${text}`, `${text}\n${bomb}`, 'a: &a [*a]\n' + text]),
  'merge keys': (text, random) =>
    oneOf(random, [`base: &base\n  bore: 1 mm\n${text}`, text]).replace(/^(\w+:)$/mu, '$1 &one\n  <<: *one'),
  'several documents': (text, random) =>
    oneOf(random, [
      `${text}\n---\n${text}`,
      `---\n---\n${text}`,
      `%YAML 1.1\n---\n${text}`,
      `%TAG ! tag:x,2000:\n---\n${text}`,
      `${text}\n...\n...\n`,
    ]),
  'a tag': (text, random) =>
    withLine(text, random, value, (line) =>
      line.replace(
        ': ',
        `: ${oneOf(random, ['!!js/function', '!!str', '!x', '!!map', '!!set', '!', '!<x>', '!!timestamp'])} `,
      ),
    ),
  'a line too long': (text, random) =>
    withValue(text, random, 'y'.repeat(oneOf(random, [300, 2_000, 200_000]))),
  'a comment of control characters': (text) => `# \u0000\u001b[2J\u202e\u0085\n${text}`,
  'other line ends': (text, random) =>
    text.replaceAll('\n', oneOf(random, ['\r\n', '\r', '\u2028', '\u0085', '\n\n'])),
  'in brackets': (text, random) =>
    oneOf(random, [`{${text}}`, `[${text}]`, `"${text}"`, `|\n${text}`, `- ${text}`]),
};

const utf16 = (text: string, littleEnd: boolean): Buffer => {
  const bytes = Buffer.from(`\ufeff${text}`, 'utf16le');
  return littleEnd ? bytes : bytes.swap16();
};

/** From the text to the bytes of a file; the last three are what almost all files are. */
const encodings: readonly ((text: string, random: Random) => Buffer)[] = [
  (text) => utf16(text, true),
  (text) => utf16(text, false),
  (text) => Buffer.from(text.replace('title: ', 'title: é '), 'latin1'),
  (text) => Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(text)]),
  (text, random) => {
    const bytes = Buffer.from(text);
    for (let i = 0; i <= below(random, 8); i += 1) {
      const at = below(random, bytes.length);
      bytes[at] = bytes[at]! ^ (1 << below(random, 8));
    }
    return bytes;
  },
];

export interface Mutant {
  readonly ways: readonly string[];
  readonly bytes: Buffer;
}

/** A file spoilt in one to three ways; one in ten also in its bytes. */
export function mutantOf(text: string, seed: number): Mutant {
  const random = randomFrom(seed);
  const names = Object.keys(mutations);
  // The first way goes round, so that none is left to chance.
  const ways = [names[seed % names.length]!];
  while (random() < 0.35 && ways.length < 3) ways.push(oneOf(random, names));
  const spoilt = ways.reduce((own, way) => mutations[way]!(own, random), text);
  const encoded = random() < 0.1 ? oneOf(random, encodings)(spoilt, random) : Buffer.from(spoilt);
  return { ways, bytes: encoded };
}
