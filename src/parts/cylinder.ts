/** The cylinders: how many, their sizes, their one or two working ends. */
import { choice, count, group, optional, part, pureNumber, quantity } from '../kinds/describe.ts';
import type { Complaint } from '../kinds/kind.ts';
import type { Values } from '../kinds/parameter.ts';
import { square } from '../numerics/elementary/whole-powers.ts';
import { barrelMaterialNames } from './barrel-materials.ts';
import { FULL_TURN, wrappedAngle } from './crank-positions.ts';
import type { CrankTrain } from './crank-train.ts';
import { wallHeats } from './wall-heat/registry.ts';

export const cylinderParameters = {
  bore: quantity(
    'length',
    { min: 2e-3, max: 0.5 },
    '50 mm',
    'Inside diameter of the cylinder.',
    'Inside callipers or a bore gauge at three heights and two ways across. Take the mean; a taper or ' +
      'an oval belongs into the leak.',
  ),
  stroke: quantity(
    'length',
    { min: 2e-3, max: 1 },
    '60 mm',
    'Way of the piston, twice the crank radius.',
    'A rule or a depth gauge on the piston: its travel from one dead centre to the other.',
  ),
  rod_length: quantity(
    'length',
    { min: 2e-3, max: 5 },
    '120 mm',
    'Connecting rod, centre to centre; of an oscillating cylinder, which has none, crank centre to trunnion.',
    'Callipers between the two pins, inside to inside, plus half of each pin.',
  ),
  clearance: pureNumber(
    { min: 0.001, max: 2 },
    '8 %',
    'Volume left at top dead centre with the port passage, as a share of the swept volume. Fill it with oil to measure.',
    'Piston at top dead centre, valve shut, port upward: fill the space through the port with thin oil ' +
      'from a syringe, up to the valve. Volume filled over swept volume. Piston area times the gap under ' +
      'the cover is a first guess; add the passage.',
  ),
  action: choice(
    ['single', 'double'],
    'Whether air works on the cover side of the piston only, or on both sides in turn.',
    'single',
  ),
  piston_rod_diameter: optional(
    quantity(
      'length',
      { min: 1e-3, max: 0.2 },
      '8 mm',
      'Piston rod through the gland of a double-acting cylinder; must be given for one.',
      'Callipers or a micrometer on the rod where it runs in the gland.',
    ),
  ),
  crank_end_clearance: optional(
    pureNumber(
      { min: 0.001, max: 2 },
      '10 %',
      "The same as `clearance`, at the crank end, as a share of that end's swept volume; as the cover end if not given.",
      'As at the cover end, with the piston at bottom dead centre and the crank end upward; the gland ' +
        'must hold the oil.',
    ),
  ),
  cylinders: count({ min: 1, max: 6, default: 1 }, 'How many equal cylinders work on the one shaft.'),
  crank_spacing: optional(
    quantity(
      'angle',
      { min: 0, max: 2 * Math.PI },
      '90 deg',
      'Crank angle from one cylinder to the next; spread evenly over the turn if not given.',
      'A degree disc on the shaft: read it with each piston at top dead centre.',
    ),
  ),
  attitude: choice(
    ['horizontal', 'upright', 'inverted'],
    'How the cylinder stands: lying, cover on top, or cover below. Gravity helps or hinders the piston.',
    'horizontal',
  ),
  reciprocating_mass: quantity(
    'mass',
    { min: 0, max: 100, default: 0 },
    '0.3 kg',
    'Piston, pin and a third of the rod, of one cylinder.',
    'Kitchen scales: piston with its pin, and the rod by itself, of which a third counts.',
  ),
  wall_thickness: optional(
    quantity(
      'length',
      { min: 1e-4, max: 0.1 },
      '3 mm',
      'Thinnest wall of the barrel, below any thread or groove; if given, its stress is reckoned.',
      'Callipers at the open end, less the depth of the deepest thread or groove. Of a drilled block take ' +
        'the thinnest place.',
    ),
  ),
  material: optional(
    choice(
      barrelMaterialNames,
      'What the barrel is made of; if given, the stress is held against what the material bears.',
    ),
  ),
  wall_heat: part(wallHeats, 'Heat between the cylinder wall and the air.', 'none'),
};

