/** `tickover limit FILE`: how far one value may go while the conditions of a study hold. */
import {
  limitOf,
  limitPage,
  limitSummary,
  lengthOf,
  limitWords,
  nominalAt,
  processesWithin,
  rampOf,
  type Limit,
  type LimitTask,
  type Processes,
  type Study,
} from '../../index.ts';
import { asking } from '../studies/asking.ts';
import { finish } from '../studies/finish.ts';
import { openStudy } from '../studies/open-study.ts';
import { notAsked, questionOptions, type Asker } from '../studies/question-options.ts';
import { wantedOf } from '../studies/wanted.ts';
import type { Command } from './command.ts';

const example = 'limit:\n  setting: leaks.0.clearance\n  from: 5 um\n  to: 100 um';

/** Engines that a limit usually takes. */
const ENGINES = 30;

/** Finishes that keep a clearance within the limit, where the value is one. */
function processesFor(
  { reader, shared }: Study,
  task: LimitTask,
  { holds, fails }: Limit,
): Processes | undefined {
  if (holds === undefined || fails === undefined || task.wanted !== 'largest') return undefined;
  const path = task.paths[0] ?? '';
  const keys = path.split('.');
  const at = { file: '', line: 0, column: 0 };
  const { diameter } = nominalAt(reader, [...shared, { path: keys, value: holds.text, at }], path);
  const gap = lengthOf(holds.text);
  return diameter === undefined || gap === undefined ? undefined : processesWithin(diameter, gap);
}

const askLimit: Asker = async (options, print) => {
  const opened = openStudy(options);
  const { spec } = opened.study;
  if (spec.limit === undefined) throw notAsked(options.file, 'limit', example);
  const task: LimitTask = {
    paths: [spec.limit.setting, ...spec.limit.also],
    ramp: rampOf(spec.limit),
    wanted: spec.limit.wanted,
    conditions: spec.conditions.map((own) => own.build(null)),
  };
  const found = await asking(
    { opened, wanted: wantedOf(opened.study), engines: ENGINES, ...options },
    (ask) => limitOf(task, ask),
  );
  const processes = processesFor(opened.study, task, found);
  const about = { title: spec.title, notes: spec.notes };
  return finish(
    {
      name: 'limit',
      words: () => limitWords(task, found, processes),
      about,
      page: (assets) => limitPage(about, task, found, processes, assets),
      summary: limitSummary(about, task, found, processes),
    },
    { ...options, out: options.out ?? opened.folder },
    print,
  );
};

export const limit: Command = (args, { print, guarded }) =>
  args.command(
    'limit <file>',
    'Find how far one value may go while the conditions of a study hold.',
    (own) =>
      own
        .positional('file', {
          type: 'string',
          demandOption: true,
          describe: 'Study file (YAML) with "limit"',
        })
        .options(questionOptions)
        .example(
          '$0 limit scenarios/studies/press-widest-clearance.yaml',
          'the largest clearance that still starts',
        ),
    (options) => guarded(() => askLimit(options, print)),
  );
