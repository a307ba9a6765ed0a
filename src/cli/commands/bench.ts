/** `tickover bench FILE`: what a bench test says, from its sheet and its readings. */
import { problemListing, readBenchSheet, type TitledFinding } from '../../index.ts';
import { EXIT, InputError, type ExitCode } from '../exit-codes.ts';
import { findingOptions, sayFinding, type FindingOptions } from '../say-finding.ts';
import { attachmentsOf, textOf } from '../scenario-file.ts';
import type { Command } from './command.ts';

function findingOf(file: string): TitledFinding {
  const reading = readBenchSheet(textOf(file, 'sheet'), file, attachmentsOf(file));
  if (!reading.ok) throw new InputError(problemListing(reading.problems));
  const { title, notes, test, finding } = reading.sheet;
  return { title, notes, test: `bench test, ${test}`, finding: finding() };
}

async function workOut(options: FindingOptions, print: (text: string) => void): Promise<ExitCode> {
  await sayFinding(() => findingOf(options.file), options, print);
  return EXIT.ran;
}

export const bench: Command = (args, { print, guarded }) =>
  args.command(
    'bench <file>',
    'Work out a bench test: pressure decay, coast-down, break-away, pump-up or running log.',
    (own) =>
      findingOptions(own, 'Sheet of the test (YAML); it names the readings (CSV)').example(
        '$0 bench scenarios/bench/chest-decay.yaml',
        'how much the chest leaks',
      ),
    ({ file, out, json, units }) => guarded(() => workOut({ file, out, json, units }, print)),
  );
