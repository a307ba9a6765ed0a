/** Plain sentences about a result, each one derived from its numbers. */
import type { EndFacts, GasFacts, RunResult, SettledCycle, StandStill, WorkLedger } from '../run/result.ts';
import { lossFreeWork, releasePressure, turnedBetween } from './cycle-reading.ts';
import { admissionOpenAt, exhaustOpenAt, placeText, severalEnds } from './ends.ts';
import {
  airText,
  angleText,
  gaugeText,
  inReadersUnits,
  minutesText,
  shareText,
  speedText,
  workText,
} from './figures.ts';
import { turnsText } from './headline.ts';
import { driveSentences } from './starting.ts';
import { waterSentence } from './water.ts';

/** Books that close worse than this are no books. */
const TRUSTED_RESIDUAL = 1e-4;

export const statementsOf = (result: RunResult): readonly string[] => [
  ...directionOf(result),
  ...(result.settled === undefined ? atRest(result) : whileRunning(result, result.settled)),
  ...(result.drive ? driveSentences(result.drive, result.settled?.speed) : []),
  ...doubts(result),
];

function directionOf({ engine: { reverse } }: RunResult): string[] {
  if (reverse === undefined) return [];
  const gear = reverse.gearServes
    ? 'the valve gear is set for it'
    : 'the valve gear is left as it is for running forward';
  return [`It is to run in reverse; ${gear}. All crank angles count that way round.`];
}

function whileRunning(result: RunResult, cycle: SettledCycle): string[] {
  return [
    consumption(result.engine.gas, cycle),
    ...(result.engine.gas.origin === 'room air' ? [shed(result)] : []),
    whereTheAirWent(cycle),
    releaseSentence(result, cycle),
    whereTheWorkWent(cycle.work),
    speedSwing(cycle),
    ...(result.moisture === undefined ? [] : [waterSentence(result.engine, result.moisture)]),
  ];
}

function consumption(gas: GasFacts, { airFlowAnr }: SettledCycle): string {
  const takes = `Running, it takes ${airText(airFlowAnr, gas)}`;
  return gas.origin === 'room air'
    ? `${takes}. ANR is reference air after ISO 8778 (100 kPa absolute, 20 °C, 65 % relative humidity); the cfm are of ` +
        'the same air.'
    : `${takes} of ${gas.name}. Where this says air, it means ${gas.name}.`;
}

function shed({ compressor, engine: { gas } }: RunResult): string {
  if (compressor === undefined) return 'No compressor is described, so none was checked.';
  const { deliveryAnr, demandAnr, duty, dutyRating, minutesUntilSag } = compressor;
  const delivers = `The compressor delivers ${airText(deliveryAnr, gas)}`;
  if (minutesUntilSag !== undefined)
    return (
      `${delivers} where the engine takes ${airText(demandAnr, gas)}: from a full receiver the pressure reaches the ` +
      `regulator's after ${minutesText(minutesUntilSag)}.`
    );
  if (deliveryAnr < demandAnr)
    return (
      `${delivers} half-way between cut-in and cut-out, less than the engine takes: it never stops, and the receiver settles ` +
      `lower, where it gives as much. Its maker allows it to run ${shareText(dutyRating)} of the time.`
    );
  return `${delivers} and would run ${shareText(duty)} of the time; its maker allows ${shareText(dutyRating)}.`;
}

/** The largest of some named amounts. */
function largest<T>(items: readonly T[], amount: (item: T) => number): T | undefined {
  return items.reduce<T | undefined>(
    (best, item) => (best === undefined || amount(item) > amount(best) ? item : best),
    undefined,
  );
}

function whereTheAirWent({ air }: SettledCycle): string {
  const leak = largest(air.leaks, ({ share }) => share);
  const largestLeak =
    leak === undefined || leak.share <= 0
      ? ''
      : ` (the largest leak, “${leak.name}”, takes ${shareText(leak.share)})`;
  return (
    `Of the air taken in, ${shareText(air.workedShare)} does work, ${shareText(air.leakShare)} leaks${largestLeak}, ` +
    `${shareText(air.clearanceShare)} fills the clearance and ${shareText(air.blowThroughShare)} blows straight through.`
  );
}

