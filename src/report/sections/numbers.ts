/** The numbers of the settled cycle, the compressor, and how well the books close. */
import type { CompressorVerdict } from '../../run/compressor-verdict.ts';
import type {
  EngineFacts,
  GasFacts,
  Moisture,
  PlaceExtremes,
  RunResult,
  SettledCycle,
} from '../../run/result.ts';
import {
  airText,
  barText,
  celsiusText,
  figure,
  minutesText,
  powerText,
  pressureText,
  shareText,
  speedText,
  waterText,
  workText,
} from '../../verdict/figures.ts';
import { placeText } from '../../verdict/ends.ts';
import { groupTables, type Group } from '../html/groups.ts';
import type { Section } from './section.ts';

export const numbersSection: Section = {
  id: 'numbers',
  heading: 'Numbers',
  content: (result) => ({
    body: groupTables([
      ...(result.settled === undefined ? [] : cycleGroups(result.settled, result.engine)),
      ...(result.compressor === undefined ? [] : [compressorGroup(result.compressor, result.engine.gas)]),
      ...(result.moisture === undefined ? [] : [waterGroup(result.moisture, result.engine)]),
      booksGroup(result),
    ]),
  }),
};

function cycleGroups(cycle: SettledCycle, engine: EngineFacts): Group[] {
  return [
    {
      name: 'Running',
      entries: [
        ['Speed, mean of a turn', speedText(cycle.speed)],
        ['Time of a turn', `${figure(cycle.period * 1e3)} ms`],
        ['Speed swing within a turn', shareText(cycle.speedFluctuation)],
      ],
    },
    {
      name: 'Work',
      entries: [
        ['On the piston, a turn', workText(cycle.work.indicated)],
        ['Into the load, a turn', workText(cycle.work.load)],
        ['Power into the load', powerText(cycle.brakePower)],
        ['Indicated mean effective pressure', barText(cycle.indicatedMeanEffectivePressure)],
        ['Brake mean effective pressure', barText(cycle.brakeMeanEffectivePressure)],
        ['Heat from the walls into the air, a turn', workText(cycle.work.wallHeat)],
      ],
    },
    {
      name: 'Air',
      entries: [
        ['Air use', airText(cycle.airFlowAnr, engine.gas)],
        ['Air use, mass', `${figure(cycle.airMassFlow * 1e3)} g/s`],
        ['Coldest air at the exhaust', celsiusText(cycle.coldestExhaust)],
      ],
    },
    ...cycle.extremes.map((extremes) => extremesGroup(extremes, engine)),
  ];
}

function extremesGroup(
  { place, pressure, temperature }: PlaceExtremes,
  { atmosphericPressure }: EngineFacts,
): Group {
  return {
    name: `In ${placeText(place)}`,
    entries: [
      ['Highest pressure', pressureText(pressure.max, atmosphericPressure)],
      ['Lowest pressure', pressureText(pressure.min, atmosphericPressure)],
      ['Temperature', `${celsiusText(temperature.min)} to ${celsiusText(temperature.max)}`],
    ],
  };
}

function compressorGroup(compressor: CompressorVerdict, gas: GasFacts): Group {
  const { minutesUntilSag } = compressor;
  return {
    name: 'Compressor',
    entries: [
      ['The engine takes', airText(compressor.demandAnr, gas)],
      ['It delivers', airText(compressor.deliveryAnr, gas)],
      ['It runs', `${shareText(compressor.duty)} of the time`],
      ['Its maker allows', `${shareText(compressor.dutyRating)} of the time`],
      ['It keeps up', compressor.keepsUp ? 'yes' : 'no'],
      ...(minutesUntilSag === undefined
        ? []
        : [['A full receiver lasts', minutesText(minutesUntilSag)] satisfies [string, string]]),
    ],
  };
}

function waterGroup(moisture: Moisture, { atmosphericPressure }: EngineFacts): Group {
  return {
    name: 'Water in the air, an hour of running',
    entries: [
      ['Comes in with the room air', waterText(moisture.takenIn)],
      ['Drops out in the receiver', waterText(moisture.condensed)],
      ['Goes on through the engine', waterText(moisture.carriedOn)],
      ['Dew point of the room', celsiusText(moisture.roomDewPoint)],
      [
        `Dew point under ${pressureText(moisture.receiverPressure, atmosphericPressure)}`,
        celsiusText(moisture.pressureDewPoint),
      ],
      ['Dew or frost point of the exhaust', celsiusText(moisture.exhaustDewPoint)],
    ],
  };
}

/** The sign must not part from its number at the end of a line. */
const powerOfTen = (value: number): string => value.toExponential(1).replace('-', '\u2011');

function booksGroup({ ledger, counters, outcome }: RunResult): Group {
  return {
    name: 'How far to trust the arithmetic',
    entries: [
      ['Air unaccounted for, share of throughput', powerOfTen(ledger.mass)],
      ['Energy unaccounted for, share of throughput', powerOfTen(ledger.energy)],
      ['Engine time reckoned', `${figure(outcome.time)} s`],
      ['Turns', String(counters.turns)],
      ['Steps of the integrator', String(counters.acceptedSteps)],
      ['Evaluations of the model', String(counters.derivativeCalls)],
    ],
  };
}
