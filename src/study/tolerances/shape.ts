/**
 * How sizes lie within their limits. A bell: normal with limits at three standard deviations, what falls outside is made
 * again; a machinist who works to the middle. Even: anywhere between the limits alike.
 */
import { choice } from '../../kinds/describe.ts';
import { exp } from '../../numerics/elementary/exponential.ts';
import { log } from '../../numerics/elementary/logarithm.ts';
import { cos } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';

export const shape = choice(
  ['bell', 'even'],
  'How sizes lie within the limits: most of them near the middle, or anywhere alike.',
  'bell',
);

export type Shape = 'bell' | 'even';

const SIGMAS = 3;

/** From −1 at the lower limit to 1 at the upper. Asks for two numbers, whatever the shape. */
export function place(kind: Shape, random: () => number): number {
  const [u, v] = [random(), random()];
  if (kind === 'even') return 2 * u - 1;
  return normal(u, v) / SIGMAS;
}

/** Box and Muller's transform with its radius cut off where the limits are, and the share beyond spread over the rest. */
function normal(u: number, v: number): number {
  const beyond = exp(-square(SIGMAS) / 2);
  const radius = Math.sqrt(-2 * log(beyond + (1 - beyond) * (1 - u)));
  return radius * cos(2 * Math.PI * v);
}