function releaseSentence({ engine }: RunResult, cycle: SettledCycle): string {
  const left = gaugeText(releasePressure(cycle), engine.atmosphericPressure);
  const ideal = lossFreeWork(engine);
  const yielded =
    ideal > 0
      ? `; a turn yields ${shareText(cycle.work.indicated / ideal)} of the work of a loss-free engine with the same cut-off`
      : '';
  return (
    `The admission shuts at ${shareText(cycle.cutOffFraction)} of the stroke and the air is at ${left} when the ` +
    `exhaust opens${yielded}.`
  );
}

function whereTheWorkWent(work: WorkLedger): string {
  const drags = [
    { name: 'the bearings', amount: work.bearings },
    { name: 'the piston', amount: work.piston },
    { name: 'the valve gear', amount: work.valveGear },
  ];
  const worst = largest(drags, ({ amount }) => amount);
  const most =
    worst === undefined || worst.amount <= 0
      ? ''
      : `; the largest drag is ${worst.name} with ${shareText(worst.amount / work.indicated)}`;
  return `Of ${workText(work.indicated)} a turn on the piston, ${shareText(work.load / work.indicated)} reaches the load${most}.`;
}

function speedSwing({ profile, speedFluctuation }: SettledCycle): string {
  const slowest = profile.speed.reduce((a, b) => Math.min(a, b), Infinity);
  const fastest = profile.speed.reduce((a, b) => Math.max(a, b), 0);
  return (
    `Within a turn the speed swings between ${speedText(slowest)} and ${speedText(fastest)}, ` +
    `${shareText(speedFluctuation)} of its mean.`
  );
}

function atRest(result: RunResult): string[] {
  const { outcome, engine, trace } = result;
  const fastest = trace.speed.reduce((a, b) => Math.max(a, b), 0);
  return [
    inReadersUnits(outcome.reason),
    `It made ${turnsText(outcome.turns)} and reached ${speedText(fastest)} at most.`,
    ...engine.ends.map((end) => portsOf(end, severalEnds(engine), outcome.crankAngle)),
    ...(result.standStill === undefined ? [] : [hissing(result, result.standStill)]),
  ];
}

function hissing({ engine }: RunResult, { airFlowAnr, chestPressure, leaks }: StandStill): string {
  const chest = gaugeText(chestPressure, engine.atmosphericPressure);
  const regulator = gaugeText(engine.supplyPressure, engine.atmosphericPressure);
  const most = leaks[0] === undefined ? '' : `, the largest part “${leaks[0].name}”`;
  return (
    `Standing there under air it loses ${airText(airFlowAnr, engine.gas)}${most}; the chest holds ${chest} of the regulator's ` +
    `${regulator}.`
  );
}

/** When the ports of an end are open, by the angle of the crank, and which are at the angle it stopped at. */
function portsOf(end: EndFacts, named: boolean, crankAngle: number): string {
  const { admission, cutOff, release, compression } = end.events;
  const at = (angle: number): string => angleText(turnedBetween(0, angle + end.deadCentre));
  const whose = named ? `At ${placeText(end.name)} the` : 'The';
  return (
    `${whose} admission is open from ${at(admission)} to ${at(cutOff)}, the exhaust from ${at(release)} to ` +
    `${at(compression)}; at ${angleText(crankAngle)} ${portsAt(end, crankAngle)}.`
  );
}

function portsAt(end: EndFacts, crankAngle: number): string {
  const open = [
    admissionOpenAt(end, crankAngle) ? 'the admission' : '',
    exhaustOpenAt(end, crankAngle) ? 'the exhaust' : '',
  ].filter(Boolean);
  if (open.length === 0) return 'both are shut';
  return open.length === 1 ? `only ${open.join()} is open` : 'both are open';
}

function doubts({ ledger }: RunResult): string[] {
  const worst = Math.max(ledger.mass, ledger.energy);
  if (worst <= TRUSTED_RESIDUAL) return [];
  return [
    `The books do not close: ${shareText(worst)} of the air or energy is unaccounted for, so trust no figure here.`,
  ];
}
