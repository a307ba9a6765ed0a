/** The notebook read as a whole: foretold against read, what has been learned, and the next test. */
import type { Setting } from '../../kinds/parameter.ts';
import { exp } from '../../numerics/elementary/exponential.ts';
import { hypot } from '../../numerics/elementary/roots.ts';
import { runningCautions } from '../cautions.ts';
import type { Estimate, Finding, FindingTable, Picture } from '../finding.ts';
import { unknownEstimate } from '../tests/running-log.ts';
import { estimateText, percent, plain, rpm } from '../words.ts';
import type { Attempt, RanAttempt } from './attempt.ts';
import { firstBelief, storyOf, type Belief, type Bench, type Chapter, type Story } from './learning.ts';
import { candidates, type Candidate } from './next-test.ts';

export interface Notebook {
  readonly bench: Bench;
  readonly unknowns: readonly Setting[];
  readonly guessedWithin: number;
  readonly attempts: readonly Attempt[];
}

/** Of a normal distribution, for 95 %. */
const TWO_SIDED = 1.96;

/** Foretells every attempt, learns from it, and ranks the tests that could come next. */
export function notebookFinding({ bench, unknowns, guessedWithin, attempts }: Notebook): Finding {
  const before = firstBelief(unknowns, guessedWithin);
  const story = storyOf(bench, attempts, before, guessedWithin);
  const last = attempts.findLast((own): own is RanAttempt => own.happened === 'ran');
  const next = candidates(bench, story.changes, story.after, last?.conditions);
  const estimates = estimatesOf(story.after);
  return {
    usable: attempts.length > 0,
    headline: headlineOf(story),
    estimates,
    statements: [
      ...learnedSentences(story),
      'Foretold “as drawn” is the scenario with the changes so far and the first guesses; “as known then” has what the attempts ' +
        'before had taught. Ranges are 95 %.',
    ],
    warnings: warningsOf(story),
    tables: [attemptTable(story), ...(next.length === 0 ? [] : [candidateTable(next)])],
    pictures: pictures(story),
    scenario: [
      ...story.changes.map(({ path, value }) => `${path.join('.')}: ${value}`),
      ...estimates.map(({ name, value, suffix }) => `${name}: ${plain(value, 4)} ${suffix ?? ''}`.trim()),
    ].join('\n'),
    next: nextSentence(next),
    cautions: runningCautions,
  };
}

const estimatesOf = ({ unknowns, knowledge }: Belief): Estimate[] =>
  unknowns.map((own, i) =>
    unknownEstimate(own, knowledge.mean[i]!, TWO_SIDED * Math.sqrt(knowledge.covariance[i]![i]!)),
  );

interface RanChapter extends Chapter {
  readonly attempt: RanAttempt;
}

const runsOf = ({ chapters }: Story): RanChapter[] =>
  chapters.filter((own): own is RanChapter => own.attempt.happened === 'ran');

const off = (foretold: number, read: number): string => {
  const share = foretold / read - 1;
  if (Math.abs(share) < 0.005) return 'within half a per cent of';
  return `${plain(Math.abs(share) * 100, 2)} % ${share < 0 ? 'below' : 'above'}`;
};

function headlineOf(story: Story): string {
  const runs = runsOf(story);
  const last = runs.at(-1);
  const read = last?.attempt.read.speed;
  const count = `${story.chapters.length} ${story.chapters.length === 1 ? 'attempt' : 'attempts'}`;
  if (last === undefined || read === undefined)
    return `${count}, none of them with the engine running and read.`;
  const words = (answer: Chapter['asDrawn']): string =>
    answer === undefined ? 'not to run at all' : `${off(answer.speed, read)} what was read`;
  return `${count}. The last run was foretold ${words(last.asDrawn)} as drawn, and ${words(last.asLearned)} with what was known by then.`;
}

function learnedSentences({ before, after }: Story): string[] {
  return after.unknowns.map((own, i) => {
    const [was, is] = [before, after].map(({ knowledge }) => Math.sqrt(knowledge.covariance[i]![i]!)) as [
      number,
      number,
    ];
    const [estimate] = estimatesOf(after).slice(i, i + 1) as [Estimate];
    const narrower =
      is < 0.9 * was
        ? `${plain(was / is, 2)} times better known than at first`
        : 'hardly better known than at first';
    return `${own.path}: guessed ${`${plain(own.guess)} ${own.unit}`.trim()}, now ${estimateText(estimate)}, ${narrower}.`;
  });
}

/** How far beyond its 95 % range a reading may lie before it speaks against the model itself. */
const FAR_OUT = 1.5;

