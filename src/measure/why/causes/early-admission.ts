/** Air let in before the dead centre pushes the crank back. */
import { buildEngine } from '../../../model/engine.ts';
import { engineSystem } from '../../../model/system.ts';
import { atan2 } from '../../../numerics/elementary/inverse-trigonometric.ts';
import { cos, sin } from '../../../numerics/elementary/trigonometric.ts';
import { square } from '../../../numerics/elementary/whole-powers.ts';
import { angleDegrees, degreesText, plain, shown, workText } from '../../words.ts';
import type { Cause, Evidence, Suspect } from '../cause.ts';
import { standingAt, STEP_ANGLE } from '../rest-scan.ts';

/** Enough to feel a push and too little to be hurt by it [Pa]. */
const LITTLE = 30e3;

/** A start by hand [rad/s]. */
const BY_HAND = 2 * Math.PI;

function suspects({ scan, spec, inertia, result }: Evidence): Suspect[] {
  const lead = -Math.min(0, wrapped(result.engine.events.admission));
  // The grid of the scan may step over a lead of a few degrees.
  const between = lead > 0 ? standingAt(engineSystem(buildEngine(spec)), -lead / 2) : undefined;
  const against = scan.filter(({ applied, admission }) => admission && applied < 0);
  const pushes = [between?.applied ?? 0, ...against.map(({ applied }) => applied)];
  const worst = Math.max(0, ...pushes.map((applied) => -applied));
  const work = Math.max(lead * worst, against.reduce((sum, { applied }) => sum - applied, 0) * STEP_ANGLE);
  const hand = spec.start.hand_speed || BY_HAND;
  const stored = 0.5 * inertia * square(hand);
  if (lead <= 0 && against.length === 0) return [];
  return [
    {
      cause: 'Admission that opens too early',
      weight: Math.max(Math.min(1, angleDegrees(lead) / 30), work / (work + stored)),
      number:
        `It opens ${plain(angleDegrees(lead), 2)}° before the dead centre. Standing there it is pushed back with up to ${shown(worst, 'torque')}, ` +
        `${workText(work, 2)} in all; a start by hand puts ${workText(stored, 2)} into the wheel.`,
      test: `Chalk the dead centre on the wheel, put ${shown(LITTLE, 'pressure difference', 1)} on, and turn forward by cord: it must not push back before the mark. First suspect a valve set too early by more than the scenario says.`,
    },
  ];
}

const wrapped = (angle: number): number => atan2(sin(angle), cos(angle));

/** Where to start instead. */
function startSuspects({ scan, spec }: Evidence): Suspect[] {
  const start = wrapped(spec.start.crank_angle);
  const there = scan.reduce((best, own) =>
    Math.abs(wrapped(own.angle - start)) < Math.abs(wrapped(best.angle - start)) ? own : best,
  );
  const good = scan.filter(({ applied, holding }) => applied > holding);
  const [first, last] = [good[0], good.at(-1)];
  const places =
    first === undefined || last === undefined
      ? 'there is no angle from which it starts by itself'
      : `it starts forward by itself from angles between ${degreesText(first.angle)} and ${degreesText(last.angle)}`;
  return [
    {
      cause: 'A starting position from which the air pushes backwards',
      weight: there.applied < 0 ? Math.min(1, -there.applied / Math.max(there.holding, 1e-9)) : 0.05,
      number: `At ${degreesText(there.angle)}, where the scenario starts, the air pushes ${there.applied < 0 ? 'back' : 'forward'} with ${shown(Math.abs(there.applied), 'torque')}; ${places}.`,
      test: 'Set the crank by the mark before the air is opened, hands off the wheel, and try again from there.',
    },
  ];
}

export const earlyAdmissionCause: Cause = {
  symptoms: ['kicks back'],
  suspects: (evidence) => [...suspects(evidence), ...startSuspects(evidence)],
};
