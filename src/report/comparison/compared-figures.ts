/** The figures that are worth setting side by side, once as a number with its unit in the header and once for people. */
import type { OutcomeKind } from '../../run/outcome.ts';
import type { RunResult, SettledCycle } from '../../run/result.ts';
import {
  airText,
  figure,
  gaugeText,
  litresPerMinute,
  powerText,
  shareText,
  speedText,
  workText,
} from '../../verdict/figures.ts';
import type { ComparedRun } from './comparison.ts';

const outcomeWords: Readonly<Record<OutcomeKind, string>> = {
  settled: 'runs',
  stalled: 'stops',
  'no-start': 'does not start',
  'runs-backwards': 'runs backwards',
  'not-settled': 'not settled',
  'step-limit': 'no answer',
  'non-finite': 'no answer',
};

interface ComparedFigure {
  readonly label: string;
  /** Column of the CSV file, with its unit. */
  readonly header: string;
  readonly value: (cycle: SettledCycle, result: RunResult) => number;
  readonly text: (cycle: SettledCycle, result: RunResult) => string;
}

/** Brake work for a volume of air [J/m³ ANR]: the engine's mileage. */
const workPerAir = ({ brakePower, airFlowAnr }: SettledCycle): number => brakePower / airFlowAnr;

const highest = ({ extremes }: SettledCycle): number =>
  Math.max(...extremes.map(({ pressure }) => pressure.max));

export const comparedFigures: readonly ComparedFigure[] = [
  {
    label: 'speed',
    header: 'speed_rpm',
    value: ({ speed }) => (speed * 30) / Math.PI,
    text: ({ speed }) => speedText(speed),
  },
  {
    label: 'power into the load',
    header: 'brake_power_W',
    value: ({ brakePower }) => brakePower,
    text: ({ brakePower }) => powerText(brakePower),
  },
  {
    label: 'air',
    header: 'air_anr_L_per_min',
    value: ({ airFlowAnr }) => litresPerMinute(airFlowAnr),
    text: ({ airFlowAnr }, { engine }) => airText(airFlowAnr, engine.gas),
  },
  {
    label: 'work from a litre of air',
    header: 'brake_work_per_air_J_per_L',
    value: (cycle) => workPerAir(cycle) / 1e3,
    text: (cycle) => `${figure(workPerAir(cycle) / 1e3)} J`,
  },
  {
    label: 'air that does work',
    header: 'worked_share',
    value: ({ air }) => air.workedShare,
    text: ({ air }) => shareText(air.workedShare),
  },
  {
    label: 'air that leaks',
    header: 'leak_share',
    value: ({ air }) => air.leakShare,
    text: ({ air }) => shareText(air.leakShare),
  },
  {
    label: 'indicated work of a turn',
    header: 'indicated_work_J',
    value: ({ work }) => work.indicated,
    text: ({ work }) => workText(work.indicated),
  },
  {
    label: 'of it into the load',
    header: 'load_share',
    value: ({ work }) => work.load / work.indicated,
    text: ({ work }) => shareText(work.load / work.indicated),
  },
  {
    label: 'cut-off',
    header: 'cut_off_share_of_stroke',
    value: ({ cutOffFraction }) => cutOffFraction,
    text: ({ cutOffFraction }) => shareText(cutOffFraction),
  },
  {
    label: 'speed swing in a turn',
    header: 'speed_fluctuation',
    value: ({ speedFluctuation }) => speedFluctuation,
    text: ({ speedFluctuation }) => shareText(speedFluctuation),
  },
  {
    label: 'highest pressure',
    header: 'highest_pressure_bar_abs',
    value: (cycle) => highest(cycle) / 1e5,
    text: (cycle, { engine }) => gaugeText(highest(cycle), engine.atmosphericPressure),
  },
  {
    label: 'compressor runs',
    header: 'compressor_duty',
    value: (_cycle, { compressor }) => compressor?.duty ?? NaN,
    text: (_cycle, { compressor }) => (compressor === undefined ? '–' : shareText(compressor.duty)),
  },
];

/** For an engine that does not run there is nothing to say. */
const NONE = '–';

/** A row for each figure, a cell for each run; the first row says whether it runs. */
export function figureRows(runs: readonly ComparedRun[]): [label: string, ...cells: string[]][] {
  return [
    ['it', ...runs.map(({ result }) => outcomeWords[result.outcome.kind])],
    ...comparedFigures.map(({ label, text }): [string, ...string[]] => [
      label,
      ...runs.map(({ result }) => (result.settled === undefined ? NONE : text(result.settled, result))),
    ]),
  ];
}
