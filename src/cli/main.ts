#!/usr/bin/env node
/** The command line. Parses arguments, maps ways to fail to exit codes; everything else is behind index.ts. */
import { hideBin } from 'yargs/helpers';
import { EXIT, InputError, type ExitCode } from './exit-codes.ts';
import { commandLine } from './command-line.ts';
import { plainLines } from './plain.ts';
import { version } from './version.ts';

/** A reader that goes away (`| head`) ends the program quietly; nothing is wrong with the run. */
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(process.exitCode ?? EXIT.ran);
    throw error;
  });

const print = (text: string): void => {
  process.stdout.write(`${plainLines(text)}\n`);
};
const complain = (text: string): void => {
  process.stderr.write(`${plainLines(text)}\n`);
};

/** Runs a command and turns whatever it throws into an exit code and words for the right person. */
async function guarded(command: () => Promise<ExitCode>): Promise<void> {
  try {
    process.exitCode = await command();
  } catch (error) {
    if (error instanceof InputError) {
      complain(error.message);
      process.exitCode = EXIT.badInput;
      return;
    }
    complain(
      `A fault in tickover ${version}, not in your file. Please report it with your scenario and these lines:`,
    );
    complain(error instanceof Error ? (error.stack ?? error.message) : String(error));
    process.exitCode = EXIT.fault;
  }
}

/** What is wrong with the command line has been said. */
class Refused extends Error {}

const asked = commandLine(hideBin(process.argv), { print, guarded }).fail((message, error, parser) => {
  // yargs hands over either words of its own or an error of ours; ours are dealt with by `guarded`.
  if (error instanceof Error && error.name !== 'YError') throw error;
  complain(`${message}\n`);
  parser.showHelp('error');
  process.exitCode = EXIT.badInput;
  // Else it would go on looking, and stumble over what it has just complained of.
  throw new Refused();
});

try {
  await asked.parseAsync();
} catch (error) {
  if (!(error instanceof Refused)) throw error;
}
