/** Way of the piston from top dead centre and what the crank makes of it, by src/parts/crank-train.ts. */
import * as engine from './engine-seat.ts';
import { CRANK_RADIUS, ROD_LENGTH, TRUNNION_DISTANCE } from './header.ts';
import { at } from './memory.ts';

/** What the travel and its rates share [m]: the rod's projection, or the pin's distance from the trunnion. */
export function reach(sin: number, cos: number): number {
  const r = at(engine.numbers, CRANK_RADIUS);
  const trunnion = at(engine.numbers, TRUNNION_DISTANCE);
  const l = at(engine.numbers, ROD_LENGTH);
  if (trunnion === 0) return Math.sqrt(l * l - r * r * sin * sin);
  const across = trunnion - r * cos;
  const along = r * sin;
  return Math.sqrt(across * across + along * along);
}

/** x [m]. */
export function pistonTravel(cos: number, reached: number): number {
  const r = at(engine.numbers, CRANK_RADIUS);
  const trunnion = at(engine.numbers, TRUNNION_DISTANCE);
  if (trunnion > 0) return reached - (trunnion - r);
  return r * (1 - cos) + at(engine.numbers, ROD_LENGTH) - reached;
}

/** x′ [m/rad]. */
export function pistonTravelRate(sin: number, cos: number, reached: number): number {
  const r = at(engine.numbers, CRANK_RADIUS);
  const trunnion = at(engine.numbers, TRUNNION_DISTANCE);
  if (trunnion > 0) return (trunnion * r * sin) / reached;
  return r * sin + (r * r * sin * cos) / reached;
}

/** x″ [m/rad²]. */
export function pistonTravelCurvature(sin: number, cos: number, reached: number): number {
  const r = at(engine.numbers, CRANK_RADIUS);
  const trunnion = at(engine.numbers, TRUNNION_DISTANCE);
  if (trunnion > 0) {
    const product = trunnion * r;
    return (product * cos) / reached - (product * sin * (product * sin)) / (reached * reached * reached);
  }
  const doubleAngle = cos * cos - sin * sin;
  const shortening = (r * r * sin * cos) / reached;
  return r * cos + (r * r * doubleAngle + shortening * shortening) / reached;
}
