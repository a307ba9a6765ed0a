/** Workers for a question about many engines, with a bar that counts the answers. */
import type { Ask, Wanted } from '../../index.ts';
import type { OpenedStudy } from './open-study.ts';
import { progressBar } from './progress.ts';
import { workerScript } from './worker-script.ts';
import { startWorkers, workersOf } from './workers.ts';

export interface Question {
  readonly opened: OpenedStudy;
  readonly wanted: Wanted;
  /** How many engines it will take, as far as that is known beforehand. */
  readonly engines: number;
  readonly workers: number | undefined;
  readonly quiet: boolean;
}

export async function asking<T>(
  { opened, wanted, engines, workers: count, quiet }: Question,
  work: (ask: Ask) => Promise<T>,
): Promise<T> {
  const { study, tables } = opened;
  const { file, text, shared } = study;
  const data = { file, text, tables, shared, wanted };
  const workers = startWorkers(workerScript, data, workersOf(count));
  const progress = progressBar(engines, 0, quiet);
  let answered = 0;
  try {
    return await work(async (asked) => {
      const answers = await workers.ask(asked);
      answered += answers.length;
      progress.advance(Math.min(answered, engines));
      return answers;
    });
  } finally {
    progress.end();
    await workers.close();
  }
}
