/** Way of the piston from top dead centre and what the crank makes of it, by src/parts/crank-train.ts. */
import * as engine from './engine-seat.ts';
import { CRANK_RADIUS, ROD_LENGTH, TRUNNION_DISTANCE } from './header.ts';
import { at } from './memory.ts';

function rodProjection(r: number, l: number, sin: number): number {
  return Math.sqrt(l * l - r * r * sin * sin);
}

/** From the crank pin of a cylinder that rocks to its trunnion [m]. */
function pinDistance(r: number, l: number, sin: number, cos: number): number {
  const across = l - r * cos;
  const along = r * sin;
  return Math.sqrt(across * across + along * along);
}

/** x [m]. */
export function pistonTravel(sin: number, cos: number): number {
  const r = at(engine.numbers, CRANK_RADIUS);
  const trunnion = at(engine.numbers, TRUNNION_DISTANCE);
  if (trunnion > 0) return pinDistance(r, trunnion, sin, cos) - (trunnion - r);
  const l = at(engine.numbers, ROD_LENGTH);
  return r * (1 - cos) + l - rodProjection(r, l, sin);
}

/** x′ [m/rad]. */
export function pistonTravelRate(sin: number, cos: number): number {
  const r = at(engine.numbers, CRANK_RADIUS);
  const trunnion = at(engine.numbers, TRUNNION_DISTANCE);
  if (trunnion > 0) return (trunnion * r * sin) / pinDistance(r, trunnion, sin, cos);
  return r * sin + (r * r * sin * cos) / rodProjection(r, at(engine.numbers, ROD_LENGTH), sin);
}

/** x″ [m/rad²]. */
export function pistonTravelCurvature(sin: number, cos: number): number {
  const r = at(engine.numbers, CRANK_RADIUS);
  const trunnion = at(engine.numbers, TRUNNION_DISTANCE);
  if (trunnion > 0) {
    const product = trunnion * r;
    const d = pinDistance(r, trunnion, sin, cos);
    return (product * cos) / d - (product * sin * (product * sin)) / (d * d * d);
  }
  const rod = rodProjection(r, at(engine.numbers, ROD_LENGTH), sin);
  const doubleAngle = cos * cos - sin * sin;
  const shortening = (r * r * sin * cos) / rod;
  return r * cos + (r * r * doubleAngle + shortening * shortening) / rod;
}
