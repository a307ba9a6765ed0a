/**
 * Threads that each do one task at a time; further tasks wait for their turn. Some begin to load at once, others when there is
 * work for them and all before them are busy. One that dies fails the task it had and no other, and a new one takes its place.
 */
import type { Worker } from 'node:worker_threads';

export interface Threads<Task, Result> {
  readonly run: (task: Task) => Promise<Result>;
  /** Ends all of them; of what is under way nothing more is heard. */
  readonly close: () => Promise<void>;
}

interface Waiting<Task, Result> {
  readonly task: Task;
  readonly done: (result: Result) => void;
  readonly failed: (reason: Error) => void;
}

/** A thread takes a task as a message and answers with one. */
export function threads<Task, Result>(
  start: () => Worker,
  { atOnce, most }: { readonly atOnce: number; readonly most: number },
): Threads<Task, Result> {
  const all = new Set<Worker>();
  const idle: Worker[] = [];
  const queue: Waiting<Task, Result>[] = [];
  const atWork = new Map<Worker, Waiting<Task, Result>>();
  let closed = false;

  const started = (): Worker => {
    const thread = start();
    all.add(thread);
    let reason: Error | undefined;
    thread.on('error', (error: Error) => {
      reason = error;
    });
    thread.on('message', (result: Result) => {
      const own = atWork.get(thread);
      atWork.delete(thread);
      idle.push(thread);
      serve();
      own?.done(result);
    });
    thread.on('exit', (code) => {
      const own = atWork.get(thread);
      atWork.delete(thread);
      all.delete(thread);
      if (idle.includes(thread)) idle.splice(idle.indexOf(thread), 1);
      if (closed) return;
      own?.failed(reason ?? new Error(`its thread ended with code ${code}`));
      serve();
    });
    return thread;
  };

  const serve = (): void => {
    for (let next = queue[0]; next !== undefined && !closed; next = queue[0]) {
      const thread = idle.pop() ?? (all.size < most ? started() : undefined);
      if (thread === undefined) return;
      queue.shift();
      atWork.set(thread, next);
      thread.postMessage(next.task);
    }
  };

  while (all.size < Math.min(atOnce, most)) idle.push(started());
  return {
    run: (task) =>
      new Promise((done, failed) => {
        queue.push({ task, done, failed });
        serve();
      }),
    close: async () => {
      closed = true;
      await Promise.all([...all].map((thread) => thread.terminate()));
    },
  };
}
