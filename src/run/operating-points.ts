/** Where an engine and its load agree: crossings of the torque curve with the torque of the load. */
import type { Load } from '../parts/loads/load.ts';
import type { OperatingPoint, TorqueCurve } from './drive-result.ts';

export function operatingPoints({ speed, torque }: TorqueCurve, load: Load): OperatingPoint[] {
  const surplus = torque.map((own, i) => own - load.torque(speed[i]!));
  const points: OperatingPoint[] = [];
  for (let i = 1; i < surplus.length; i += 1) {
    const [before, after] = [surplus[i - 1]!, surplus[i]!];
    if (before > 0 === after > 0) continue;
    const share = before / (before - after);
    points.push({ speed: speed[i - 1]! + share * (speed[i]! - speed[i - 1]!), stable: before > 0 });
  }
  return points;
}

/**
 * Seconds from one speed to another with the torque that engine and load leave each other, ∫ J dω/(T − L) by the
 * trapezoidal rule in the energy over the speeds of the curve; Infinity when it does not come to that.
 */
export function secondsBetween(
  { speed, torque }: TorqueCurve,
  load: Load,
  momentOfInertia: number,
  from: number,
  to: number,
): number {
  const surplusAt = (at: number): number => {
    const i = Math.max(
      1,
      speed.findIndex((one) => one >= at),
    );
    const share = (at - speed[i - 1]!) / (speed[i]! - speed[i - 1]!);
    const own = torque[i - 1]! + Math.max(0, share) * (torque[i]! - torque[i - 1]!);
    return own - load.torque(at);
  };
  const inner = [...speed].filter((at) => at > from && at < to);
  const stops = [from, ...inner, to];
  let seconds = 0;
  for (let i = 1; i < stops.length; i += 1) {
    const [a, b] = [stops[i - 1]!, stops[i]!];
    const mean = (surplusAt(a) + surplusAt(b)) / 2;
    if (!(mean > 0)) return Infinity;
    seconds += (momentOfInertia * (b - a)) / mean;
  }
  return seconds;
}
