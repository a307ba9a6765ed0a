#!/usr/bin/env node
/** The command line. Parses arguments, maps ways to fail to exit codes; everything else is behind index.ts. */
import { readFileSync } from 'node:fs';
import { hideBin } from 'yargs/helpers';
import yargs from 'yargs';
import { EXIT, InputError, type ExitCode } from './exit-codes.ts';
import { runCommand } from './run-command.ts';

/** A reader that goes away (`| head`) ends the program quietly; nothing is wrong with the run. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(EXIT.ran);
  throw error;
});

const print = (text: string): void => {
  process.stdout.write(`${text}\n`);
};
const complain = (text: string): void => {
  process.stderr.write(`${text}\n`);
};

const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
  version: string;
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

await yargs(hideBin(process.argv))
  .scriptName('tickover')
  .usage('$0 <command>\n\nWill the engine run? Answers before metal is cut.')
  .command(
    'run <file>',
    'Run the engine of a scenario file and write its report.',
    (args) =>
      args
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
        .example('$0 run scenarios/cider-press.yaml', 'the demo')
        .example('$0 run my-engine.yaml --out attempt-3 --json', 'for a script'),
    ({ file, out, json, quiet }) => guarded(() => runCommand({ file, out, json, quiet }, print)),
  )
  .demandCommand(1, 'Name a command; "tickover --help" lists them.')
  .strict()
  .version(version)
  .help()
  .fail((message, error, parser) => {
    // yargs hands over either its own message or an error of ours; ours are dealt with by `guarded`.
    if (error instanceof Error) throw error;
    complain(`${message}\n`);
    parser.showHelp('error');
    process.exitCode = EXIT.badInput;
  })
  .parseAsync();