function warningsOf(story: Story): string[] {
  const numbered = story.chapters.map((own, i) => ({ ...own, number: i + 1 }));
  return numbered.flatMap(({ attempt, number, asLearned, doubt }) => {
    if (attempt.happened === 'did not run' && asLearned !== undefined)
      return [
        `Attempt ${number} did not run, and by what was known it should have, at ${plain(rpm(asLearned.speed))} rpm: a cause ` +
          'that is not among the unknowns. Ask "tickover why" about its symptoms.',
      ];
    if (attempt.happened !== 'ran') return [];
    if (asLearned === undefined)
      return [
        `Attempt ${number} ran, and by what was known it should not have: nothing could be learned from it.`,
      ];
    const surprise = Math.abs(attempt.read.speed! - asLearned.speed);
    const range = TWO_SIDED * hypot(doubt, attempt.errors.speed);
    return surprise > FAR_OUT * range
      ? [
          `Attempt ${number} lies far outside of what was foretold: look for something that changed and is not in the notebook.`,
        ]
      : [];
  });
}

function attemptTable(story: Story): FindingTable {
  const speed = (value: number | undefined): string => (value === undefined ? 'stands' : plain(rpm(value)));
  return {
    caption: 'Foretold and read, speeds in rpm',
    head: ['Attempt', 'Changed', 'As drawn', 'As known then', 'Read', 'Written down then'],
    rows: story.chapters.map(({ attempt, asDrawn, asLearned, doubt }, i) => {
      const name = [`${i + 1}. ${attempt.what}`, attempt.when].filter(Boolean).join(', ');
      const changed =
        attempt.changed.map(({ path, value }) => `${path.join('.')}: ${value}`).join(', ') || 'nothing';
      if (attempt.happened === 'measured') {
        const found = attempt.found.map(({ path, value }) => `${path.join('.')} ${value}`).join(', ');
        return [name, changed, '–', '–', `${found} (within ${percent(attempt.within)})`, '–'];
      }
      if (attempt.happened === 'did not run')
        return [name, changed, speed(asDrawn?.speed), speed(asLearned?.speed), 'stands', '–'];
      const known =
        asLearned === undefined
          ? 'stands'
          : `${speed(asLearned.speed)} ± ${plain(rpm(TWO_SIDED * doubt), 2)}`;
      const foretold = attempt.foretold === undefined ? '–' : speed(attempt.foretold);
      return [name, changed, speed(asDrawn?.speed), known, speed(attempt.read.speed), foretold];
    }),
  };
}

const candidateTable = (all: readonly Candidate[]): FindingTable => ({
  caption: 'What a further test would tell: how much of what is not known it would take away',
  head: ['Test', 'Share'],
  rows: all.slice(0, 8).map(({ test, gain }) => [test, percent(Math.max(0, gain))]),
});

function nextSentence([best, second]: readonly Candidate[]): string {
  if (best === undefined)
    return 'Run it once and read speed and pressure: then there is something to learn from.';
  const other = second === undefined ? '' : ` Next best is ${second.test} (${percent(second.gain)}).`;
  return `What would tell most is ${best.test}: it takes away ${percent(best.gain)} of what is not known.${other}`;
}

function pictures(story: Story): Picture[] {
  const runs = runsOf(story);
  if (runs.length < 2) return [];
  const numbers = runs.map((own) => story.chapters.indexOf(own) + 1);
  const x = { label: 'Attempt', values: numbers, whole: true };
  const speeds = (of: (own: RanChapter) => number | undefined): number[] =>
    runs.map((own) => rpm(of(own) ?? NaN));
  return [
    {
      id: 'attempts-speed',
      title: 'Foretold and read: the lines should close in on the points',
      x,
      y: { label: 'Speed [rpm]' },
      lines: [
        { label: 'read', points: true, values: speeds(({ attempt }) => attempt.read.speed) },
        { label: 'as drawn', values: speeds(({ asDrawn }) => asDrawn?.speed) },
        { label: 'as known then', values: speeds(({ asLearned }) => asLearned?.speed) },
      ],
    },
    {
      id: 'attempts-unknowns',
      title: 'What is known of each value, as a multiple of its first guess',
      x: { label: 'After attempt', values: story.chapters.map((_, i) => i + 1), whole: true },
      y: { label: 'Multiple of the first guess' },
      lines: story.after.unknowns.map(({ path }, k) => ({
        label: path,
        values: story.chapters.map(({ after }) => exp(after.knowledge.mean[k]!)),
      })),
    },
  ];
}
