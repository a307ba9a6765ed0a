/** `tickover bench FILE`: what a bench test says, from its sheet and its readings. */
import { problemListing, readBenchSheet, type TitledFinding } from '../../index.ts';
import { EXIT, InputError, type ExitCode } from '../exit-codes.ts';
import { defaultFolder, writeFinding } from '../report-files.ts';
import { attachmentsOf, textOf } from '../scenario-file.ts';
import { terminalFinding } from '../terminal-finding.ts';
import type { Command } from './command.ts';

interface BenchOptions {
  readonly file: string;
  readonly out: string | undefined;
  readonly json: boolean;
}

async function findingOf(file: string): Promise<TitledFinding> {
  const reading = readBenchSheet(await textOf(file, 'sheet'), file, attachmentsOf(file));
  if (!reading.ok) throw new InputError(problemListing(reading.problems));
  const { title, notes, test, finding } = reading.sheet;
  return { title, notes, test, finding: finding() };
}

async function runBench({ file, out, json }: BenchOptions, print: (text: string) => void): Promise<ExitCode> {
  const found = await findingOf(file);
  const paths = await writeFinding(found, out ?? defaultFolder(file));
  print(json ? JSON.stringify(found, null, 2) : `${terminalFinding(found)}\n\nReport: ${paths.join('\n        ')}`);
  return EXIT.ran;
}

export const bench: Command = (args, { print, guarded }) =>
  args.command(
    'bench <file>',
    'Work out a bench test: pressure decay, coast-down, break-away, pump-up or running log.',
    (own) =>
      own
        .positional('file', {
          type: 'string',
          demandOption: true,
          describe: 'Sheet of the test (YAML); it names the readings (CSV)',
        })
        .option('out', {
          type: 'string',
          requiresArg: true,
          describe: 'Folder for the report [reports/<sheet>]',
        })
        .option('json', {
          type: 'boolean',
          default: false,
          describe: 'Print one JSON object instead of text',
        })
        .example('$0 bench scenarios/bench/chest-decay.yaml', 'how much the chest leaks'),
    ({ file, out, json }) => guarded(() => runBench({ file, out, json }, print)),
  );
