/** What the engine was given, and the sizes that follow from its timing and have to be made. */
import { formatQuantity } from '../../quantity/format.ts';
import type { EngineFacts } from '../../run/result.ts';
import {
  angleText,
  celsiusText,
  columnText,
  gaugeText,
  litresText,
  pressureText,
  shareText,
} from '../../verdict/figures.ts';
import { placeText } from '../../verdict/ends.ts';
import { groupTables, type Group } from '../html/groups.ts';
import type { Section } from './section.ts';

export const sizesSection: Section = {
  id: 'sizes',
  heading: 'The engine',
  content: ({ engine }) => ({
    body: groupTables([engineGroup(engine), airGroup(engine), eventsGroup(engine), derivedGroup(engine)]),
  }),
};

function engineGroup(engine: EngineFacts): Group {
  return {
    name: 'Cylinder and crank',
    entries: [
      ['Bore × stroke', `${columnText('length', engine.bore)} × ${columnText('length', engine.stroke)}`],
      ['Rod length', columnText('length', engine.rodLength)],
      ...endsEntry(engine),
      ['Swept volume', litresText(engine.sweptVolume)],
      [
        'Clearance volume',
        `${litresText(engine.clearanceVolume)}, ${shareText(engine.clearanceVolume / engine.sweptVolume)} of the swept`,
      ],
      ['Moment of inertia', columnText('moment of inertia', engine.momentOfInertia)],
    ],
  };
}

/** Only worth a line when there are several. */
function endsEntry({ ends }: EngineFacts): (readonly [string, string])[] {
  return ends.length === 1
    ? []
    : [['Working ends', `${ends.length}: ${ends.map(({ name }) => name).join('; ')}`]];
}

function airGroup(engine: EngineFacts): Group {
  const { receiver, atmosphericPressure } = engine;
  return {
    name: 'Air',
    entries: [
      ['Gas', engine.gas.name],
      ['Regulator', pressureText(engine.supplyPressure, atmosphericPressure)],
      ...(engine.regulatorInlet === undefined
        ? []
        : [
            ['In front of it', pressureText(engine.regulatorInlet, atmosphericPressure)] satisfies [
              string,
              string,
            ],
          ]),
      ['Chest and hose', litresText(engine.chestVolume)],
      ...(receiver === undefined
        ? []
        : [
            [
              'Receiver, full',
              `${litresText(receiver.volume)} at ${gaugeText(receiver.pressure, atmosphericPressure)}`,
            ] satisfies [string, string],
          ]),
      [
        'Room',
        `${formatQuantity(atmosphericPressure, 'pressure')}, ${celsiusText(engine.atmosphericTemperature)}`,
      ],
      ['Humidity of the room', shareText(engine.relativeHumidity)],
    ],
  };
}

function eventsGroup({ valveGearKind, reverse, ends, events, cutOffFraction }: EngineFacts): Group {
  return {
    name: `Valve gear: ${valveGearKind}${reverse ? ' in reverse' : ''}${ends.length > 1 ? `, of ${placeText(ends[0].name)}` : ''}`,
    entries: [
      ['Admission opens', angleText(events.admission)],
      ['Cut-off', `${angleText(events.cutOff)}, ${shareText(cutOffFraction)} of the stroke`],
      ['Release, exhaust opens', angleText(events.release)],
      ['Compression, exhaust shuts', angleText(events.compression)],
    ],
  };
}

const derivedGroup = ({ derivedSizes }: EngineFacts): Group => ({
  name: 'Sizes that follow and have to be made',
  entries: derivedSizes.map(
    ({ label, value, dimension, digits }) =>
      [label, formatQuantity(value, dimension, digits === undefined ? {} : { digits })] as const,
  ),
});
