/**
 * Several ISO 6358 elements one behind the other as one equal element.
 *
 * With a flow q, every element in turn lowers the pressure; the largest q that all of them let through is the sonic
 * conductance of the row, and the pressure then left behind the last one, over that before the first, its critical
 * ratio. Temperature is taken as constant along the row. ISO 6358-3 likewise prescribes a stepwise calculation; the
 * rule here follows from the elements' own law and is exact at the choking point.
 */
import type { Conductance } from './conductance.ts';

/** Pressure behind an element for a flow q = C_row (inlet pressure 1 before the row); undefined when it cannot pass it. */
function behind(element: Conductance, before: number, q: number): number | undefined {
  const phi = q / (element.sonicConductance * before);
  if (phi > 1) return undefined;
  const b = element.criticalPressureRatio;
  return before * (b + (1 - b) * Math.sqrt(1 - phi * phi));
}

function outletPressure(row: readonly Conductance[], q: number): number | undefined {
  let pressure: number | undefined = 1;
  for (const element of row) pressure = pressure === undefined ? undefined : behind(element, pressure, q);
  return pressure;
}

export function conductanceInSeries(row: readonly Conductance[]): Conductance {
  let passes = 0;
  let chokes = Math.min(...row.map(({ sonicConductance }) => sonicConductance));
  for (;;) {
    const middle = (passes + chokes) / 2;
    // Until there is no number between the two.
    if (middle <= passes || middle >= chokes) break;
    if (outletPressure(row, middle) === undefined) chokes = middle;
    else passes = middle;
  }
  return { sonicConductance: passes, criticalPressureRatio: outletPressure(row, passes) ?? 0 };
}
