/** Writes the page and the summary of a question that has been answered, and says the answer. */
import type { ReportAssets, StudyWords } from '../../index.ts';
import { writeFiles } from '../aside.ts';
import { EXIT, type ExitCode } from '../exit-codes.ts';
import { jsonText } from '../json-text.ts';
import { reportAssets } from '../report-files.ts';
import { terminalWords } from './terminal-words.ts';

export interface Answered {
  /** "best": what the files are called. */
  readonly name: string;
  readonly about: { readonly title: string };
  readonly words: StudyWords;
  readonly page: (assets: ReportAssets) => string;
  readonly summary: unknown;
  /** Files that are written already. */
  readonly others?: readonly string[];
}

export async function finish(
  { name, about, words, page, summary, others = [] }: Answered,
  { out, json, quiet }: { readonly out: string; readonly json: boolean; readonly quiet: boolean },
  print: (text: string) => void,
): Promise<ExitCode> {
  const text = jsonText(summary);
  const paths = await writeFiles(out, [
    [`${name}.html`, page(await reportAssets())],
    [`${name}.json`, `${text}\n`],
  ]);
  if (json) print(text);
  else if (!quiet) {
    print(terminalWords(about.title, words));
    print(`\nFiles: ${[...paths, ...others].join('\n       ')}`);
  }
  return EXIT.ran;
}
