/** The few figures that belong beside the headline, as rows of label and value. */
import { inUnits, unitSystem, type UnitSystem } from '../quantity/unit-system.ts';
import type { Drive } from '../run/drive-result.ts';
import type { CompressorVerdict } from '../run/compressor-verdict.ts';
import type { GasFacts, RunResult, SettledCycle } from '../run/result.ts';
import {
  airText,
  barText,
  minutesText,
  powerText,
  shareText,
  speedText,
  torqueText,
  workText,
} from './figures.ts';

/** A figure that everyone asks for, with its unit. */
export type KeyFigure = readonly [label: string, value: string];

/** Empty for an engine that does not run. */
export function keyFigures(
  { settled, drive, compressor, engine }: RunResult,
  units: UnitSystem = unitSystem(),
): readonly KeyFigure[] {
  return inUnits(units, () => [
    ...(settled ? running(settled, engine.gas) : []),
    ...(drive ? driving(drive) : []),
    ...(compressor ? shed(compressor) : []),
  ]);
}

function running(cycle: SettledCycle, gas: GasFacts): KeyFigure[] {
  const { work, air } = cycle;
  return [
    ['speed', `${speedText(cycle.speed)}, swinging by ${shareText(cycle.speedFluctuation)}`],
    ['power into the load', powerText(cycle.brakePower)],
    ['work per turn', `${workText(work.indicated)} indicated, ${workText(work.load)} into the load`],
    [
      'mean effective pressure',
      `${barText(cycle.indicatedMeanEffectivePressure)} indicated, ${barText(cycle.brakeMeanEffectivePressure)} brake`,
    ],
    ['air', airText(cycle.airFlowAnr, gas)],
    [
      'where the air goes',
      `${shareText(air.workedShare)} works, ${shareText(air.leakShare)} leaks, ` +
        `${shareText(air.clearanceShare)} clearance, ${shareText(air.blowThroughShare)} straight through`,
    ],
  ];
}

function driving({ stallTorque, startMap: { positions, unaidedShare } }: Drive): KeyFigure[] {
  const dead = positions.filter(({ startsUnaided, push }) => !startsUnaided && push === undefined).length;
  const byHand = 1 - unaidedShare - dead / positions.length;
  return [
    ['stalls at', torqueText(stallTorque)],
    ['starts', `by itself from ${shareText(unaidedShare)} of the turn, by hand from ${shareText(byHand)}`],
  ];
}

function shed({ duty, dutyRating, minutesUntilSag }: CompressorVerdict): KeyFigure[] {
  return [
    [
      'compressor',
      minutesUntilSag === undefined
        ? `runs ${shareText(duty)} of the time, rated for ${shareText(dutyRating)}`
        : `cannot keep up; a full receiver lasts ${minutesText(minutesUntilSag)}`,
    ],
  ];
}
