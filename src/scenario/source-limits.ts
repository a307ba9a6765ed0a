/** What a file may not exceed or contain, whatever it describes; and YAML's own complaints in plain words. */

/** Something found at an offset of the text. */
export interface Finding {
  readonly offset: number;
  readonly expected: string;
  readonly received: string;
  readonly hint?: string;
}

const size = 1_000_000;
const lineLength = 1000;
const indentation = 200;
const openBrackets = 64;
const depth = 32;
const aliases = 20;
/** What no text holds (YAML 1.2, 5.1), and the line end of long ago that the parser does not know. */
const notText = /(?![\t\r\n\u0085])\p{Cc}|\r(?!\n)/u;

export const limits = {
  depth,
  aliases,
  tag: { expected: 'plain values without tags', received: 'a tag ("!name")' },
  openQuote: {
    expected: 'a closing quotation mark',
    received: 'none',
    hint: 'The text opened here goes on to the end of the file.',
  },
  danglingAlias: {
    expected: 'an alias of something named ("&name") further up',
    received: 'one of nothing',
  },
  tooDeep: { expected: `at most ${depth} levels of nesting`, received: 'a deeper one' },
  tooManyAliases: {
    expected: `at most ${aliases} aliases ("*name") in a file`,
    received: 'one more',
    hint: 'Write the values out.',
  },
};

/** Looks for text that would only wear out the parser; it never sees such a file. */
export function limitProblem(text: string, lineStarts: readonly number[]): Finding | undefined {
  if (text.length > size)
    return {
      offset: 0,
      expected: `at most ${size / 1e6} million characters`,
      received: `${text.length} characters`,
    };
  const control = text.search(notText);
  if (control >= 0)
    return {
      offset: control,
      expected: 'text',
      received: `a control character (${codePoint(text, control)})`,
      hint: 'Take it away in a text editor, and save the file as UTF-8 with the line ends of Linux or Windows.',
    };
  let open = 0;
  for (const [index, start] of lineStarts.entries()) {
    const line = text.slice(start, lineStarts[index + 1] ?? text.length);
    if (line.length > lineLength + 1)
      return {
        offset: start,
        expected: `lines of at most ${lineLength} characters`,
        received: `a line of ${line.trimEnd().length}`,
      };
    open += (line.match(/[[{]/gu)?.length ?? 0) - (line.match(/[\]}]/gu)?.length ?? 0);
    if (line.search(/\S/u) > indentation || open > openBrackets) return { offset: start, ...limits.tooDeep };
  }
  return undefined;
}

const codePoint = (text: string, at: number): string =>
  `U+${text.charCodeAt(at).toString(16).toUpperCase().padStart(4, '0')}`;

type Words = Omit<Finding, 'offset'>;

const keyLine: Words = {
  expected: 'one "key: value" on a line',
  received: 'something else',
  hint: 'Line up the keys of a group, and put quotes around a text that has ": " in it.',
};

/** By the parser's code. */
const formWords: ReadonlyMap<string, Words> = new Map<string, Words>([
  ['TAB_AS_INDENT', { expected: 'spaces at the beginning of a line', received: 'a tab' }],
  [
    'MULTIPLE_DOCS',
    {
      expected: 'one description in a file',
      received: 'a second one',
      hint: 'Take away the "---" or split the file.',
    },
  ],
  ['RESOURCE_EXHAUSTION', limits.tooDeep],
  ['TAG_RESOLVE_FAILED', limits.tag],
  ['BLOCK_AS_IMPLICIT_KEY', keyLine],
  ['MULTILINE_IMPLICIT_KEY', keyLine],
  [
    'BAD_SCALAR_START',
    {
      expected: 'a value',
      received: 'a character with a meaning of its own in YAML',
      hint: 'Put the value in quotes.',
    },
  ],
]);

/** What the parser says about a mistake in the form of a file. */
interface Mistake {
  readonly code: string;
  readonly message: string;
  readonly pos: readonly [number, number];
}

export function formProblem({ code, message, pos }: Mistake): Finding {
  const words = formWords.get(code) ?? {
    expected: 'valid YAML',
    received: `a slip in its form (${withoutQuote(message)})`,
    hint: 'Look at the indentation here and above, and for quotation marks and brackets that are left open.',
  };
  return { offset: pos[0], ...words };
}

/** The parser quotes the file after a colon, all of it if need be; the place says where to look. */
const withoutQuote = (message: string): string => message.replace(/(?<=YAML (?:stream|token)): [^]*$/u, '');
