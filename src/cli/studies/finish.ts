/** Writes the page and the summary of a question that has been answered, and says the answer. */
import { inUnits, type ReportAssets, type StudyWords } from '../../index.ts';
import { writeFiles } from '../aside.ts';
import { EXIT, type ExitCode } from '../exit-codes.ts';
import { jsonText } from '../json-text.ts';
import { reportAssets } from '../report-files.ts';
import type { QuestionOptions } from './question-options.ts';
import { terminalWords } from './terminal-words.ts';

export interface Answered {
  /** "best": what the files are called. */
  readonly name: string;
  readonly about: { readonly title: string };
  /** Called in the units of the reader. */
  readonly words: () => StudyWords;
  readonly page: (assets: ReportAssets) => string;
  readonly summary: unknown;
  /** Files that are written already. */
  readonly others?: readonly string[];
}

type FinishOptions = Pick<QuestionOptions, 'json' | 'quiet' | 'units'> & { readonly out: string };

export async function finish(
  { name, about, words, page, summary, others = [] }: Answered,
  { out, json, quiet, units }: FinishOptions,
  print: (text: string) => void,
): Promise<ExitCode> {
  const text = jsonText(summary);
  const assets = await reportAssets();
  const paths = await writeFiles(out, [
    [`${name}.html`, inUnits(units, () => page(assets))],
    [`${name}.json`, `${text}\n`],
  ]);
  if (json) print(text);
  else if (!quiet) {
    print(inUnits(units, () => terminalWords(about.title, words())));
    print(`\nFiles: ${[...paths, ...others].join('\n       ')}`);
  }
  return EXIT.ran;
}
