/** What the commands about the bench have in common: their options, and how a finding is said and written. */
import type { Argv } from 'yargs';
import { benchFileNames, benchHtml, type TitledFinding } from '../index.ts';
import { writeFiles } from './aside.ts';
import { jsonText } from './json-text.ts';
import { defaultFolder, reportAssets } from './report-files.ts';
import { terminalFinding } from './terminal-finding.ts';

export interface FindingOptions {
  readonly file: string;
  readonly out: string | undefined;
  readonly json: boolean;
}

/** The file, where the report goes, and in which form the answer is printed. */
export const findingOptions = (args: Argv, file: string) =>
  args
    .positional('file', { type: 'string', demandOption: true, describe: file })
    .option('out', { type: 'string', requiresArg: true, describe: 'Folder for the report [reports/<file>]' })
    .option('json', { type: 'boolean', default: false, describe: 'Print one JSON object instead of text' });

export async function sayFinding(
  found: TitledFinding,
  { file, out, json }: FindingOptions,
  print: (text: string) => void,
): Promise<void> {
  const paths = await writeFiles(out ?? defaultFolder(file), [
    [benchFileNames.page, benchHtml(found, await reportAssets())],
    [benchFileNames.finding, `${jsonText(found)}\n`],
  ]);
  print(json ? jsonText(found) : `${terminalFinding(found)}\n\nReport: ${paths.join('\n        ')}`);
}
