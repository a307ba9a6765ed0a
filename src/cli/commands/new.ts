/** `tickover new FILE --gear KIND`: a commented scenario to start from. */
import { rm, writeFile } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { newScenario, valveGearKinds } from '../../index.ts';
import { writeFiles, writing } from '../aside.ts';
import { EXIT, InputError, type ExitCode } from '../exit-codes.ts';
import type { Command } from './command.ts';

/** Writes nothing at all if one of the files is there already. */
async function writeNew(file: string, gear: string, print: (text: string) => void): Promise<ExitCode> {
  const { text, files } = newScenario(gear);
  const beside = Object.entries(files).map(
    ([name, content]) => [join(dirname(file), name), content] as const,
  );
  const all = [[file, text] as const, ...beside];
  const taken = all.map(([path]) => path).filter((path) => existsSync(path));
  if (taken.length > 0)
    throw new InputError(taken.map((path) => `${path}: there already; nothing was written over.`).join('\n'));
  for (const [path, content] of all) await writeOne(path, content);
  print(`Wrote ${all.map(([path]) => path).join(' and ')}.`);
  print(`It runs as it stands. Next: tickover run ${/\s/u.test(file) ? `"${file}"` : file}`);
  return EXIT.ran;
}

/** The name is taken first, by an empty file, so that nothing is ever written over. */
async function writeOne(path: string, text: string): Promise<void> {
  await writing(path, () => writeFile(path, '', { flag: 'wx' }));
  try {
    await writeFiles(dirname(path), [[basename(path), text]]);
  } catch (error) {
    await rm(path, { force: true });
    throw error;
  }
}

export const newCommand: Command = (args, { print, guarded }) =>
  args.command(
    'new <file>',
    'Write a scenario to start from, with every key explained.',
    (own) =>
      own
        .positional('file', {
          type: 'string',
          demandOption: true,
          describe: 'File to write; must not be there yet',
        })
        .option('gear', {
          choices: valveGearKinds,
          demandOption: true,
          describe: 'Kind of valve gear',
        })
        .example('$0 new my-engine.yaml --gear "cam-driven spools"', 'two spools and their cams')
        .example('$0 new my-disc.yaml --gear "rotary disc"', 'a slotted disc between two plates'),
    ({ file, gear }) => guarded(() => writeNew(file, gear, print)),
  );
