/** The whole engine as a scenario describes it: one table of parameters, and the rules that span several of them. */
import { choice, group, part, partList, pureNumber, quantity, text } from '../kinds/describe.ts';
import type { Complaint } from '../kinds/kind.ts';
import type { Values } from '../kinds/parameter.ts';
import { gasNamed, gases } from '../gas/registry.ts';
import { compressor, compressorComplaints } from './compressor.ts';
import { crankTrain, cylinder, cylinderComplaints, runningDirections } from './cylinder.ts';
import { flywheels } from './flywheels/registry.ts';
import { friction, frictionComplaints } from './friction.ts';
import { leaks } from './leaks/registry.ts';
import { loads } from './loads/registry.ts';
import type { PartContext } from './part-context.ts';
import { supply, supplyComplaints } from './supply.ts';
import { valveGears } from './valve-gears/registry.ts';

const RPM = (2 * Math.PI) / 60;

/** Every key of a scenario: dimension, range, default, meaning, and how to measure it. SI, absolute pressures, radians. */
export const engineParameters = {
  title: text(120, 'What the engine is called.'),
  notes: text(4000, 'Anything worth remembering about this build.', ''),
  gas: choice(
    gases.map(({ name }) => name),
    'The working gas; it is reckoned to fill the engine and the room at its exhaust too.',
    'dry air',
  ),
  atmosphere: group('The room the engine breathes into.', {
    pressure: quantity(
      'pressure',
      { min: 50e3, max: 120e3, default: 101_325 },
      '1013 mbar absolute',
      'Air pressure.',
      'A barometer, or the weather station nearest to you; it gives pressure at sea level, so take off 12 ' +
        'mbar for every 100 m of height. The reading has to be absolute.',
    ),
    temperature: quantity(
      'temperature',
      { min: 230, max: 330, default: 288.15 },
      '15 degC',
      'Air temperature.',
      'A thermometer in the shade of the workshop, away from the compressor.',
    ),
    relative_humidity: pureNumber(
      { min: 0, max: 1, default: 0.6 },
      '60 %',
      'Relative humidity of the room air that the compressor takes in; it decides about condensate and ice.',
      'A room hygrometer beside the compressor. Without one take 60 %, or 90 % on a foggy day.',
    ),
  }),
  cylinder,
  flywheel: part(flywheels, 'What keeps the engine turning between the pushes.'),
  friction,
  load: part(loads, 'What the engine drives, at the crankshaft.'),
  valve_gear: part(valveGears, 'What opens and shuts the ports.'),
  leaks: partList(leaks, 12, 'Leaks beside those of the valve gear, which it brings itself.'),
  supply,
  compressor,
  running_direction: choice(
    runningDirections,
    'Which way it is to run: forward as the valve gear is described, or in reverse, the gear set over as far as it can be; crank angles of start and results then count that way round.',
    'forward',
  ),
  start: group('How the engine is started: the air is turned on with the crank at rest here.', {
    crank_angle: quantity(
      'angle',
      { min: -2 * Math.PI, max: 2 * Math.PI, default: Math.PI / 6 },
      '30 deg',
      'Crank angle after top dead centre.',
      'Degree disc: where the crank stands when you turn the air on. Try several; most engines of one ' +
        'cylinder start from some places only.',
    ),
    hand_speed: quantity(
      'rotational speed',
      { min: 0, max: 2000 * RPM, default: 0 },
      '60 rpm',
      'Speed given to the flywheel by hand as the air is turned on; zero to let it start unaided.',
      'A brisk pull on a 300 mm wheel gives some 60 to 120 rpm (common practice, no source); count a few ' +
        'turns against a watch.',
    ),
  }),
  run: group('How long to look.', {
    longest_time: quantity(
      'time',
      { min: 0.1, max: 3600, default: 120 },
      '120 s',
      'Engine time after which a run that has not settled is given up.',
    ),
  }),
};

/** The checked values of a scenario, in SI; what was left out is filled in. */
export type EngineSpec = Values<typeof engineParameters>;

/** What the parts may know about the engine they belong to. */
export function partContext(
  spec: Pick<EngineSpec, 'gas' | 'cylinder' | 'atmosphere' | 'valve_gear'>,
): PartContext {
  return spec.valve_gear.contextWith({
    gas: gasNamed(spec.gas),
    crank: crankTrain(spec.cylinder),
    bore: spec.cylinder.bore,
    doubleActing: spec.cylinder.action === 'double',
    rodDiameter: spec.cylinder.piston_rod_diameter ?? 0,
    atmosphericPressure: spec.atmosphere.pressure,
    atmosphericTemperature: spec.atmosphere.temperature,
  });
}

const under = (key: string, complaints: readonly Complaint[]): Complaint[] =>
  complaints.map((complaint) => ({ ...complaint, path: [key, ...complaint.path] }));

/** Everything about an engine that cannot be, although each value by itself could. */
export function engineComplaints(spec: EngineSpec): readonly Complaint[] {
  const ofCylinder = under('cylinder', cylinderComplaints(spec.cylinder));
  // Parts reckon with the crank train; with an impossible one their answers would only confuse.
  if (ofCylinder.length > 0) return ofCylinder;
  const context = partContext(spec);
  return [
    ...under('flywheel', spec.flywheel.complaints(context)),
    ...under('friction', frictionComplaints(spec.friction)),
    ...under('load', spec.load.complaints(context)),
    ...under('valve_gear', spec.valve_gear.complaints(context)),
    ...spec.leaks.flatMap((leak, i) => under('leaks', under(String(i), leak.complaints(context)))),
    ...under('supply', supplyComplaints(spec.supply, spec.atmosphere.pressure)),
    ...(spec.compressor
      ? under(
          'compressor',
          compressorComplaints(spec.compressor, {
            supplyPressure: spec.supply.pressure,
            roomPressure: spec.atmosphere.pressure,
            gas: context.gas,
          }),
        )
      : []),
  ];
}
