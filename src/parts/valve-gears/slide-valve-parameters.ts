/** What every slide valve on an eccentric is described by, flat or round. */
import { choice, pureNumber, quantity } from '../../kinds/describe.ts';
import type { Values } from '../../kinds/parameter.ts';
import type { SlideValve } from './slide-valve.ts';
import { measuring } from '../measuring.ts';

export const slideValveParameters = {
  travel: quantity(
    'length',
    { min: 5e-4, max: 0.3 },
    '10 mm',
    'Way of the valve from end to end; twice the eccentricity.',
    'Callipers on the valve rod over one turn.',
  ),
  steam_lap: quantity(
    'length',
    { min: 0, max: 0.1 },
    '1.6 mm',
    "How far the valve covers the port's edge on the chest side in its middle position.",
    'Valve in the middle of its travel: callipers from the edge of the valve to the edge of the port, ' +
      'through the opened chest.',
  ),
  exhaust_lap: quantity(
    'length',
    { min: -0.05, max: 0.1, default: 0 },
    '0.2 mm',
    "Likewise on the exhaust side; negative when the port's edge is bare there.",
    'Length of the hollow against the distance between the inner edges of the ports: half the ' +
      'difference.',
  ),
  lead: quantity(
    'length',
    { min: -0.02, max: 0.02, default: 0 },
    '0.3 mm',
    'Opening to the chest at top dead centre. Turn the eccentric on its shaft until a feeler of this size goes in.',
    'Crank at top dead centre, chest open: the feeler that just goes in between the edge of valve and ' +
      'port.',
  ),
  port_width: quantity(
    'length',
    { min: 2e-4, max: 0.1 },
    '3 mm',
    'Width of the cylinder port along the travel.',
    'Callipers, or a drill shank that fits.',
  ),
  bar_width: quantity(
    'length',
    { min: 2e-4, max: 0.2 },
    '4 mm',
    'Metal between the cylinder port and the exhaust port, along the travel.',
    'Callipers on the port face.',
  ),
  discharge_coefficient: pureNumber(
    { min: 0.3, max: 1, default: 0.7 },
    '0.7',
    'Of the opening at the edge of the valve; sharp edges 0.6–0.8.',
    measuring.dischargeCoefficient,
  ),
  rubbing_force: quantity(
    'force',
    { min: 0, max: 10_000, default: 0 },
    '15 N',
    'Pull on the valve rod that just drags the valve along, spring balance at the rod: a mean value with the air on, or with the air off where its pressure is reckoned beside it.',
    'Eccentric uncoupled, crank blocked: a spring balance on the valve rod; the mean of pulling and ' +
      'pushing. Air on, unless the share of the pressure is given beside it.',
  ),
  eccentric: choice(
    ['fixed', 'slip'],
    'How it sits on the shaft: fast where it stands for running forward, or loose between two stops, so that the shaft takes it along in the place for either direction.',
    'fixed',
  ),
};

export function slideValveOf(own: Values<typeof slideValveParameters>): SlideValve {
  return {
    eccentricity: own.travel / 2,
    steamLap: own.steam_lap,
    exhaustLap: own.exhaust_lap,
    lead: own.lead,
    portWidth: own.port_width,
    barWidth: own.bar_width,
  };
}
