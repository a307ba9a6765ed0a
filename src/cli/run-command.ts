/** `tickover run FILE`: one engine from its scenario to verdict and report. */
import { runEngine, summaryJson, type OutcomeKind } from '../index.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { defaultFolder, writeReport } from './report-files.ts';
import { engineFromFile } from './scenario-file.ts';
import { terminalVerdict } from './terminal-verdict.ts';

export interface RunOptions {
  readonly file: string;
  readonly out: string | undefined;
  readonly json: boolean;
  readonly quiet: boolean;
}

/** Outcomes that say something about this program rather than about the engine. */
const faults: readonly OutcomeKind[] = ['step-limit', 'non-finite'];

export async function runCommand(options: RunOptions, print: (text: string) => void): Promise<ExitCode> {
  const spec = await engineFromFile(options.file);
  const result = runEngine(spec);
  const paths = await writeReport(result, options.out ?? defaultFolder(options.file));
  if (options.json) print(JSON.stringify(summaryJson(result), null, 2));
  else if (!options.quiet) {
    print(terminalVerdict(result));
    print(`\nReport: ${paths.join('\n        ')}`);
  }
  return faults.includes(result.outcome.kind) ? EXIT.fault : EXIT.ran;
}
