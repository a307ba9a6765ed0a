/** `tickover draw FILE`: what the builder cuts, and the sheet to set it by. */
import { join } from 'node:path';
import { complaintListing, drawingFiles } from '../../index.ts';
import { writeFiles } from '../aside.ts';
import { wrapped } from '../columns.ts';
import { EXIT, InputError, type ExitCode } from '../exit-codes.ts';
import { defaultFolder } from '../report-files.ts';
import { scenarioFromFile } from '../scenario-file.ts';
import type { Command } from './command.ts';

interface DrawOptions {
  readonly file: string;
  readonly out: string | undefined;
  readonly part: readonly string[];
  readonly kerf: string | undefined;
}

async function drawFile(options: DrawOptions, print: (text: string) => void): Promise<ExitCode> {
  const { spec, source } = scenarioFromFile(options.file);
  const drawings = drawingFiles(spec, { parts: options.part, kerf: options.kerf });
  if (!drawings.ok)
    throw new InputError(
      'refusals' in drawings ? drawings.refusals.join('\n') : complaintListing(drawings.complaints, source),
    );
  const folder = options.out ?? join(defaultFolder(options.file), 'drawings');
  const paths = await writeFiles(
    folder,
    drawings.files.map(({ name, text }) => [name, text] as const),
  );
  print(paths.join('\n'));
  print('');
  print(drawings.remarks.map((remark) => wrapped(remark, 96, '- ', '  ')).join('\n'));
  return EXIT.ran;
}

export const draw: Command = (args, { print, guarded }) =>
  args.command(
    'draw <file>',
    'Draw the valve gear of a scenario file to be cut, in millimetres, with a sheet to set it by.',
    (own) =>
      own
        .positional('file', { type: 'string', demandOption: true, describe: 'Scenario file (YAML)' })
        .option('part', {
          type: 'string',
          array: true,
          requiresArg: true,
          default: [] as string[],
          describe: 'Only these parts, by the names of their files [all]',
        })
        .option('kerf', {
          type: 'string',
          requiresArg: true,
          describe: 'Width of the cut; the paths move aside by half of it',
        })
        .option('out', {
          type: 'string',
          requiresArg: true,
          describe: 'Folder for the files [reports/<scenario>/drawings]',
        })
        .example('$0 draw scenarios/cider-press.yaml', 'all parts')
        .example('$0 draw my-engine.yaml --part admission-cam --kerf 1.2mm', 'one part for a plasma table'),
    ({ file, out, part, kerf }) => guarded(() => drawFile({ file, out, part, kerf }, print)),
  );
