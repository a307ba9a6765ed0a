/** The measurements as tables of ratios, each beside what has to be reached. */
import type { DerivativeCost, Measurement } from './measure-engine.ts';
import type { Turn } from './task.ts';

/** All that is known of one engine. */
export type Measured = Measurement & { readonly derivative: DerivativeCost };

const RPM = 60 / (2 * Math.PI);

interface Column {
  readonly head: string;
  readonly of: (one: Measured) => string;
}

const milliseconds = (time: number | undefined): string =>
  time === undefined ? '–' : (1e3 * time).toPrecision(3);
const times = (ratio: number | undefined): string => (ratio === undefined ? '–' : ratio.toFixed(1));
const over = (a: number | undefined, b: number): number | undefined => (a === undefined ? undefined : a / b);
const difference = (what: keyof Turn, turn: Turn | undefined, from: Turn | undefined): string =>
  turn && from ? `${(100 * (turn[what] / from[what] - 1)).toFixed(3)} %` : '–';
const perTurn = (own: { derivativeCalls: number; turns: number }): number => own.derivativeCalls / own.turns;

function printTable(title: string, rows: readonly Measured[], columns: readonly Column[]): void {
  const cells = [columns.map(({ head }) => head), ...rows.map((row) => columns.map(({ of }) => of(row)))];
  const widths = columns.map((_, k) => Math.max(...cells.map((row) => row[k]!.length)));
  console.log(`\n${title}`);
  for (const row of cells)
    console.log(
      row.map((cell, k) => (k === 0 ? cell.padEnd(widths[k]!) : cell.padStart(widths[k]!))).join('  '),
    );
}

const settledColumns: readonly Column[] = [
  { head: 'scenario', of: ({ name }) => name },
  {
    head: 'rpm',
    of: ({ ours }) => (ours.settled ? (ours.settled.speed * RPM).toFixed(1) : ours.outcome),
  },
  { head: 'ours ms', of: ({ ours }) => milliseconds(ours.time) },
  { head: 'first ms', of: ({ ours }) => milliseconds(ours.firstTime) },
  { head: 'calls', of: ({ ours }) => String(ours.derivativeCalls) },
  { head: 'odex ms', of: ({ odex }) => milliseconds(odex?.time) },
  { head: 'tol.', of: ({ odex }) => odex?.tolerance.toExponential(0) ?? '–' },
  { head: 'push', of: ({ odex }) => odex?.push.speed.toFixed(0) ?? '–' },
  { head: 'off', of: ({ ours, odex }) => difference('speed', odex?.last, ours.settled) },
  { head: 'air', of: ({ ours, odex }) => difference('air', odex?.last, ours.settled) },
  { head: 'ours ×', of: ({ ours, odex }) => times(over(odex?.time, ours.time)) },
  { head: 'CVODE ms', of: ({ cvode }) => milliseconds(cvode?.time) },
  { head: 'tol.', of: ({ cvode }) => cvode?.tolerance.toExponential(0) ?? '–' },
  { head: 'push', of: ({ cvode }) => cvode?.push.speed.toFixed(0) ?? '–' },
  { head: 'off', of: ({ ours, cvode }) => difference('speed', cvode?.last, ours.settled) },
  { head: 'air', of: ({ ours, cvode }) => difference('air', cvode?.last, ours.settled) },
  { head: 'tight off', of: ({ ours, cvode }) => difference('speed', cvode?.tight, ours.settled) },
  { head: 'air', of: ({ ours, cvode }) => difference('air', cvode?.tight, ours.settled) },
  { head: 'ours ×', of: ({ ours, cvode }) => times(over(cvode?.time, ours.time)) },
];

const turnColumns: readonly Column[] = [
  { head: 'scenario', of: ({ name }) => name },
  { head: 'ours', of: ({ ours }) => perTurn(ours).toFixed(0) },
  { head: 'odex', of: ({ odex }) => (odex ? perTurn(odex).toFixed(0) : '–') },
  { head: 'CVODE', of: ({ cvode }) => (cvode ? perTurn(cvode).toFixed(0) : '–') },
];

