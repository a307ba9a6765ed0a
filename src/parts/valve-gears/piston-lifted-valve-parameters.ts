/** What a valve lifted by the piston, and the exhaust holes in the barrel, are described by. */
import { choice, count, group, optional, pureNumber, quantity } from '../../kinds/describe.ts';
import type { Values } from '../../kinds/parameter.ts';
import { seatShapes, type LiftedSeat } from './seat-opening.ts';
import { measuring } from '../measuring.ts';

export const pistonLiftedValveParameters = {
  shape: choice(seatShapes, 'What sits on the seat.', 'ball'),
  seat_diameter: quantity(
    'length',
    { min: 5e-4, max: 0.1 },
    '6 mm',
    'Diameter of the bore that is shut.',
    measuring.holeDiameter,
  ),
  valve_diameter: quantity(
    'length',
    { min: 5e-4, max: 0.2 },
    '9 mm',
    'Diameter of the ball or of the head.',
    'Micrometer; bearing balls are what they are sold as.',
  ),
  pin_diameter: quantity(
    'length',
    { min: 1e-4, max: 0.1 },
    '2.5 mm',
    'Diameter of the pin on the piston, which stands in the bore while it lifts.',
    'Callipers on the pin.',
  ),
  lift: quantity(
    'length',
    { min: 5e-5, max: 0.1 },
    '2.5 mm',
    'How far the pin holds the valve off its seat at top dead centre.',
    'Dial gauge on the ball or head through the opened cover, crank at top dead centre.',
  ),
  discharge_coefficient: pureNumber(
    { min: 0.3, max: 1, default: 0.65 },
    '0.65',
    'Of the opening at the seat and of the exhaust holes; sharp edges 0.6–0.8.',
    measuring.dischargeCoefficient,
  ),
  spring_force: quantity(
    'force',
    { min: 0, max: 1000, default: 0 },
    '0.5 N',
    'Push of the spring that holds the valve on its seat with the air off; none for a loose ball.',
    'Spring balance on the valve, air off: the pull at which it just leaves its seat.',
  ),
  rise: optional(
    quantity(
      'length',
      { min: 5e-5, max: 0.1 },
      '2.5 mm',
      'How far the valve can rise off its seat when the cylinder blows it open; as far as the pin lifts it if not given.',
      'Depth gauge on the valve, once seated and once lifted to whatever stops it.',
    ),
  ),
  seat_gap: quantity(
    'length',
    { min: 0, max: 1e-3, default: 0 },
    '2 um',
    'Height of the gap that is left round a seat that does not shut; zero for a tight one.',
    'Blow into the chest with the valve on its seat under soapy water: no bubbles, no gap. Otherwise ' +
      'time the gauge.',
  ),
  seat_width: quantity(
    'length',
    { min: 1e-5, max: 0.02, default: 3e-4 },
    '0.3 mm',
    'Width of the ring on which the valve sits.',
    'A magnifier and a rule on the bright ring that the valve has worn.',
  ),
  exhaust: group('Round holes in the barrel, all at one height, uncovered by the piston.', {
    hole_count: count({ min: 1, max: 60 }, 'Number of holes round the barrel.', 'Count them.'),
    hole_diameter: quantity(
      'length',
      { min: 2e-4, max: 0.1 },
      '6 mm',
      'Diameter of each hole.',
      measuring.holeDiameter,
    ),
    edge_from_top: quantity(
      'length',
      { min: 1e-3, max: 1 },
      '50 mm',
      "Travel of the piston from top dead centre to where it begins to uncover the holes' upper edge.",
      'Depth gauge on the piston: at top dead centre, and where a light behind the holes first shows.',
    ),
  }),
};

export type PistonLiftedValve = Values<typeof pistonLiftedValveParameters>;

export const liftedSeat = (own: PistonLiftedValve): LiftedSeat => ({
  shape: own.shape,
  seatDiameter: own.seat_diameter,
  valveDiameter: own.valve_diameter,
  pinDiameter: own.pin_diameter,
});
