/**
 * The loss-free diagram: supply pressure up to cut-off, expansion p·V^γ = const to the end of the stroke, exhaust at
 * atmospheric pressure back to the beginning. Over all ends its area is `lossFreeWork`.
 */
import { pow } from '../../numerics/elementary/power.ts';
import type { EndProfile, EngineFacts } from '../../run/result.ts';

const EXPANSION_POINTS = 24;

/** Corners and curve as [volume m³, pressure Pa], closed. */
export function idealDiagram(engine: EngineFacts, end: EndProfile): (readonly [number, number])[] {
  const { clearanceVolume: least, sweptVolume } = end;
  const { supplyPressure, atmosphericPressure, gas } = engine;
  const atCutOff = least + engine.cutOffFraction * sweptVolume;
  const most = least + sweptVolume;
  const expansion = Array.from({ length: EXPANSION_POINTS + 1 }, (_, i) => {
    const volume = atCutOff + ((most - atCutOff) * i) / EXPANSION_POINTS;
    return [volume, supplyPressure * pow(atCutOff / volume, gas.heatCapacityRatio)] as const;
  });
  return [
    [least, atmosphericPressure],
    [least, supplyPressure],
    ...expansion,
    [most, atmosphericPressure],
    [least, atmosphericPressure],
  ];
}
