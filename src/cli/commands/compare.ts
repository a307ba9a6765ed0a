/** `tickover compare FILE FILE…`: several engines, or one engine before and after a change, on the same axes. */
import { rm } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import { styleText } from 'node:util';
import {
  comparedTurnsCsv,
  comparisonCsv,
  comparisonHtml,
  differentKeys,
  figureRows,
  inUnits,
  labelOf,
  MOST_RUNS,
  reportFileNames,
  runEngine,
  type Comparison,
  type UnitSystem,
} from '../../index.ts';
import { writeFiles } from '../aside.ts';
import { table } from '../columns.ts';
import { EXIT, InputError, type ExitCode } from '../exit-codes.ts';
import { unitsOption } from '../options.ts';
import { plain } from '../plain.ts';
import { reportAssets } from '../report-files.ts';
import { scenarioFromFile } from '../scenario-file.ts';
import type { Command } from './command.ts';

interface CompareOptions {
  readonly files: readonly string[];
  readonly out: string;
  readonly units: UnitSystem;
}

async function compareFiles(
  { files, out, units }: CompareOptions,
  print: (text: string) => void,
): Promise<ExitCode> {
  if (files.length < 2 || files.length > MOST_RUNS)
    throw new InputError(`Name two to ${MOST_RUNS} scenario files to compare; there are ${files.length}.`);
  const scenarios = files.map((file) => scenarioFromFile(file));
  const names = shortNames(files);
  const comparison: Comparison = {
    runs: scenarios.map(({ spec }, i) => ({ name: names[i] ?? '', result: runEngine(spec) })),
    differences: differentKeys(scenarios.map(({ source }) => source)),
  };
  const turns = comparedTurnsCsv(comparison);
  const paths = await writeFiles(out, [
    [reportFileNames.comparison, comparisonHtml(comparison, await reportAssets(), units)],
    [reportFileNames.comparedFigures, comparisonCsv(comparison)],
    ...(turns === undefined ? [] : [[reportFileNames.comparedTurns, turns] as const]),
  ]);
  // Turns left over from an earlier comparison would belong to other engines.
  if (turns === undefined) await rm(join(out, reportFileNames.comparedTurns), { force: true });
  print(comparisonText(comparison, units));
  print(`\nPage: ${paths.join('\n      ')}`);
  return EXIT.ran;
}

/** File names without folder and ending; with their folder where that alone would leave two alike. */
function shortNames(files: readonly string[]): string[] {
  const bare = files.map((file) => basename(file, extname(file)));
  return bare.map((name, i) => (bare.indexOf(name) === bare.lastIndexOf(name) ? name : (files[i] ?? name)));
}

function comparisonText({ runs, differences }: Comparison, units: UnitSystem): string {
  const names = runs.map((run, i) => plain(labelOf(run, i)));
  const given = differences.map(({ key, values }) => [
    plain(key),
    ...values.map((value) => plain(value ?? 'left out')),
  ]);
  return [
    table(
      ['', ...names],
      inUnits(units, () => figureRows(runs)),
    ),
    given.length === 0
      ? 'The scenarios say the same, key by key.'
      : `${styleText('bold', 'What was changed')}\n${table(['', ...names], given)}`,
  ].join('\n\n');
}

export const compare: Command = (args, { print, guarded }) =>
  args.command(
    'compare <file..>',
    'Run several scenarios and show them on the same axes.',
    (own) =>
      own
        .positional('file', {
          type: 'string',
          array: true,
          demandOption: true,
          describe: `Two to ${MOST_RUNS} scenario files (YAML)`,
        })
        .option('out', {
          type: 'string',
          requiresArg: true,
          default: join('reports', 'comparison'),
          describe: 'Folder for the page and its table',
        })
        .options(unitsOption)
        .example('$0 compare before.yaml after.yaml', 'what a change does')
        .example(
          '$0 compare scenarios/cider-press.yaml scenarios/cider-press-drilled.yaml',
          'honed bores against drilled ones',
        ),
    ({ file, out, units }) => guarded(() => compareFiles({ files: file, out, units }, print)),
  );
