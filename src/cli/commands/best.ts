/** `tickover best FILE`: the best setting within the ranges of a study. */
import { bestPage, bestSetting, bestSummary, bestWords, planOf, type BestTask } from '../../index.ts';
import { asking } from '../studies/asking.ts';
import { finish } from '../studies/finish.ts';
import { openStudy } from '../studies/open-study.ts';
import { notAsked, questionOptions, type Asker } from '../studies/question-options.ts';
import { wantedOf } from '../studies/wanted.ts';
import type { Command } from './command.ts';

const example = 'best:\n  aim:\n    kind: highest speed';

const askBest: Asker = async (options, print) => {
  const opened = openStudy(options);
  const { spec } = opened.study;
  if (spec.best === undefined) throw notAsked(options.file, 'best', example);
  if (spec.vary.length === 0)
    throw notAsked(
      options.file,
      'vary',
      'vary:\n  - kind: range\n    setting: cylinder.bore\n    from: 40 mm\n    to: 60 mm',
    );
  const task: BestTask = {
    variations: planOf(spec).variations,
    aim: spec.best.aim.build(null),
    conditions: spec.conditions.map((own) => own.build(null)),
    mostEngines: spec.best.most_engines,
  };
  const found = await asking(
    { opened, wanted: wantedOf(opened.study), engines: task.mostEngines, ...options },
    (ask) => bestSetting(task, ask),
  );
  const about = { title: spec.title, notes: spec.notes };
  return finish(
    {
      name: 'best',
      words: () => bestWords(task, found),
      about,
      page: (assets) => bestPage(about, task, found, assets),
      summary: bestSummary(about, task, found),
    },
    { ...options, out: options.out ?? opened.folder },
    print,
  );
};

export const best: Command = (args, { print, guarded }) =>
  args.command(
    'best <file>',
    'Find the best setting within the ranges of a study.',
    (own) =>
      own
        .positional('file', { type: 'string', demandOption: true, describe: 'Study file (YAML) with "best"' })
        .options(questionOptions)
        .example('$0 best scenarios/studies/press-best-cut-off.yaml', 'the cut-off for the highest speed'),
    (options) => guarded(() => askBest(options, print)),
  );
