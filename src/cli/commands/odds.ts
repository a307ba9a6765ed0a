/** `tickover odds FILE`: how likely an engine made within tolerances does what it should. */
import { join } from 'node:path';
import {
  nominalAt,
  oddsOf,
  oddsPage,
  oddsSummary,
  oddsWords,
  planOf,
  settingOverride,
  studyCsvHeader,
  studyCsvRows,
  type OddsTask,
  type Study,
  type Varied,
} from '../../index.ts';
import { asking } from '../studies/asking.ts';
import { finish } from '../studies/finish.ts';
import { openStudy } from '../studies/open-study.ts';
import { notAsked, questionOptions, type Asker } from '../studies/question-options.ts';
import { withRowFile } from '../studies/row-file.ts';
import { wantedOf } from '../studies/wanted.ts';
import type { Command } from './command.ts';

const example =
  'odds:\n  engines: 400\n  tolerances:\n    - kind: fit\n      setting: valve_gear.admission.clearance';

function taskOf({ spec, reader, shared }: Study, odds: NonNullable<Study['spec']['odds']>): OddsTask {
  const known = new Map<string, ReturnType<OddsTask['nominal']>>();
  return {
    plan: planOf(spec),
    tolerances: odds.tolerances.map((own) => own.build(null)),
    conditions: spec.conditions.map((own) => own.build(null)),
    engines: odds.engines,
    seed: odds.seed,
    nominal: (settings, path) => {
      const key = JSON.stringify([settings, path]);
      const found = known.get(key) ?? nominalAt(reader, [...shared, ...settings.map(settingOverride)], path);
      known.set(key, found);
      return found;
    },
  };
}

const askOdds: Asker = async (options, print) => {
  const opened = openStudy(options);
  const { spec } = opened.study;
  if (spec.odds === undefined || spec.odds.tolerances.length === 0)
    throw notAsked(options.file, 'odds', example);
  const task = taskOf(opened.study, spec.odds);
  const out = options.out ?? opened.folder;
  const varied: Varied[] = [
    ...task.plan.variations,
    ...task.tolerances.map(({ path }) => ({ paths: [path] })),
  ];
  const path = join(out, 'odds.csv');
  const engines = task.plan.count * task.engines;
  const found = await withRowFile(path, studyCsvHeader(varied), (add) =>
    asking({ opened, wanted: wantedOf(opened.study), engines, ...options }, (ask) =>
      oddsOf(task, ask, ({ point, engine, texts, answer, holds }) =>
        add(studyCsvRows(varied, [{ engine: point * task.engines + engine + 1, texts, answer, holds }])),
      ),
    ),
  );
  const about = { title: spec.title, notes: spec.notes };
  return finish(
    {
      name: 'odds',
      words: () => oddsWords(task, found),
      about,
      page: (assets) => oddsPage(about, task, found, assets),
      summary: oddsSummary(about, task, found),
      others: [path],
    },
    { ...options, out },
    print,
  );
};

export const odds: Command = (args, { print, guarded }) =>
  args.command(
    'odds <file>',
    'Find how likely an engine made within tolerances meets the conditions of a study.',
    (own) =>
      own
        .positional('file', { type: 'string', demandOption: true, describe: 'Study file (YAML) with "odds"' })
        .options(questionOptions)
        .example('$0 odds scenarios/studies/press-odds-of-finishes.yaml', 'drilled, reamed or honed'),
    (options) => guarded(() => askOdds(options, print)),
  );
