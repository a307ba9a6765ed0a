/** `tickover run FILE`: one engine from its scenario to verdict and report. */
import { runAndDrive, summaryJson, withTrials, workshopPreview, type UnitSystem } from '../../index.ts';
import { EXIT, type ExitCode } from '../exit-codes.ts';
import { faults } from '../faults.ts';
import { jsonText } from '../json-text.ts';
import { defaultFolder, writeReport } from '../report-files.ts';
import { changeableFromFile } from '../scenario-file.ts';
import { unitsOption } from '../options.ts';
import { terminalVerdict } from '../terminal-verdict.ts';
import type { Command } from './command.ts';
import { setOption } from './study-options.ts';

interface RunOptions {
  readonly file: string;
  readonly out: string | undefined;
  readonly json: boolean;
  readonly quiet: boolean;
  readonly set: readonly string[];
  readonly units: UnitSystem;
}

async function runFile(options: RunOptions, print: (text: string) => void): Promise<ExitCode> {
  const engine = changeableFromFile(options.file, options.set);
  const { spec } = engine;
  const result = withTrials(runAndDrive(spec), engine);
  const folder = options.out ?? defaultFolder(options.file);
  const paths = await writeReport(result, folder, options.units, { workshop: workshopPreview(spec) });
  if (options.json) print(jsonText(summaryJson(result)));
  else if (!options.quiet) {
    print(terminalVerdict(result, options.units));
    print(`\nReport: ${paths.join('\n        ')}`);
  }
  return faults.includes(result.outcome.kind) ? EXIT.fault : EXIT.ran;
}

export const run: Command = (args, { print, guarded }) =>
  args.command(
    'run <file>',
    'Run the engine of a scenario file and write its report.',
    (own) =>
      own
        .positional('file', { type: 'string', demandOption: true, describe: 'Scenario file (YAML)' })
        .option('out', {
          type: 'string',
          requiresArg: true,
          describe: 'Folder for the report [reports/<scenario>]',
        })
        .option('json', {
          type: 'boolean',
          default: false,
          describe: 'Print one JSON object instead of text',
        })
        .option('quiet', {
          type: 'boolean',
          default: false,
          describe: 'Print nothing; only write the report',
        })
        .option('set', setOption)
        .options(unitsOption)
        .example('$0 run scenarios/cider-press.yaml', 'the demo')
        .example('$0 run my-engine.yaml --out attempt-3 --json', 'for a script')
        .example('$0 run my-engine.yaml --units imperial', 'psi, in, cfm, lbf·ft'),
    ({ file, out, json, quiet, set, units }) =>
      guarded(() => runFile({ file, out, json, quiet, set, units }, print)),
  );
