/** Too stiff: what holds it at rest against what pushes it. */
import { degreesText, percent, shown } from '../../words.ts';
import type { Cause, Evidence, Suspect } from '../cause.ts';

const hardestPush = ({ scan }: Evidence): number => Math.max(...scan.map(({ applied }) => applied));

function stiffness(evidence: Evidence): Suspect[] {
  const { place, spec } = evidence;
  const push = hardestPush(evidence);
  const load = spec.load.kind;
  if (push <= 0) return [];
  return [
    {
      cause: 'Too stiff, or too much load, where it stops',
      weight: Math.min(1, place.holding / push),
      number:
        `At ${degreesText(place.angle)} friction, valve gear and the load (${load}) hold with ${shown(place.holding, 'torque')}, the air pushes with ` +
        `${shown(place.applied, 'torque')}; its hardest push in a turn is ${shown(push, 'torque')}.`,
      test: 'Take load and hose off and hang a weight on the rim (bench test “break-away”), cold and warm, all round the turn.',
    },
  ];
}

function stickiness({ spec, scan }: Evidence): Suspect[] {
  const { breakaway_torque: still, running_torque: moving } = spec.friction;
  const mean = scan.reduce((sum, { applied }) => sum + applied, 0) / scan.length;
  if (mean <= 0 || still <= moving) return [];
  return [
    {
      cause: 'Friction that is higher at low speed',
      weight: Math.min(1, (still - moving) / mean),
      number: `Slow running costs up to ${shown(still - moving, 'torque')} more than fast by the scenario, ${percent((still - moving) / mean)} of the mean push of the air at rest.`,
      test: 'Let it coast down (bench test “coast-down”) and look whether it stops short at the end; then more oil, or another.',
    },
  ];
}

export const frictionCause: Cause = {
  symptoms: ['moves and stops', 'runs only fast'],
  suspects: (evidence) =>
    evidence.symptom === 'runs only fast' ? stickiness(evidence) : stiffness(evidence),
};
