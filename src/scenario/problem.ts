/** What is wrong in a file, where, and what would be right: said to the person who wrote the file. */

/** Where something is said: in a file, or beside it on the command line. */
export interface Whereabouts {
  readonly file: string;
  /** Both counted from one; the column in UTF-16 units, as editors do. */
  readonly line: number;
  readonly column: number;
  /** The option that said it, as it was written: "--set cylinder.bore=60 mm"; there is then no line to point at. */
  readonly option?: string;
}

/** One thing that is wrong in a file, with its place and what would be right. */
export interface Problem extends Whereabouts {
  /** Keys from the top of the file inwards; empty for the file as a whole. */
  readonly path: readonly string[];
  readonly expected: string;
  readonly received: string;
  /** Whole sentences. */
  readonly hint?: string;
}

const listed = 50;

/** `press.yaml:14:11  valve_gear.lap: expected a length from 0 mm to 10 mm, received "2" (no unit). Write "2 mm".` */
export function problemText({ path, expected, received, hint, ...whereabouts }: Problem): string {
  const place = `${placeText(whereabouts)}  `;
  const subject = path.length === 0 ? '' : `${path.map((key) => printable(key)).join('.')}: `;
  return inert(
    `${place}${subject}expected ${expected}, received ${received}.${hint === undefined ? '' : ` ${hint}`}`,
  );
}

const placeText = ({ file, line, column, option }: Whereabouts): string =>
  option === undefined ? `${printable(file)}:${line}:${column}` : printable(option);

/** The same without the place, for someone who has not written the file. */
export const problemSentence = ({ path, expected, received }: Problem): string =>
  inert(`${path.map((key) => printable(key)).join('.')}: expected ${expected}, received ${received}.`);

/** One line for each problem; of very many only the first. */
export function problemListing(problems: readonly Problem[]): string {
  const lines = problems.slice(0, listed).map(problemText);
  const rest = problems.length - lines.length;
  return [...lines, ...(rest > 0 ? [`… and ${rest} more.`] : [])].join('\n');
}

/** A piece of the file in quotes, shortened, without characters that could disturb a terminal. */
export const quoted = (text: string): string => `"${printable(text)}"`;

const longest = 60;

function printable(text: string): string {
  const short = text.length > longest ? `${text.slice(0, longest)}…` : text;
  return inert(short.replace(/\s+/gu, ' '));
}

/** Control characters could move the cursor or repaint the screen, others turn the text round or end the line. */
const inert = (text: string): string => text.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, '\uFFFD');

/** File by file, the files as they first come up. */
export function inFileOrder(problems: readonly Problem[]): Problem[] {
  const files = [...new Set(problems.map(({ file }) => file))];
  return problems.toSorted(
    (a, b) => files.indexOf(a.file) - files.indexOf(b.file) || a.line - b.line || a.column - b.column,
  );
}
