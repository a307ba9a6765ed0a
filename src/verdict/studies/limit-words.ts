/** How far a value may go. */
import type { Limit, LimitTask } from '../../study/limit.ts';
import type { Processes } from '../../study/processes.ts';
import { listed, measureRows, troubleOf } from './measure-words.ts';
import type { StudyWords } from './study-words.ts';

/** A limit in words. */
export function limitWords(task: LimitTask, found: Limit, processes?: Processes): StudyWords {
  const { holds, fails, probes } = found;
  const path = task.paths[0] ?? '';
  const wanted = task.conditions.length === 0 ? 'runs' : listed(task.conditions.map(({ words }) => words));
  const ends = `from ${probes[0]?.text ?? ''} to ${probes.at(-1)?.text ?? ''}`;
  if (holds === undefined)
    return {
      headline: `Nowhere ${ends} is there an engine that ${wanted}.`,
      good: false,
      statements: [`At ${probes[0]?.text ?? ''}: ${probes[0] ? troubleOf(probes[0].answer) : ''}`],
      figures: [],
    };
  const whole = found.gaps ? '' : ' all the way';
  const headline =
    fails === undefined
      ? `It ${wanted}${whole} to the end of the range, ${holds.text}; the ${task.wanted} ${path} lies beyond.`
      : `The ${task.wanted} ${path} for which it ${wanted}: ${holds.text}.`;
  return {
    headline,
    good: true,
    statements: [
      ...(fails === undefined ? [] : [failing(task, found)]),
      ...(found.gaps ? [`Short of that there are values for which it does not; see the curve.`] : []),
      ...(processes === undefined ? [] : processSentences(processes)),
    ],
    figures: measureRows(holds.answer.values),
  };
}

function failing({ conditions }: LimitTask, { fails, givesWay }: Limit): string {
  if (fails === undefined) return '';
  const condition = givesWay === undefined ? undefined : conditions[givesWay];
  return condition === undefined
    ? `At ${fails.text} it is over: ${troubleOf(fails.answer)}`
    : `At ${fails.text} it no longer ${condition.words}.`;
}

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Names that hold an "or" themselves. */
const apart = (pairs: readonly string[]): string => pairs.join('; ');

function processSentences({ surely, often }: Processes): string[] {
  const coarsest = 'Pairs of finishes, bore / rod, the coarsest that do:';
  return [
    surely.length === 0
      ? 'No pair of finishes in the tables stays within that for certain; make bore and rod to fit each other.'
      : `${coarsest} ${apart(surely)} stay within it even when both come out at their limits.`,
    ...(often.length === 0
      ? []
      : [
          `${capitalised(apart(often))} stay within it on average only: measure, and choose the rod that fits the bore.`,
        ]),
  ];
}
