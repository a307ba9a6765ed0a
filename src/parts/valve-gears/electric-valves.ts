/**
 * Two bought on/off valves, one for admission and one for exhaust, switched by the crank: flow by C and b (ISO 6358)
 * times the opening, the opening by the clock (electric-valve-motion.ts). So the real events come later in the turn the
 * faster the engine runs, and above some speed the valves no longer open fully: their response limits the speed.
 *
 * The events of the gear are the commands. Edges are those of a crank at rest; with speed the kinks move away from them
 * and the integrator's step control has to find them. A seat does not leak. What the coils draw is left out.
 * In reverse the commands are passed backwards or given anew; the delays stay behind the commands either way.
 */
import { choice, crankPosition, group, pureNumber, quantity } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { Values } from '../../kinds/parameter.ts';
import { conductanceOfArea, type Conductance } from '../../gas/conductance.ts';
import { crankAngle, FULL_TURN, wrappedAngle } from '../crank-positions.ts';
import type { PartContext } from '../part-context.ts';
import { lawfulPassage, type AreaLaw, type Port } from '../passage.ts';
import {
  anyOpeningLimit,
  commandedLength,
  fullOpeningLimit,
  openingAt,
  restingEdges,
  shuttingLimit,
  type SwitchedValve,
} from './electric-valve-motion.ts';
import { degrees } from './in-words.ts';
import { orderedEdges, steadyDrag, type DerivedSize, type ValveGear } from './valve-gear.ts';

const valveParameters = (opens: string, closes: string) => ({
  sonic_conductance: quantity(
    'sonic conductance',
    { min: 1e-12, max: 1e-5 },
    '6 dm^3/(s bar)',
    'C of the valve fully open, from its data sheet (ISO 6358).',
  ),
  critical_pressure_ratio: pureNumber(
    { min: 0, max: 0.6, default: 0.3 },
    '0.3',
    'b from the same data sheet.',
  ),
  opens: crankPosition(
    opens,
    'Where the valve is switched on.',
    'Degree disc and the lamp of the valve or its sensor: the angle at which it lights, turning slowly.',
  ),
  closes: crankPosition(closes, 'Where it is switched off.', 'The angle at which the lamp goes out.'),
  opening_delay: quantity(
    'time',
    { min: 0, max: 1 },
    '8 ms',
    'From switching on until the valve begins to open.',
    'From its data sheet; or a microphone at the exhaust of the valve and one at the switch on the two ' +
      'tracks of a recording.',
  ),
  closing_delay: quantity(
    'time',
    { min: 0, max: 1 },
    '10 ms',
    'From switching off until the valve begins to shut.',
    'As for opening; it is often the longer of the two.',
  ),
  travel_time: quantity(
    'time',
    { min: 0, max: 1 },
    '4 ms',
    'From beginning to open until fully open, and likewise back.',
    'From its data sheet; if that gives one time for all, take a third of it (common practice, no ' +
      'source).',
  ),
});

const parameters = {
  in_reverse: choice(
    ['switches passed backwards', 'same angles'],
    'What an engine that runs the other way makes of the commands: switches on the crank are passed backwards, a controller that senses the direction gives each at the same angle after dead centre.',
    'switches passed backwards',
  ),
  admission: group('The valve that lets air into the cylinder.', valveParameters('0 deg', '40 % of stroke')),
  exhaust: group('The valve that lets air out.', valveParameters('170 deg', '90 % of return stroke')),
};

type ElectricValves = Values<typeof parameters>;
type ElectricValve = ElectricValves['admission'];
type PortName = 'admission' | 'exhaust';

const names: readonly PortName[] = ['admission', 'exhaust'];

/** Shortest time switched on, and off, in terms of crank angle. */
const SHORTEST_COMMAND = Math.PI / 180;

function switchedValve(own: ElectricValve, { crank }: PartContext): SwitchedValve {
  return {
    opens: crankAngle(crank, own.opens),
    closes: crankAngle(crank, own.closes),
    openingDelay: own.opening_delay,
    closingDelay: own.closing_delay,
    travelTime: own.travel_time,
  };
}

