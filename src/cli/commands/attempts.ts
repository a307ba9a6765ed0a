/** `tickover attempts FILE`: what attempt after attempt has taught about an engine, and which test would tell most next. */
import { notebookFinding, problemListing, readAttempts, type TitledFinding } from '../../index.ts';
import { EXIT, InputError, type ExitCode } from '../exit-codes.ts';
import { attachmentsOf, textOf } from '../scenario-file.ts';
import { findingOptions, sayFinding, type FindingOptions } from '../say-finding.ts';
import type { Command } from './command.ts';

function storyOf(file: string): TitledFinding {
  const reading = readAttempts(textOf(file, 'notebook'), file, attachmentsOf(file));
  if (!reading.ok) throw new InputError(problemListing(reading.problems));
  const { title, notes, notebook } = reading.attempts;
  return { title, notes, test: 'attempts', finding: notebookFinding(notebook) };
}

async function readNotebook(options: FindingOptions, print: (text: string) => void): Promise<ExitCode> {
  await sayFinding(() => storyOf(options.file), options, print);
  return EXIT.ran;
}

export const attempts: Command = (args, { print, guarded }) =>
  args.command(
    'attempts <file>',
    'Hold attempts against the model: foretold and read, what was learned, which test next.',
    (own) =>
      findingOptions(own, 'Notebook of the attempts (YAML); it names the scenario').example(
        '$0 attempts scenarios/bench/attempts.yaml',
        'a spring of attempts on the press',
      ),
    ({ file, out, json, units }) => guarded(() => readNotebook({ file, out, json, units }, print)),
  );
