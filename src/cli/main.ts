#!/usr/bin/env node
/** The command line. Parses arguments, maps ways to fail to exit codes; everything else is behind index.ts. */
import { hideBin } from 'yargs/helpers';
import yargs from 'yargs';
import { EXIT, InputError, type ExitCode } from './exit-codes.ts';
import { commands } from './commands/registry.ts';
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

const bare = yargs(hideBin(process.argv))
  .scriptName('tickover')
  .usage('$0 <command>\n\nWill the engine run? Answers before metal is cut.')
  .wrap(Math.min(100, process.stdout.columns || 100))
  .example('$0 new my-engine.yaml --gear "rotary disc"', 'a scenario to start from')
  .example('$0 run my-engine.yaml', 'its verdict and its report')
  .example('$0 compare my-engine.yaml attempt-2.yaml', 'what a change does')
  .epilogue('"$0 COMMAND --help" shows the options of a command and examples.');

/** What is wrong with the command line has been said. */
class Refused extends Error {}

const asked = commands
  .reduce((args, command) => command(args, { print, guarded }), bare)
  .demandCommand(1, 'Name a command; "tickover --help" lists them.')
  .parserConfiguration({ 'dot-notation': false, 'boolean-negation': false })
  .strict()
  .check((said, { array }) => {
    const twice = Object.keys(said).find(
      (name) => name !== '_' && Array.isArray(said[name]) && !array?.includes(name),
    );
    return twice === undefined ? true : `Say --${twice} once only.`;
  })
  .version(version)
  .help()
  .fail((message, error, parser) => {
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
