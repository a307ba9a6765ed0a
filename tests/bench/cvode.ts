/**
 * SUNDIALS CVODE on the same engine in C, c/start-up.c: a push, then 20 s of start-up. The tolerance is the loosest from
 * which on all tighter ones agree with a tight run as closely as the answer is to be, in speed and air of the last turn.
 */
import { numbersOf } from './c-programs.ts';
import { median } from './processor-time.ts';
import { isAnswer, PUSHES, START_UP_SECONDS, type Push, type Turn } from './task.ts';

const TIGHT = 1e-8;

/** From loose to tight. */
const TOLERANCES = [1e-3, 5e-4, 2e-4, 1e-4, 5e-5, 2e-5, 1e-5, 5e-6, 2e-6, 1e-6];

export interface CvodeStartUp {
  readonly push: Push;
  readonly tolerance: number;
  /** The last turn, and that of the tight run. */
  readonly last: Turn;
  readonly tight: Turn;
  readonly derivativeCalls: number;
  readonly turns: number;
  /** Median processor time [s]. */
  readonly time: number;
}

interface Run {
  readonly last: Turn;
  readonly derivativeCalls: number;
  readonly turns: number;
  readonly time: number;
}

function runs(program: string, engine: string, push: Push, tolerance: number, repeats: number): Run[] {
  const rows = numbersOf(program, engine, push.angle, push.speed, START_UP_SECONDS, tolerance, repeats);
  return (rows ?? []).map(([speed, air, derivativeCalls, , turns, time]) => ({
    last: { speed: speed!, air: air! },
    derivativeCalls: derivativeCalls!,
    turns: turns!,
    time: time!,
  }));
}

/** The least push from which it gets going; undefined when none does. */
function leastPush(program: string, engine: string, { angle, speed }: Push): Push | undefined {
  return PUSHES.map((push): Push => ({ angle, speed: Math.max(push, speed) })).find(
    (push) => runs(program, engine, push, TIGHT, 1).length > 0,
  );
}

export function cvodeStartUp(
  program: string,
  engine: string,
  own: Push,
  repeats: number,
): CvodeStartUp | undefined {
  const push = leastPush(program, engine, own);
  if (push === undefined) return undefined;
  const tight = runs(program, engine, push, TIGHT, 1)[0]!.last;
  const agrees = (tolerance: number): boolean =>
    runs(program, engine, push, tolerance, 1).some(({ last }) => isAnswer(last, tight));
  const lastBad = TOLERANCES.findLastIndex((tolerance) => !agrees(tolerance));
  const tolerance = TOLERANCES[lastBad + 1] ?? TIGHT;
  const all = runs(program, engine, push, tolerance, repeats);
  return { ...all[0]!, push, tolerance, tight, time: median(all.map(({ time }) => time)) };
}
