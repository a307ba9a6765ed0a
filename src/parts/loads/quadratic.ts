/** A load whose torque is a polynomial of the speed of second degree: most are. */
import type { Load } from './load.ts';

export const quadraticLoad = (constant: number, perSpeed: number, perSquare: number): Load => ({
  torque: (speed) => constant + perSpeed * speed + perSquare * speed * speed,
  quadratic: [constant, perSpeed, perSquare],
});
