/** `tickover next FILE`: what a step of each value does to the engine. */
import { changeable, nextChanges, nextPage, nextSummary, nextWords } from '../../index.ts';
import { asking } from '../studies/asking.ts';
import { finish } from '../studies/finish.ts';
import { openStudy } from '../studies/open-study.ts';
import { questionOptions, type Asker } from '../studies/question-options.ts';
import type { Command } from './command.ts';

const askNext: Asker = async (options, print) => {
  const opened = openStudy(options);
  const { reader, shared, spec } = opened.study;
  const settings = reader.given(shared).filter(changeable);
  const found = await asking(
    { opened, wanted: { starts: true, cams: false }, engines: 2 * settings.length, ...options },
    (ask) => nextChanges(settings, ask),
  );
  const title = reader.textAt(shared, ['title']) ?? spec.title;
  const about = { title, notes: '' };
  return finish(
    {
      name: 'next',
      words: () => nextWords(found),
      about,
      page: (assets) => nextPage(about, found, assets),
      summary: nextSummary(about, found),
    },
    { ...options, out: options.out ?? opened.folder },
    print,
  );
};

export const next: Command = (args, { print, guarded }) =>
  args.command(
    'next <file>',
    'Find what to change next: what a practical step of each value does.',
    (own) =>
      own
        .positional('file', { type: 'string', demandOption: true, describe: 'Scenario file (YAML)' })
        .options(questionOptions)
        .example('$0 next scenarios/cider-press.yaml', 'the demo'),
    (options) => guarded(() => askNext(options, print)),
  );
