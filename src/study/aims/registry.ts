/** What a best engine can be best at. To add one: a file beside this one and a line here. */
import type { AimFamily } from './aim.ts';
import { mostTorque } from './most-torque.ts';
import { highestSpeed, lastsLongest, leastAirPerWork, mostPower } from './plain-aims.ts';

export const aims: AimFamily = {
  name: 'aim',
  kinds: [highestSpeed, mostPower, mostTorque, leastAirPerWork, lastsLongest],
};