const derivativeColumns: readonly Column[] = [
  { head: 'scenario', of: ({ name }) => name },
  { head: 'ours ns', of: ({ derivative }) => (1e9 * derivative.ours).toFixed(0) },
  { head: 'C ns', of: ({ derivative: { c } }) => (c === undefined ? '–' : (1e9 * c).toFixed(0)) },
  {
    head: 'ratio',
    of: ({ derivative: { ratio } }) => ratio?.toFixed(2) ?? '–',
  },
  { head: 'heap growth bytes', of: ({ derivative }) => String(derivative.growth) },
  { head: 'collected bytes/call', of: ({ derivative }) => derivative.garbage.toFixed(1) },
];

type Running = Measured & Required<Pick<Measurement, 'odex'>>;

const runs = (one: Measured): one is Running => one.odex !== undefined;

/** The least and the most stiff of the engines that run: by the calls that an explicit method makes in a turn. */
function extremes(all: readonly Running[]): readonly [mild: Running, stiff: Running] {
  const ordered = all.toSorted((a, b) => perTurn(a.odex) - perTurn(b.odex));
  return [ordered[0]!, ordered.at(-1)!];
}

const verdict = (reached: boolean): string => (reached ? 'reached' : 'NOT reached');

export function printTarget(what: string, found: number, target: string, reached: boolean): void {
  console.log(
    `${what.padEnd(64)} ${found.toFixed(2).padStart(9)}   ${target.padEnd(14)} ${verdict(reached)}`,
  );
}

function printTargets(all: readonly Measured[], mapOf: (name: string) => number): void {
  const running = all.filter(runs);
  if (running.length === 0) return;
  const [mild, stiff] = extremes(running);
  const faster = ({ ours, odex }: Running): number => odex.time / ours.time;
  const factors = all.flatMap(({ ours, cvode }) => over(cvode?.time, ours.time) ?? []);
  const slower = all.flatMap(({ derivative: { ratio } }) => ratio ?? []);
  const calls = perTurn(stiff.ours) / perTurn(mild.ours);
  const map = mapOf(stiff.name) / stiff.odex.time;
  const growth = Math.max(...all.map(({ derivative }) => derivative.growth)) / 1e6;
  console.log(`\nTo be reached; least stiff is ${mild.name}, most stiff ${stiff.name}`);
  printTarget(
    'settled speed, times faster than odex, least stiff',
    faster(mild),
    'at least 20',
    faster(mild) >= 20,
  );
  printTarget(
    'settled speed, times faster than odex, most stiff',
    faster(stiff),
    'at least 100',
    faster(stiff) >= 100,
  );
  if (factors.length > 0) {
    const least = Math.min(...factors);
    printTarget('settled speed, times faster than CVODE, least of all', least, 'at least 20', least >= 20);
  }
  printTarget('derivative calls per turn, most over least stiff', calls, 'at most 2', calls <= 2);
  if (slower.length > 0) {
    const most = Math.max(...slower);
    printTarget('one derivative call, times that of C, most of all', most, 'at most 2', most <= 2);
  }
  printTarget(`start map of ${stiff.name}, in start-ups of it with odex`, map, 'below 5', map < 5);
  printTarget(
    'heap growth over a million derivative calls, bytes per call, most',
    growth,
    'none',
    growth < 0.1,
  );
}

export function printReport(all: readonly Measured[], mapOf: (name: string) => number): void {
  printTable('Settled speed (medians, processor time)', all, settledColumns);
  printTable('Derivative calls per turn', all.filter(runs), turnColumns);
  printTable('One derivative call (medians, processor time)', all, derivativeColumns);
  printTargets(all, mapOf);
}
