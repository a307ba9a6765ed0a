/** What the torque curve and the start map say, in sentences. */
import type { Drive, StartMap } from '../run/drive-result.ts';
import { shareText, speedText, torqueText } from './figures.ts';

/** Speeds closer than this share are one. */
const SAME_SPEED = 0.1;

export function driveSentences(drive: Drive, settledSpeed: number | undefined): string[] {
  return [
    `Brought almost to a stand it still turns ${torqueText(drive.stallTorque)} at the shaft; more stalls it.`,
    ...otherSpeeds(drive, settledSpeed),
    startsSentence('It starts', drive.startMap),
    ...(drive.startMapReversed ? [startsSentence('In reverse it starts', drive.startMapReversed)] : []),
  ];
}

/** Where else the torque of the engine meets that of the load. */
function otherSpeeds({ operatingPoints }: Drive, settledSpeed: number | undefined): string[] {
  if (settledSpeed === undefined) return [];
  const isOther = (speed: number): boolean => Math.abs(speed / settledSpeed - 1) > SAME_SPEED;
  const others = operatingPoints.filter(({ speed }) => isOther(speed));
  const stable = others.filter(({ stable: own }) => own).map(({ speed }) => speedText(speed));
  const unstable = others.filter(({ stable: own }) => !own).map(({ speed }) => speedText(speed));
  return [
    ...(stable.length > 0
      ? [`It could also settle at ${stable.join(' or ')}, if something brought it there.`]
      : []),
    ...(unstable.length > 0 ? [`Slower than ${unstable.join(' or ')} the load overcomes it.`] : []),
  ];
}

function startsSentence(starts: string, { positions, unaidedShare }: StartMap): string {
  if (unaidedShare === 1) return `${starts} from every position of the crank.`;
  const pushes = positions.flatMap(({ startsUnaided, push }) =>
    startsUnaided || push === undefined ? [] : [push],
  );
  const hardest = pushes.reduce((most, push) => Math.max(most, push), 0);
  const pushed =
    pushes.length === 0
      ? 'no push by hand helps elsewhere'
      : `elsewhere a push by hand of up to ${speedText(hardest)} catches`;
  const from =
    unaidedShare === 0
      ? 'from no position by itself'
      : `by itself from ${shareText(unaidedShare)} of the turn`;
  return `${starts} ${from}; ${pushed}.`;
}
