/** What the commands about the bench have in common: their options, and how a finding is said and written. */
import type { Argv } from 'yargs';
import { benchFileNames, benchHtml, inUnits, type TitledFinding, type UnitSystem } from '../index.ts';
import { writeFiles } from './aside.ts';
import { jsonText } from './json-text.ts';
import { unitsOption } from './options.ts';
import { defaultFolder, reportAssets } from './report-files.ts';
import { terminalFinding } from './terminal-finding.ts';

export interface FindingOptions {
  readonly file: string;
  readonly out: string | undefined;
  readonly json: boolean;
  readonly units: UnitSystem;
}

/** The file, where the report goes, and in which form the answer is printed. */
export const findingOptions = (args: Argv, file: string) =>
  args
    .positional('file', { type: 'string', demandOption: true, describe: file })
    .option('out', { type: 'string', requiresArg: true, describe: 'Folder for the report [reports/<file>]' })
    .option('json', { type: 'boolean', default: false, describe: 'Print one JSON object instead of text' })
    .options(unitsOption);

/**
 * `finding` is called once more where the reader's units are not those of the file: its sentences come out of the same
 * reckoning as its numbers, and the file stays the same.
 */
export async function sayFinding(
  finding: () => TitledFinding,
  { file, out, json, units }: FindingOptions,
  print: (text: string) => void,
): Promise<void> {
  const filed = finding();
  const shown = units === 'metric' ? filed : inUnits(units, finding);
  const assets = await reportAssets();
  const paths = await writeFiles(out ?? defaultFolder(file), [
    [benchFileNames.page, inUnits(units, () => benchHtml(shown, assets))],
    [benchFileNames.finding, `${jsonText(filed)}\n`],
  ]);
  print(
    json
      ? jsonText(filed)
      : `${inUnits(units, () => terminalFinding(shown))}\n\nReport: ${paths.join('\n        ')}`,
  );
}
