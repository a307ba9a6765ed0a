/** `tickover check FILE…`: whether scenarios are complete and possible, without running them. */
import { InputError, EXIT, type ExitCode } from '../exit-codes.ts';
import { engineFromFile } from '../scenario-file.ts';
import { plain } from '../plain.ts';
import type { Command } from './command.ts';

/** Looks at every file, also after one that is wrong. */
function checkFiles(files: readonly string[], print: (text: string) => void): ExitCode {
  const complaints: string[] = [];
  for (const file of files) {
    try {
      const { title } = engineFromFile(file);
      print(`${file}: nothing wrong with “${plain(title)}”.`);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      complaints.push(error.message);
    }
  }
  if (complaints.length > 0) throw new InputError(complaints.join('\n'));
  return EXIT.ran;
}

export const check: Command = (args, { print, guarded }) =>
  args.command(
    'check <file..>',
    'Look for mistakes in scenario files without running them.',
    (own) =>
      own
        .positional('file', {
          type: 'string',
          array: true,
          demandOption: true,
          describe: 'Scenario files (YAML)',
        })
        .example('$0 check my-engine.yaml', 'every mistake with its line and what would be right')
        .example('$0 check scenarios/*.yaml', 'several at once'),
    ({ file }) => guarded(() => Promise.resolve(checkFiles(file, print))),
  );
