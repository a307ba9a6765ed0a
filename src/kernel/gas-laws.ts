/** The flow laws of src/gas, over the numbers of the engine that is seated. */
import * as engine from './engine-seat.ts';
import {
  CRITICAL_PRESSURE_RATIO,
  DENSITY_NODES,
  DENSITY_TABLE_LOW,
  DENSITY_TABLE_PER_CELL,
  EQUAL_PRESSURE_ROUNDING,
  GAS_CONSTANT,
  HEAT_CAPACITY_RATIO,
  NOZZLE_FACTOR,
  SUTHERLAND_CONSTANT,
  SUTHERLAND_FACTOR,
} from './header.ts';
import { at } from './memory.ts';
import { cubic } from './tables.ts';

/** Cells of the table of ρ₂/ρ₁. */
const CELLS = 128;

/** q/√[4](q² + ρ²): the square root, rounded off next to nothing. */
export function roundedRoot(q: number, rounding: number): number {
  return q / Math.sqrt(Math.sqrt(q * q + rounding * rounding));
}

/** d/dq of `roundedRoot`. */
export function roundedRootSlope(q: number, rounding: number): number {
  const square = q * q + rounding * rounding;
  return (1 - (0.5 * q * q) / square) / Math.sqrt(Math.sqrt(square));
}

/** x^(1/γ) = ρ₂/ρ₁, by the table. */
function densityRatio(x: number): number {
  const numbers = engine.numbers;
  const u = (x - at(numbers, DENSITY_TABLE_LOW)) * at(numbers, DENSITY_TABLE_PER_CELL);
  return cubic(numbers + DENSITY_NODES, CELLS, u);
}

/** ψ(x) at a pressure ratio x = p₂/p₁ ≤ 1 [s √K/m]. */
export function nozzleFunction(ratio: number): number {
  const numbers = engine.numbers;
  const x = Math.max(ratio, at(numbers, CRITICAL_PRESSURE_RATIO));
  const density = densityRatio(x);
  return (
    at(numbers, NOZZLE_FACTOR) * density * roundedRoot(1 - x / density, at(numbers, EQUAL_PRESSURE_ROUNDING))
  );
}

/** dψ/dx: nothing as long as it chokes. */
export function nozzleFunctionSlope(ratio: number): number {
  const numbers = engine.numbers;
  if (ratio < at(numbers, CRITICAL_PRESSURE_RATIO)) return 0;
  const gamma = at(numbers, HEAT_CAPACITY_RATIO);
  const rounding = at(numbers, EQUAL_PRESSURE_ROUNDING);
  const density = densityRatio(ratio);
  const q = 1 - ratio / density;
  const byDensity = (density / (gamma * ratio)) * roundedRoot(q, rounding);
  return at(numbers, NOZZLE_FACTOR) * (byDensity - (1 - 1 / gamma) * roundedRootSlope(q, rounding));
}

/** φ(x) of an ISO 6358 element with critical ratio b. */
export function subsonicShare(b: number, ratio: number): number {
  const s = Math.max(0, (ratio - b) / (1 - b));
  return roundedRoot(1 - s * s, at(engine.numbers, EQUAL_PRESSURE_ROUNDING));
}

/** dφ/dx: nothing as long as it is choked. */
export function subsonicShareSlope(b: number, ratio: number): number {
  const s = Math.max(0, (ratio - b) / (1 - b));
  return ((-2 * s) / (1 - b)) * roundedRootSlope(1 - s * s, at(engine.numbers, EQUAL_PRESSURE_ROUNDING));
}

/** 24 μ R T₁. */
export function laminarFactor(t1: number): number {
  return 24 * viscosityAt(t1) * at(engine.numbers, GAS_CONSTANT) * t1;
}

/** μ [Pa s]. */
export function viscosityAt(t: number): number {
  const numbers = engine.numbers;
  return (at(numbers, SUTHERLAND_FACTOR) * t * Math.sqrt(t)) / (t + at(numbers, SUTHERLAND_CONSTANT));
}

/** The root of D = L ṁ + K ṁ², not above what chokes [kg/s]. */
export function drivenFlow(laminar: number, loss: number, drive: number, most: number): number {
  const flow = (2 * drive) / (laminar + Math.sqrt(laminar * laminar + 4 * loss * drive));
  return Math.min(flow, most);
}

/** dṁ/dD of an unchoked `drivenFlow`. */
export function drivenFlowSlope(laminar: number, loss: number, drive: number): number {
  return 1 / Math.sqrt(laminar * laminar + 4 * loss * drive);
}
