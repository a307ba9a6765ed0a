/** The notebook of an engine from its text, with the scenario that it names. */
import type { Setting } from '../kinds/parameter.ts';
import { readNumber } from '../quantity/number.ts';
import { attemptsParameters } from '../measure/attempts-description.ts';
import type { Attempt } from '../measure/attempts/attempt.ts';
import type { Notebook } from '../measure/attempts/notebook.ts';
import { noAttachments, type Attachments } from './attachments.ts';
import { locate } from './locate.ts';
import { inFileOrder, type Problem } from './problem.ts';
import { openEngine } from './read-bench-sheet.ts';
import { readDescription } from './read-description.ts';

/** A notebook without a fault. */
export interface AttemptsFile {
  readonly title: string;
  readonly notes: string;
  readonly notebook: Notebook;
}

/** A notebook, or everything that is wrong with it. */
export type AttemptsReading =
  | { readonly ok: true; readonly attempts: AttemptsFile }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Reads the text of a notebook; `attachments` hands over the scenario that it names. */
export function readAttempts(
  text: string,
  file: string,
  attachments: Attachments = noAttachments,
): AttemptsReading {
  const reading = readDescription(text, file, attemptsParameters, attachments);
  if (!reading.ok) return reading;
  const { values, source } = reading;
  const opened = openEngine(values.engine, source, ['engine'], attachments);
  if (!opened.ok) return opened;
  const attempts = values.attempts.map((own) => own.build(undefined));
  const problems = [
    ...values.unknowns.filter(isNoGuess).map((own): Problem => {
      const path = ['unknowns', own.path.join('.')];
      const words = {
        expected: 'a first guess, a positive number with its unit',
        received: `"${own.value}"`,
      };
      return { ...own.at, path, ...words };
    }),
    ...(attempts.length > 0
      ? []
      : [
          {
            ...source.at(locate(source, ['attempts']).offset),
            path: ['attempts'],
            expected: 'at least one attempt',
            received: 'none',
          },
        ]),
    ...settingsProblems(values.unknowns, attempts, opened.problemsOf),
    ...foundProblems(values.unknowns, attempts),
  ];
  if (problems.length > 0) return { ok: false, problems: inFileOrder(problems) };
  const { title, notes, unknowns, guessed_within: guessedWithin, atmosphere } = values;
  const bench = { engine: opened.engine, room: atmosphere };
  return { ok: true, attempts: { title, notes, notebook: { bench, unknowns, guessedWithin, attempts } } };
}

const isNoGuess = ({ value }: Setting): boolean =>
  !/^\s*\+?(\d|\.\d)/u.test(value) || /^\S+\s+[A-Z]+\d/u.test(value);

/** Changes build up: each attempt is read with all that came before; what is wrong is said where it came in. */
function settingsProblems(
  unknowns: readonly Setting[],
  attempts: readonly Attempt[],
  problemsOf: (settings: readonly Setting[]) => readonly Problem[],
): Problem[] {
  const first = problemsOf(unknowns);
  if (first.length > 0) return [...first];
  let sound: readonly Setting[] = unknowns;
  return attempts.flatMap((attempt) => {
    const changed = [...sound, ...attempt.changed];
    const found = [
      ...problemsOf(changed),
      ...(attempt.happened === 'measured' ? problemsOf([...sound, ...attempt.found]) : []),
    ];
    if (found.length === 0) sound = changed;
    return found;
  });
}

const unitOf = ({ value }: Setting): string => {
  const number = readNumber(value, '1');
  return number.ok ? number.rest : value;
};

/** What a test found is one of the unknowns, in the unit that its latest guess is written with. */
function foundProblems(unknowns: readonly Setting[], attempts: readonly Attempt[]): Problem[] {
  const guesses = new Map(unknowns.map((own) => [own.path.join('.'), own]));
  return attempts.flatMap((attempt) => {
    for (const own of attempt.changed)
      if (guesses.has(own.path.join('.'))) guesses.set(own.path.join('.'), own);
    if (attempt.happened !== 'measured') return [];
    return attempt.found.flatMap((own): Problem[] => {
      const path = own.path.join('.');
      const guess = guesses.get(path);
      const place = { ...own.at, path: ['found', path] };
      if (guess === undefined)
        return [
          {
            ...place,
            expected: `one of the unknowns, ${[...guesses.keys()].join(', ')}`,
            received: `"${path}"`,
          },
        ];
      if (unitOf(guess) === unitOf(own)) return [];
      const expected = `the unit of its first guess, as in "${guess.value}"`;
      return [{ ...place, expected, received: `"${own.value}"` }];
    });
  });
}
