/** The cylinder: its sizes, volume and wall. */
import { group, part, pureNumber, quantity } from '../kinds/describe.ts';
import type { Complaint } from '../kinds/kind.ts';
import type { Values } from '../kinds/parameter.ts';
import type { CrankTrain } from './crank-train.ts';
import { wallHeats } from './wall-heat/registry.ts';

export const cylinderParameters = {
  bore: quantity('length', { min: 2e-3, max: 0.5 }, '50 mm', 'Inside diameter of the cylinder.'),
  stroke: quantity('length', { min: 2e-3, max: 1 }, '60 mm', 'Way of the piston, twice the crank radius.'),
  rod_length: quantity('length', { min: 2e-3, max: 5 }, '120 mm', 'Connecting rod, centre to centre.'),
  clearance: pureNumber(
    { min: 0.001, max: 2 },
    '8 %',
    'Volume left at top dead centre with the port passage, as a share of the swept volume. Fill it with oil to measure.',
  ),
  reciprocating_mass: quantity(
    'mass',
    { min: 0, max: 100, default: 0 },
    '0.3 kg',
    'Piston, pin and a third of the rod.',
  ),
  wall_heat: part(wallHeats, 'Heat between the cylinder wall and the air.', 'none'),
};

export const cylinder = group('Single-acting cylinder with its crank and rod.', cylinderParameters);

export type Cylinder = Values<typeof cylinderParameters>;

export const pistonArea = ({ bore }: Pick<Cylinder, 'bore'>): number => (Math.PI * bore ** 2) / 4;

export const sweptVolume = (own: Pick<Cylinder, 'bore' | 'stroke'>): number => pistonArea(own) * own.stroke;

export const clearanceVolume = (own: Pick<Cylinder, 'bore' | 'stroke' | 'clearance'>): number =>
  own.clearance * sweptVolume(own);

export const crankTrain = (own: Pick<Cylinder, 'stroke' | 'rod_length'>): CrankTrain => ({
  crankRadius: own.stroke / 2,
  rodLength: own.rod_length,
});

/** Wall that the gas touches [m²] with the piston x [m] from top dead centre: both ends and the uncovered barrel. */
export function wallArea(own: Pick<Cylinder, 'bore' | 'stroke' | 'clearance'>, travel: number): number {
  const clearanceHeight = own.clearance * own.stroke;
  return 2 * pistonArea(own) + Math.PI * own.bore * (clearanceHeight + travel);
}

export function cylinderComplaints({ stroke, rod_length }: Cylinder): readonly Complaint[] {
  const shortest = 0.6 * stroke;
  if (rod_length >= shortest) return [];
  return [
    {
      path: ['rod_length'],
      expected: `at least ${(shortest * 1e3).toFixed(1)} mm for this stroke, or the crank cannot turn freely`,
      received: `${(rod_length * 1e3).toFixed(1)} mm`,
      hint: 'Measure between the centres of the two pins; two strokes is usual.',
    },
  ];
}
