/** Outcomes in plain sentences. */
import { SLOT } from '../model/slots.ts';
import { wrappedAngle } from '../parts/crank-positions.ts';
import type { Milestone, Motion } from './motion.ts';
import type { Outcome } from './outcome.ts';
import { torqueBalance } from './torque-balance.ts';

const degrees = (angle: number): string => `${(((wrappedAngle(angle) * 180) / Math.PI) % 360).toFixed(0)}°`;
const rpm = (speed: number): string => `${((speed * 60) / (2 * Math.PI)).toPrecision(3)} rpm`;

const torque = (value: number): string => `${value.toPrecision(3)} N·m`;

function pushInWords(applied: number): string {
  return `the air pushes ${applied > 0 ? '' : 'backwards '}with ${torque(Math.abs(applied))} there`;
}

function restReason(motion: Motion, moved: boolean): { reason: string; missingTorque: number } {
  const { applied, holding } = torqueBalance(motion.system, motion.y);
  const here = degrees(motion.y[SLOT.crankAngle]!);
  const missingTorque = holding - applied;
  const came = moved ? `It moves off from ${degrees(motion.startAngle)} and comes to rest at` : 'It stays at';
  const push = Math.abs(applied) < 0.005 * holding ? 'no air pushes there' : pushInWords(applied);
  const need =
    applied >= 0
      ? `${torque(holding)} are needed to move on`
      : `it would take ${torque(missingTorque)} forward to move on`;
  return { reason: `${came} ${here}: ${push}, and ${need}.`, missingTorque };
}

function creepReason(motion: Motion): { reason: string; missingTorque: number } {
  const { applied, holding } = torqueBalance(motion.system, motion.y);
  const [from, here] = [degrees(motion.startAngle), degrees(motion.y[SLOT.crankAngle]!)];
  return {
    reason: `It only creeps, from ${from} to ${here}, as fast as leaking air fills the cylinder; no port is open to drive it.`,
    missingTorque: Math.max(0, holding - applied),
  };
}

type End = Milestone | { readonly kind: 'settled' };

type Words = Pick<Outcome, 'kind' | 'reason' | 'missingTorque'>;

function words(motion: Motion, end: End, turns: number, settledSpeed: number): Words {
  const { y, startAngle, longestTime } = motion;
  const moved = Math.abs(y[SLOT.crankAngle]! - startAngle) > 1e-3;
  const speed = y[SLOT.speed]!;
  switch (end.kind) {
    case 'settled':
      return { kind: 'settled', reason: `It settles at ${rpm(settledSpeed)}, every turn like the last.` };
    case 'rest':
      return { kind: turns >= 1 ? 'stalled' : 'no-start', ...restReason(motion, moved) };
    case 'creeps':
      return { kind: turns >= 1 ? 'stalled' : 'no-start', ...creepReason(motion) };
    case 'backwards':
      return {
        kind: 'runs-backwards',
        reason: `It starts against its running direction from ${degrees(startAngle)} and keeps turning that way.`,
      };
    case 'turn':
    case 'time over':
      return speed === 0
        ? { kind: turns >= 1 ? 'stalled' : 'no-start', ...restReason(motion, moved) }
        : {
            kind: 'not-settled',
            reason: `After ${longestTime.toPrecision(3)} s it turns with ${rpm(speed)} and still changes its speed.`,
          };
    case 'step-limit':
      return {
        kind: 'step-limit',
        reason: `The reckoning became too fine to go on at ${degrees(y[SLOT.crankAngle]!)}; that is a limit of this program.`,
      };
    case 'non-finite':
      return {
        kind: 'non-finite',
        reason: `The reckoning left the possible range at ${degrees(y[SLOT.crankAngle]!)}; that is a limit of this program.`,
      };
  }
}

/** `settledSpeed` is the mean speed of the measured turn [rad/s]; the state itself holds that at top dead centre. */
export function outcomeOf(motion: Motion, end: End, settledSpeed = NaN): Outcome {
  const angle = motion.y[SLOT.crankAngle]!;
  const turns = Math.max(0, Math.floor((angle - motion.startAngle) / (2 * Math.PI)));
  return {
    ...words(motion, end, turns, settledSpeed),
    time: motion.y[SLOT.time]!,
    crankAngle: wrappedAngle(angle),
    turns,
  };
}
