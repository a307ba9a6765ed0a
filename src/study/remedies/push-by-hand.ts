/** A push of the flywheel by hand, from where the scenario starts the engine: what the start map says catches there. */
import { wrappedAngle } from '../../parts/crank-positions.ts';
import type { StartPosition } from '../../run/drive-result.ts';
import { rampText } from '../variations/variation.ts';
import { writtenAt, type RemedyRule } from './remedy.ts';

const RPM = (2 * Math.PI) / 60;

/** No brisk pull gives more [rpm]: common practice, no source. */
const HARDEST = 120;

/** A push is named in steps of so much [rpm], and once harder than the map says: there the air is on beforehand. */
const STEP = 10;
const HARDER = 1.5;

const PATH = 'start.hand_speed';

export const pushByHand: RemedyRule = (engine, { drive }) => {
  const { spec } = engine;
  const push = drive && nearest(drive.startMap.positions, spec.start.crank_angle)?.push;
  if (push === undefined || push === 0) return undefined;
  const given = spec.start.hand_speed / RPM;
  const now = writtenAt(engine, PATH) ?? rampText(given, 'rpm');
  const pushes = [1, HARDER]
    .map((times) => Math.ceil((times * push) / RPM / STEP) * STEP)
    .filter((speed) => speed > given && speed <= HARDEST);
  return {
    what: 'a push by hand',
    rungs: [...new Set(pushes)].map((speed) => [{ path: PATH, now, then: rampText(speed, 'rpm') }]),
  };
};

function nearest(positions: readonly StartPosition[], angle: number): StartPosition | undefined {
  const apart = ({ crankAngle }: StartPosition): number => {
    const between = wrappedAngle(crankAngle - angle);
    return Math.min(between, 2 * Math.PI - between);
  };
  return positions.reduce<StartPosition | undefined>(
    (best, own) => (best === undefined || apart(own) < apart(best) ? own : best),
    undefined,
  );
}
