/**
 * A spinning rim: rim speed v = ω·r, and the hoop stress ρ·v² of a thin free ring, which spokes, holes and cracks
 * only make worse (Mechanical Engineer's Data Handbook, stresses due to rotation). 30 m/s for cast iron: common practice,
 * no source. How fast the engine runs away without its load is not known; what speed would be too much is.
 */
import { square } from '../../numerics/elementary/whole-powers.ts';
import type { EngineFacts, RunResult } from '../../run/result.ts';
import { metresText, rimSpeedText, speedText, stressText } from '../figures.ts';
import type { Caution, Severity } from './caution.ts';

const CAST_IRON_LIMIT = 30;

type Rim = NonNullable<EngineFacts['flywheelRim']>;

export const rimSpeed = (speed: number, radius: number): number => speed * radius;

export const hoopStress = (density: number, speedOfRim: number): number => density * square(speedOfRim);

export function flywheelCaution(result: RunResult): Caution {
  const speed = fastest(result);
  const rim = result.engine.flywheelRim;
  const speedOfRim = rim === undefined ? undefined : rimSpeed(speed, rim.radius);
  return {
    topic: 'Flywheel',
    text: [
      speedOfRim === undefined || rim === undefined ? unknownRim(speed) : knownRim(speed, speedOfRim, rim),
      'An engine that loses its load runs away, and how fast was not reckoned: have a valve at hand to stop it.',
      'Key and guard the wheel, and where the rules at your place ask for a competent person to pass it, ask one.',
    ].join(' '),
    severity: speedOfRim === undefined ? 'caution' : severityOf(speedOfRim),
  };
}

function fastest({ settled, trace }: RunResult): number {
  return settled?.speed ?? trace.speed.reduce((a, b) => Math.max(a, Math.abs(b)), 0);
}

function knownRim(speed: number, speedOfRim: number, { radius, density }: Rim): string {
  return (
    `At ${speedText(speed)} the rim runs at ${rimSpeedText(speedOfRim)} (v = ω·r); a thin ring at that speed carries ` +
    `${stressText(hoopStress(density, speedOfRim))} (ρ·v²). For cast iron ${rimSpeedText(CAST_IRON_LIMIT, 2)} is the usual ` +
    `limit (common practice, no source), which this rim reaches at ${speedText(CAST_IRON_LIMIT / radius)}; spokes, ` +
    'keyways and built-up rims want less.'
  );
}

function unknownRim(speed: number): string {
  const general = `For cast iron ${rimSpeedText(CAST_IRON_LIMIT, 2)} at the rim is the usual limit (common practice, no source)`;
  if (speed <= 0) return `The size of the flywheel is not known. ${general}.`;
  const radius = CAST_IRON_LIMIT / speed;
  return (
    `The size of the flywheel is not known. ${general}; at ${speedText(speed)} that is a wheel of ` +
    `${metresText(2 * radius)} diameter.`
  );
}

function severityOf(speedOfRim: number): Severity {
  if (speedOfRim > CAST_IRON_LIMIT) return 'danger';
  return speedOfRim > CAST_IRON_LIMIT / 2 ? 'caution' : 'note';
}
