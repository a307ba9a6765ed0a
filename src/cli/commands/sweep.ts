/** `tickover sweep FILE`: one row for each engine of a study. */
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import {
  inUnits,
  planOf,
  sweepPage,
  sweepWords,
  type ReportAssets,
  type Study,
  type UnitSystem,
} from '../../index.ts';
import { writeFiles } from '../aside.ts';
import { EXIT, InputError, type ExitCode } from '../exit-codes.ts';
import { unitsOption } from '../options.ts';
import { reportAssets } from '../report-files.ts';
import { fingerprintOf } from '../studies/fingerprint.ts';
import { openStudy, type OpenedStudy } from '../studies/open-study.ts';
import { progressBar } from '../studies/progress.ts';
import { enginesIn, openRowFiles, partsOf, rowPaths, wholeStudy, type Shard } from '../studies/row-files.ts';
import { sweep as sweepAll, sweepHeader, type SweepTask } from '../studies/sweep.ts';
import { startWorkers, workersOf } from '../studies/workers.ts';
import { sweptRows, type SweptRows } from '../studies/swept-rows.ts';
import { terminalWords } from '../studies/terminal-words.ts';
import { wantedOf } from '../studies/wanted.ts';
import { workerScript } from '../studies/worker-script.ts';
import { version } from '../version.ts';
import type { Command } from './command.ts';
import { outOption, quietOption, setOption, workersOption } from './study-options.ts';

const PAGE = 'sweep.html';

interface SweepOptions {
  readonly file: string;
  readonly out: string | undefined;
  readonly set: readonly string[];
  readonly vary: readonly string[];
  readonly workers: number | undefined;
  readonly shard: string | undefined;
  readonly resume: boolean;
  readonly quiet: boolean;
  readonly units: UnitSystem;
}

function shardOf(text: string | undefined): Shard {
  if (text === undefined) return wholeStudy;
  const [, index, of] = (/^(\d{1,6})\/(\d{1,6})$/u.exec(text) ?? []).map(Number);
  if (index === undefined || of === undefined || index < 1 || index > of)
    throw new InputError(`--shard ${text}: expected which share of how many, such as 2/4.`);
  return { index, of };
}

async function sweepFile(options: SweepOptions, print: (text: string) => void): Promise<ExitCode> {
  const opened = openStudy(options);
  const { spec } = opened.study;
  const plan = planOf(spec);
  const task: SweepTask = {
    plan,
    conditions: spec.conditions.map((own) => own.build(null)),
    shard: shardOf(options.shard),
  };
  const folder = options.out ?? opened.folder;
  const total = enginesIn(task.shard, plan.count);
  const rows = await sweepTo(folder, task, opened, options);
  const named = rowPaths(folder, task.shard);
  const paths = rows < total ? partsOf(named) : named;
  const files = [paths.csv, paths.json];
  if (rows < total || task.shard.of > 1) {
    const said =
      rows < total
        ? `Stopped: ${rows} of ${total} engines are written. Go on with --resume.`
        : `${rows} engines of shard ${task.shard.index} of ${task.shard.of}.`;
    if (!options.quiet) print(`${said}\n\nFiles: ${files.join('\n       ')}`);
    return rows < total ? EXIT.stopped : EXIT.ran;
  }
  const { tally, engines } = await sweptRows(paths.json, total);
  const assets = await reportAssets();
  const { page, said } = inUnits(options.units, () => toldOf(spec, task, { tally, engines }, assets));
  files.unshift(...(await writeFiles(folder, [[PAGE, page]])));
  if (!options.quiet) print(`${said}\n\nFiles: ${files.join('\n       ')}`);
  return EXIT.ran;
}

/** Page and words of a sweep that is whole. */
function toldOf(
  { title, notes, sample }: Study['spec'],
  task: SweepTask,
  { tally, engines }: SweptRows,
  assets: ReportAssets,
): { readonly page: string; readonly said: string } {
  const { variations } = task.plan;
  const conditions = task.conditions.map(({ words }) => words);
  const swept = { variations, grid: sample.kind === 'grid', conditions, tally, engines };
  const settings = variations.map((own) => own.paths[0] ?? '');
  return {
    page: sweepPage({ title, notes }, swept, assets),
    said: terminalWords(title, sweepWords(settings, conditions, tally)),
  };
}

async function sweepTo(
  folder: string,
  task: SweepTask,
  opened: OpenedStudy,
  options: SweepOptions,
): Promise<number> {
  const { study, tables } = opened;
  const count = workersOf(options.workers);
  const wanted = wantedOf(study);
  const sheet = {
    fingerprint: fingerprintOf(opened, wanted, version),
    engines: task.plan.count,
    shard: task.shard,
  };
  const { file, text, shared } = study;
  const total = enginesIn(task.shard, task.plan.count);
  // They load while the files are opened.
  const workers = startWorkers(workerScript, { file, text, tables, shared, wanted }, count, total);
  try {
    const files = await openRowFiles(folder, sheet, sweepHeader(task), options.resume);
    const progress = progressBar(total, files.rows, options.quiet);
    let stopped = false;
    const stop = (): void => {
      stopped = true;
    };
    process.once('SIGINT', stop);
    try {
      const rows = await sweepAll(task, workers, files, progress, () => stopped);
      if (rows === total) {
        // A page left over from an earlier sweep would belong to other engines.
        if (task.shard.of === 1) await rm(join(folder, PAGE), { force: true });
        await files.finish();
      }
      return rows;
    } finally {
      process.off('SIGINT', stop);
      progress.end();
      await files.close();
    }
  } finally {
    await workers.close();
  }
}

export const sweep: Command = (args, { print, guarded }) =>
  args.command(
    'sweep <file>',
    'Run every engine of a study; one row for each, also for those that do not run.',
    (own) =>
      own
        .positional('file', {
          type: 'string',
          demandOption: true,
          describe: 'Study file, or scenario with --vary (YAML)',
        })
        .option('vary', {
          type: 'string',
          array: true,
          nargs: 1,
          default: [] as string[],
          describe: 'What varies in a scenario: "cylinder.bore = 40 mm to 60 mm in 5" or "… = 40 mm, 50 mm"',
        })
        .option('set', setOption)
        .option('out', outOption)
        .option('workers', workersOption)
        .option('resume', {
          type: 'boolean',
          default: false,
          describe: 'Go on behind the rows that stand already',
        })
        .option('shard', {
          type: 'string',
          requiresArg: true,
          describe: 'Only a share of the engines, such as 2/4',
        })
        .option('quiet', quietOption)
        .options(unitsOption)
        .example('$0 sweep scenarios/studies/press-cut-off.yaml', 'all engines of a study')
        .example(
          '$0 sweep press.yaml --vary "supply.pressure = 2 bar gauge to 4 bar gauge in 9"',
          'without a study file',
        ),
    ({ file, out, set, vary, workers, shard, resume, quiet, units }) =>
      guarded(() => sweepFile({ file, out, set, vary, workers, shard, resume, quiet, units }, print)),
  );