function complaintsOf(gear: ElectricValves, name: PortName, context: PartContext): Complaint[] {
  const duration = commandedLength(switchedValve(gear[name], context));
  const longest = FULL_TURN - SHORTEST_COMMAND;
  if (duration >= SHORTEST_COMMAND && duration <= longest) return [];
  return [
    {
      path: [name, 'closes'],
      expected: `switched on for ${degrees(SHORTEST_COMMAND)} to ${degrees(longest)} of the turn`,
      received: degrees(duration),
    },
  ];
}

const ways = {
  admission: { name: 'admission valve', from: 'chest', to: 'cylinder' },
  exhaust: { name: 'exhaust valve', from: 'cylinder', to: 'atmosphere' },
} as const;

function portOf(own: ElectricValve, role: PortName, valve: SwitchedValve, { gas }: PartContext): Port {
  const element: Conductance = {
    sonicConductance: own.sonic_conductance,
    criticalPressureRatio: own.critical_pressure_ratio,
  };
  const fullArea = own.sonic_conductance / conductanceOfArea(1);
  const opening: AreaLaw = (angle, speed) => openingAt(valve, angle, speed);
  return {
    ...lawfulPassage(gas, role, ways[role], { law: 'element', opening, element }),
    effectiveArea: (angle, speed) => fullArea * opening(angle, speed),
    byTheClock: true,
  };
}

function sizesOf(own: ElectricValve, name: PortName, valve: SwitchedValve): DerivedSize[] {
  const limits = [
    ['no longer opens fully', fullOpeningLimit(valve)],
    ['no longer opens at all', anyOpeningLimit(valve)],
    ['no longer shuts before it opens again', shuttingLimit(valve)],
  ] as const;
  return [
    {
      label: `${name} valve, effective area fully open`,
      value: own.sonic_conductance / conductanceOfArea(1),
      dimension: 'area',
    },
    ...limits.flatMap(([label, value]): DerivedSize[] =>
      value === undefined
        ? []
        : [{ label: `${name} valve, speed above which it ${label}`, value, dimension: 'rotational speed' }],
    ),
  ];
}

/** The same switches passed the other way round: where one was released it is now pressed. The delays stay behind. */
const passedBackwards = (valve: SwitchedValve): SwitchedValve => ({
  ...valve,
  opens: -valve.closes,
  closes: -valve.opens,
});

function build(gear: ElectricValves, context: PartContext): ValveGear {
  const admission = switchedValve(gear.admission, context);
  const exhaust = switchedValve(gear.exhaust, context);
  const forward = switchedGear(gear, context, { admission, exhaust });
  const backwards = (): ValveGear =>
    switchedGear(gear, context, {
      admission: passedBackwards(admission),
      exhaust: passedBackwards(exhaust),
    });
  const serves = gear.in_reverse === 'same angles';
  return { ...forward, reverse: { gear: serves ? () => forward : backwards, serves } };
}

function switchedGear(
  gear: ElectricValves,
  context: PartContext,
  { admission, exhaust }: Readonly<Record<PortName, SwitchedValve>>,
): ValveGear {
  return {
    ports: [
      portOf(gear.admission, 'admission', admission, context),
      portOf(gear.exhaust, 'exhaust', exhaust, context),
    ],
    sealingGaps: [],
    edges: orderedEdges([...restingEdges(admission), ...restingEdges(exhaust)]),
    events: {
      admission: wrappedAngle(admission.opens),
      cutOff: wrappedAngle(admission.closes),
      release: wrappedAngle(exhaust.opens),
      compression: wrappedAngle(exhaust.closes),
    },
    derivedSizes: [
      ...sizesOf(gear.admission, 'admission', admission),
      ...sizesOf(gear.exhaust, 'exhaust', exhaust),
    ],
    ...steadyDrag(0),
  };
}

export const electricValves = kindOf({
  kind: 'electric valves',
  doc: 'Two bought on/off valves switched by the crank; their delays shift the events with the speed.',
  parameters,
  complaints: (gear, context: PartContext) => names.flatMap((name) => complaintsOf(gear, name, context)),
  build,
});
