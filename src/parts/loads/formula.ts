/** A load given as a formula in the engine's speed, for measured brakes and odd machines. */
import { formula } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import type { Load } from './load.ts';
import { quadraticLoad } from './quadratic.ts';

/** Speeds at which a formula must give a number; rest is where most go wrong. */
const PROBED_RPM = [0, 1, 10, 30, 100, 300, 1000, 3000, 10_000];

/** Speeds [rad/s] through which a parabola is laid, and others at which it then has to be right. */
const THROUGH = [0, 64, 128] as const;
const ALSO_AT = [0.1, 1, 7, 23, 100, 300, 1000];
const ROUNDING = 1e-13;

/** Most formulas are a constant, a line or a parabola that nowhere falls: such a load is known by its three numbers. */
function asQuadratic(torque: (speed: number) => number): Load | undefined {
  const [first, second, third] = THROUGH.map(torque) as [number, number, number];
  const step = THROUGH[1];
  const perSquare = settled((third - 2 * second + first) / (2 * step * step), first / (step * step));
  const perSpeed = settled((second - first) / step - step * perSquare, first / step);
  const load = quadraticLoad(first, perSpeed, perSquare);
  const agrees = ALSO_AT.every(
    (speed) => Math.abs(load.torque(speed) - torque(speed)) <= ROUNDING * torque(speed),
  );
  return agrees && first >= 0 && perSpeed >= 0 && perSquare >= 0 ? load : undefined;
}

/** Nothing, where it is no more than the rounding of numbers of that size. */
const settled = (value: number, size: number): number =>
  Math.abs(value) <= ROUNDING * Math.abs(size) ? 0 : value;

export const formulaLoad = kindOf({
  kind: 'formula',
  doc: 'Torque in N m as a formula of the speed in rpm. Values below zero count as no load.',
  parameters: {
    torque: formula({
      variable: 'rpm',
      variablePerSi: 60 / (2 * Math.PI),
      result: 'torque',
      example: '0.4 + 0.002*rpm',
      doc: 'Torque in N m; the one variable is rpm.',
      measure:
        'Measure the torque at two or three speeds, as for the other loads, and put a line or a curve ' +
        'through the points.',
    }),
  },
  complaints: ({ torque }): readonly Complaint[] => {
    const broken = PROBED_RPM.find((rpm) => !Number.isFinite(torque((rpm * 2 * Math.PI) / 60)));
    if (broken === undefined) return [];
    return [
      {
        path: ['torque'],
        expected: 'a finite torque at every speed from rest up',
        received: `none at ${broken} rpm`,
        hint: 'Divisions and logarithms go astray at 0 rpm; add a small number to rpm there.',
      },
    ];
  },
  build: ({ torque }, _context: PartContext): Load =>
    asQuadratic(torque) ?? { torque: (speed) => Math.max(0, torque(speed)) },
});
