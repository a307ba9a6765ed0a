/** The command line as a whole: its commands, and what is the same for all of them. */
import yargs, { type Argv } from 'yargs';
import type { Session } from './commands/command.ts';
import { commands } from './commands/registry.ts';
import { version } from './version.ts';

/** Parses what stands behind the name of the program; a command does its work in the session. */
export function commandLine(words: readonly string[], session: Session): Argv {
  const bare = yargs([...words])
    .scriptName('tickover')
    .usage('$0 <command>\n\nWill the engine run? Answers before metal is cut.')
    .wrap(Math.min(100, process.stdout.columns || 100))
    .example('$0 new my-engine.yaml --gear "rotary disc"', 'a scenario to start from')
    .example('$0 run my-engine.yaml', 'its verdict and its report')
    .example('$0 compare my-engine.yaml attempt-2.yaml', 'what a change does')
    .epilogue('"$0 COMMAND --help" shows the options of a command and examples.');
  return commands
    .reduce((args, command) => command(args, session), bare)
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
    .help();
}