export const cylinder = group('Cylinder with its crank and rod.', cylinderParameters);

export type Cylinder = Values<typeof cylinderParameters>;

/** One working side of a piston. */
export interface CylinderEnd {
  /** Which cylinder, from 0. */
  readonly cylinder: number;
  readonly side: 'cover' | 'crank';
  /** Crank angle at which its volume is smallest: its own dead centre [rad]. */
  readonly deadCentre: number;
  /** Piston area on this side [m²]. */
  readonly area: number;
  readonly sweptVolume: number;
  readonly clearanceVolume: number;
}

const circle = (diameter: number): number => (Math.PI * square(diameter)) / 4;

/** Which way the engine turns; a choice of the scenario, that the valve gear is described for the first of. */
export const runningDirections = ['forward', 'reverse'] as const;
export type RunningDirection = (typeof runningDirections)[number];

/** Crank angle by which cylinder `index` follows the first [rad]; in reverse it goes before it by as much. */
export function crankOffset(own: Cylinder, index: number, direction: RunningDirection = 'forward'): number {
  const forward = index * (own.crank_spacing ?? (2 * Math.PI) / own.cylinders);
  return direction === 'forward' ? forward : wrappedAngle(FULL_TURN - forward);
}

/** Every working end, cylinder by cylinder, cover end first. */
export function cylinderEnds(own: Cylinder, direction: RunningDirection = 'forward'): readonly CylinderEnd[] {
  const { bore, stroke, action, clearance } = own;
  const rod = circle(own.piston_rod_diameter ?? 0);
  return Array.from({ length: own.cylinders }, (_, index) => {
    const offset = crankOffset(own, index, direction);
    const end = (side: CylinderEnd['side'], area: number, share: number): CylinderEnd => ({
      cylinder: index,
      side,
      deadCentre: side === 'cover' ? offset : offset + Math.PI,
      area,
      sweptVolume: area * stroke,
      clearanceVolume: share * area * stroke,
    });
    const cover = end('cover', circle(bore), clearance);
    if (action === 'single') return [cover];
    return [cover, end('crank', circle(bore) - rod, own.crank_end_clearance ?? clearance)];
  }).flat();
}

/** Volume [m³] of an end with its piston x [m] from top dead centre. */
export function endVolume(end: CylinderEnd, travel: number): number {
  const opened = end.side === 'cover' ? end.area * travel : end.sweptVolume - end.area * travel;
  return end.clearanceVolume + opened;
}

/** Crank train of a standing cylinder as seen from the cover, or from the crank end. */
export function crankTrain(
  own: Pick<Cylinder, 'stroke' | 'rod_length'>,
  side: CylinderEnd['side'] = 'cover',
): CrankTrain {
  return { crankRadius: own.stroke / 2, rodLength: own.rod_length, fromCrankEnd: side === 'crank' };
}

/** Wall that the gas of an end touches [m²]: cover and piston, and the barrel between them. */
export function wallArea(end: CylinderEnd, bore: number, volume: number): number {
  return 2 * end.area + (Math.PI * bore * volume) / end.area;
}

const mm = (length: number): string => `${(length * 1e3).toFixed(1)} mm`;

export function cylinderComplaints(own: Cylinder): readonly Complaint[] {
  const { bore, stroke, rod_length, action, piston_rod_diameter: rod } = own;
  const found: Complaint[] = [];
  if (rod_length < 0.6 * stroke)
    found.push({
      path: ['rod_length'],
      expected: `at least ${mm(0.6 * stroke)} for this stroke, or the crank cannot turn freely`,
      received: mm(rod_length),
      hint: 'Measure between the centres of the two pins; two strokes is usual.',
    });
  if (action === 'double' && rod === undefined)
    found.push({
      path: ['action'],
      expected: 'a `piston_rod_diameter` beside it, because the rod takes area from the crank end',
      received: 'double without one',
    });
  if (rod !== undefined && rod >= 0.9 * bore)
    found.push({
      path: ['piston_rod_diameter'],
      expected: `less than nine tenths of the bore, ${mm(0.9 * bore)}`,
      received: mm(rod),
    });
  return found;
}
