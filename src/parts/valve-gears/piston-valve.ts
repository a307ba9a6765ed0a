/**
 * Piston valve: a round slide valve in a sleeve whose port runs all round between bars, moved by an eccentric. Motion,
 * openings and lands: slide-valve.ts. The port's length is π D times the share of the circumference that is not bars.
 *
 * Leaks: annuli of the radial clearance with the lands of the moment; the whole circumference is counted, bars too, which
 * is at most their share too much. A second head, where there is one, shuts the chest off from the room by a fixed land.
 * Rubbing: the given force, and a part that grows with the gauge pressure in the chest, as of rings and of the gland.
 */
import { optional, pureNumber, quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import type { Values } from '../../kinds/parameter.ts';
import { annulusResistance } from '../../gas/gap.ts';
import { clearance, clearanceComplaints, clearanceOf, fitSizes } from '../fits/clearance.ts';
import type { PartContext } from '../part-context.ts';
import { gap, type Passage } from '../passage.ts';
import { slideValveComplaints } from './slide-valve-complaints.ts';
import { slideValveGear } from './slide-valve-gear.ts';
import { slideValveOf, slideValveParameters } from './slide-valve-parameters.ts';
import { exhaustLand, exhaustLandBends, overTravel, steamLand, steamLandBends } from './slide-valve.ts';
import type { ValveGear } from './valve-gear.ts';
import { measuring } from '../measuring.ts';

const pistonValveParameters = {
  ...slideValveParameters,
  sleeve_bore: quantity(
    'length',
    { min: 2e-3, max: 0.2 },
    '16 mm',
    'Diameter of the valve and its sleeve.',
    'Micrometer on the valve.',
  ),
  port_share: pureNumber(
    { min: 0.05, max: 1, default: 0.7 },
    '70 %',
    'Share of the circumference that is port; the rest is bars.',
    'Width of all the openings round the sleeve over the circumference, 3.1416 times the bore.',
  ),
  clearance: clearance(
    '8 um',
    'Play of the valve in its sleeve: radial, half the difference of the diameters, or as a fit or two finishes.',
    measuring.clearance,
    'sleeve_bore',
  ),
  eccentricity: pureNumber(
    { min: 0, max: 1, default: 1 },
    '1',
    'Offset over clearance: 0 runs centred, 1 lies on the wall, as nothing centres a home-made valve.',
  ),
  rubbing_force_per_pressure: quantity(
    'force per pressure',
    { min: 0, max: 0.1, default: 0 },
    '0.8 N/bar',
    'Extra pull per pressure in the chest; rings and gland press harder under pressure, a plain bobbin hardly.',
    'Spring balance on the valve rod at two pressures in the chest: the difference of the pulls over that of the pressures.',
  ),
  second_head: optional(
    quantity(
      'length',
      { min: 2e-4, max: 0.2 },
      '10 mm',
      'Land of a second head that shuts the chest off from the room; leave out when the chest lies at the end.',
      'Callipers along the second head.',
    ),
  ),
};

type PistonValve = Values<typeof pistonValveParameters>;

function sealingGaps(own: PistonValve, { gas }: PartContext): Passage[] {
  const { sleeve_bore, eccentricity, second_head } = own;
  const c = clearanceOf(sleeve_bore, own.clearance).mean;
  if (c === 0) return [];
  const valve = slideValveOf(own);
  const resistance = (land: number): number => annulusResistance(sleeve_bore, c, land, eccentricity);
  const section = Math.PI * sleeve_bore * c;
  const working = [
    gap(
      gas,
      { name: 'past the steam lap', from: 'chest', to: 'cylinder' },
      overTravel(valve, (s) => resistance(steamLand(valve, s, c)), steamLandBends(valve, c)),
      section,
    ),
    gap(
      gas,
      { name: 'past the exhaust lap', from: 'cylinder', to: 'atmosphere' },
      overTravel(valve, (s) => resistance(exhaustLand(valve, s, c)), exhaustLandBends(valve, c)),
      section,
    ),
  ];
  if (second_head === undefined) return working;
  const ends = { name: 'past the second head', from: 'chest', to: 'atmosphere' } as const;
  return [...working, gap(gas, ends, resistance(Math.max(c, second_head)), section)];
}

function build(own: PistonValve, context: PartContext): ValveGear {
  const gear = slideValveGear(
    {
      valve: slideValveOf(own),
      portLength: Math.PI * own.sleeve_bore * own.port_share,
      dischargeCoefficient: own.discharge_coefficient,
      rubbingForce: (_displacement, { chest }) =>
        own.rubbing_force + own.rubbing_force_per_pressure * Math.abs(chest - context.atmosphericPressure),
      slips: own.eccentric === 'slip',
      gapHeight: clearanceOf(own.sleeve_bore, own.clearance).mean,
      sealingGaps: sealingGaps(own, context),
    },
    context,
  );
  return {
    ...gear,
    derivedSizes: [...gear.derivedSizes, ...fitSizes('valve', own.sleeve_bore, own.clearance)],
  };
}

export const pistonValve = kindOf({
  kind: 'piston valve',
  doc: 'A round valve in a ported sleeve, moved by an eccentric.',
  parameters: pistonValveParameters,
  complaints: (own) => [
    ...clearanceComplaints(['clearance'], 'sleeve_bore', own.sleeve_bore, own.clearance),
    ...slideValveComplaints(slideValveOf(own)),
  ],
  build,
});
