/** Outcomes in plain sentences. */
import { SLOT } from '../model/slots.ts';
import { wrappedAngle } from '../parts/crank-positions.ts';
import type { Milestone, Motion } from './motion.ts';
import type { Outcome } from './outcome.ts';
import { torqueBalance } from './torque-balance.ts';

const degrees = (angle: number): string => `${Math.round((wrappedAngle(angle) * 180) / Math.PI) % 360}°`;

/** Three significant digits, never as a power of ten. */
const plain = (value: number): string => String(Number(value.toPrecision(3)));
const rpm = (speed: number): string => `${plain((speed * 60) / (2 * Math.PI))} rpm`;

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

/** What the words of an outcome are made from. */
interface Ended {
  readonly motion: Motion;
  readonly turns: number;
  readonly settledSpeed: number;
}

const atRest = ({ turns }: Ended): 'stalled' | 'no-start' => (turns >= 1 ? 'stalled' : 'no-start');

const broken = ({ y }: Motion, what: string): string =>
  `The reckoning ${what} at ${degrees(y[SLOT.crankAngle]!)}; that is a limit of this program.`;

function rest(ended: Ended): Words {
  const { y, startAngle } = ended.motion;
  const moved = Math.abs(y[SLOT.crankAngle]! - startAngle) > 1e-3;
  return { kind: atRest(ended), ...restReason(ended.motion, moved) };
}

function timeOver(ended: Ended): Words {
  const { y, longestTime } = ended.motion;
  const speed = y[SLOT.speed]!;
  if (speed === 0) return rest(ended);
  return {
    kind: 'not-settled',
    reason: `After ${plain(longestTime)} s it turns with ${rpm(speed)} and still changes its speed.`,
  };
}

const words: Readonly<Record<End['kind'], (ended: Ended) => Words>> = {
  settled: ({ settledSpeed }) => ({
    kind: 'settled',
    reason: `It settles at ${rpm(settledSpeed)}, every turn like the last.`,
  }),
  rest,
  creeps: (ended) => ({ kind: atRest(ended), ...creepReason(ended.motion) }),
  backwards: ({ motion }) => ({
    kind: 'runs-backwards',
    reason: `It starts against its running direction from ${degrees(motion.startAngle)} and keeps turning that way.`,
  }),
  turn: timeOver,
  'time over': timeOver,
  'hardly gets round': () => ({
    kind: 'not-settled',
    reason:
      'It goes on turning, but comes so near to a standstill on its way round that no turn is like the last.',
  }),
  'step-limit': ({ motion }) => ({ kind: 'step-limit', reason: broken(motion, 'became too fine to go on') }),
  'non-finite': ({ motion }) => ({ kind: 'non-finite', reason: broken(motion, 'left the possible range') }),
};

/** `settledSpeed` is the mean speed of the measured turn [rad/s]; the state itself holds that at top dead centre. */
export function outcomeOf(motion: Motion, end: End, settledSpeed = NaN): Outcome {
  const angle = motion.y[SLOT.crankAngle]!;
  const turns = Math.max(0, Math.floor((angle - motion.startAngle) / (2 * Math.PI)));
  return {
    ...words[end.kind]({ motion, turns, settledSpeed }),
    time: motion.y[SLOT.time]!,
    crankAngle: wrappedAngle(angle),
    turns,
  };
}
