/**
 * Ports that open and shut by crank angle, whatever moves them: full area, opening, closing, and a straight ramp at
 * either end (window.ts). For an engine whose valves are not drawn yet, and for kinds of valve that have no file of their
 * own. Effective area = discharge coefficient × area × share that is open.
 *
 * The leak past a shut port is a straight slit. It goes on leaking beside the open port, where it hardly counts.
 */
import { kindOf } from '../../kinds/kind.ts';
import { slitResistance } from '../../gas/gap.ts';
import { wrappedAngle } from '../crank-positions.ts';
import type { PartContext } from '../part-context.ts';
import { gap, port, type Passage, type Port } from '../passage.ts';
import { thereAndBack } from '../turn-table.ts';
import { orderedEdges, steadyDrag, type DerivedSize, type ValveGear } from './valve-gear.ts';
import { shareOverTurn, windowEdges, windowLength } from './window.ts';
import { windowsComplaints } from './windows-complaints.ts';
import { fullArea, portNames, windowOf, windowsParameters } from './windows-parameters.ts';
import type { PortName, Windows } from './windows-parameters.ts';

const ways = {
  admission: { from: 'chest', to: 'cylinder' },
  exhaust: { from: 'cylinder', to: 'atmosphere' },
} as const;

function portOf(gear: Windows, name: PortName, context: PartContext): Port {
  const own = gear[name];
  const window = windowOf(own, context);
  const full = own.discharge_coefficient * fullArea(own);
  const ends = { name: `${name} port`, ...ways[name] };
  const area = thereAndBack((share) => full * share, [0, 1], shareOverTurn(window), 0);
  return port(context.gas, name, ends, area);
}

function leakOf(gear: Windows, name: PortName, { gas }: PartContext): Passage[] {
  const { leak } = gear[name];
  if (leak === undefined) return [];
  const { width, height, length } = leak;
  const ends = { name: `past the shut ${name} port`, ...ways[name] };
  return [gap(gas, ends, slitResistance(length, width, height), width * height)];
}

function sizesOf(gear: Windows, name: PortName, context: PartContext): DerivedSize[] {
  const own = gear[name];
  return [
    {
      label: `${name}, open for`,
      value: windowLength(windowOf(own, context)),
      dimension: 'angle',
    },
    own.area === undefined
      ? { label: `${name}, area fully open`, value: fullArea(own), dimension: 'area' }
      : {
          label: `${name}, diameter of a round hole of that area`,
          value: Math.sqrt((4 / Math.PI) * own.area),
          dimension: 'length',
        },
  ];
}

function build(gear: Windows, context: PartContext): ValveGear {
  const admission = windowOf(gear.admission, context);
  const exhaust = windowOf(gear.exhaust, context);
  return {
    ports: portNames.map((name) => portOf(gear, name, context)),
    sealingGaps: portNames.flatMap((name) => leakOf(gear, name, context)),
    edges: orderedEdges([...windowEdges(admission), ...windowEdges(exhaust)]),
    events: {
      admission: wrappedAngle(admission.opens),
      cutOff: wrappedAngle(admission.closes),
      release: wrappedAngle(exhaust.opens),
      compression: wrappedAngle(exhaust.closes),
    },
    derivedSizes: portNames.flatMap((name) => sizesOf(gear, name, context)),
    ...steadyDrag(gear.drive_torque),
  };
}

export const windows = kindOf({
  kind: 'windows',
  doc: 'Ports that open and shut at given crank angles with a straight ramp, whatever moves them.',
  parameters: windowsParameters,
  firstEngine: {
    values: { 'valve_gear.admission.hole_diameter': '7 mm', 'valve_gear.exhaust.hole_diameter': '8 mm' },
  },
  complaints: windowsComplaints,
  build,
});
