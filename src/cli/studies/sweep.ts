/**
 * A sweep: engine after engine, row after row. Some batches are always under way; their rows are written in the order of
 * the engines, so the files are the same however many workers there are, and no more is held in memory than is under way.
 */
import {
  settingsAt,
  studyCsvHeader,
  studyCsvRows,
  studyJsonLine,
  worstMargin,
  type Condition,
  type EngineAnswer,
  type Plan,
  type StudyRow,
} from '../../index.ts';
import type { Progress } from './progress.ts';
import { enginesIn, type RowFiles, type Shard } from './row-files.ts';
import type { Workers } from './workers.ts';

export interface SweepTask {
  readonly plan: Plan;
  readonly conditions: readonly Condition[];
  readonly shard: Shard;
}

/** Batches under way for each worker: one at work, the others so that nobody waits for the slowest. */
const UNDER_WAY = 4;

export const sweepHeader = ({ plan }: SweepTask): string => studyCsvHeader(plan.variations);

interface Batch {
  readonly engines: readonly number[];
  readonly answers: Promise<readonly EngineAnswer[]>;
}

/** Returns how many rows stand in the end; fewer than all if it was `stopped`. */
export async function sweep(
  task: SweepTask,
  workers: Workers,
  files: RowFiles,
  progress: Progress,
  stopped: () => boolean,
): Promise<number> {
  const { plan, shard } = task;
  const total = enginesIn(shard, plan.count);
  const size = batchSize(total - files.rows, workers.count);
  const underWay: Batch[] = [];
  let next = files.rows;
  let written = files.rows;
  while (written < total && !stopped()) {
    while (next < total && underWay.length < UNDER_WAY * workers.count) {
      const engines = Array.from(
        { length: Math.min(size(written - files.rows), total - next) },
        (_, i) => (next + i) * shard.of + shard.index - 1,
      );
      const answers = workers.ask(engines.map((engine) => settingsAt(plan.variations, plan.point(engine))));
      // Looked at when its turn comes; until then nobody else need hear of a failure.
      answers.catch(() => undefined);
      underWay.push({ engines, answers });
      next += engines.length;
    }
    const first = underWay.shift();
    if (first === undefined) break;
    const rows = rowsOf(task, first.engines, await first.answers);
    if (stopped()) break;
    await files.append(
      studyCsvRows(plan.variations, rows),
      rows.map((row) => studyJsonLine(plan.variations, row)).join(''),
    );
    written += rows.length;
    progress.advance(written);
  }
  return written;
}

/** Work for a worker in one go [s]: handing it over costs next to nothing beside it, and no more is lost with a kill. */
const BATCH_SECONDS = 0.25;
const [FIRST_BATCH, LARGEST_BATCH] = [4, 64];

/** How many engines go into a batch, by how many have been answered so far and how long that took. */
function batchSize(rows: number, workers: number): (answered: number) => number {
  const begun = performance.now();
  // Few engines are shared out so that all workers end together.
  const most = Math.min(LARGEST_BATCH, Math.ceil(rows / (8 * workers)));
  return (answered) => {
    const seconds = (performance.now() - begun) / 1000;
    const wanted = answered === 0 ? FIRST_BATCH : (BATCH_SECONDS * answered) / (seconds * workers);
    return Math.max(1, Math.min(most, Math.round(wanted)));
  };
}

function rowsOf(
  { plan, conditions }: SweepTask,
  engines: readonly number[],
  answers: readonly EngineAnswer[],
): StudyRow[] {
  return engines.flatMap((engine, i) => {
    const answer = answers[i];
    if (answer === undefined) return [];
    const holds = conditions.length === 0 ? undefined : worstMargin(conditions, answer) >= 0;
    return [{ engine: engine + 1, texts: plan.point(engine), answer, holds }];
  });
}
