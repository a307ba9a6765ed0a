/** Sentences about torque and starts, from made-up curves and maps. */
import { describe, expect, it } from 'vitest';
import type { Drive, StartPosition } from '../../../src/run/drive-result.ts';
import { driveSentences } from '../../../src/verdict/starting.ts';

const RPM = Math.PI / 30;

const curve = {
  speed: Float64Array.of(2, 4),
  torque: Float64Array.of(3, 0),
  airMassFlow: new Float64Array(2),
};

function drive(changes: Partial<Drive>, pushes: readonly (number | undefined)[] = [0, 0]): Drive {
  const positions = pushes.map((push, i): StartPosition => ({
    crankAngle: i,
    startsUnaided: push === 0,
    ...(push === undefined ? {} : { push }),
  }));
  const unaidedShare = positions.filter(({ startsUnaided }) => startsUnaided).length / positions.length;
  return {
    curve,
    curveWithoutLeaks: curve,
    load: Float64Array.of(1, 1),
    stallTorque: 3,
    operatingPoints: [{ speed: 30, stable: true }],
    startMap: { positions, unaidedShare },
    ...changes,
  };
}

describe('starts', () => {
  it.each([
    [[0, 0, 0], 'It starts from every position of the crank.'],
    [
      [0, 40 * RPM, 80 * RPM, undefined],
      'It starts by itself from 25 % of the turn; elsewhere a push by hand of up to 80.0 rpm catches.',
    ],
    [[undefined], 'It starts from no position by itself; no push by hand helps elsewhere.'],
  ])('with pushes %j', (pushes, sentence) => {
    expect(driveSentences(drive({}, pushes), 30)).toContain(sentence);
  });

  it('the other way are told of a gear that serves both', () => {
    const { startMap } = drive({}, [0]);
    expect(driveSentences(drive({ startMapReversed: startMap }), 30).at(-1)).toBe(
      'In reverse it starts from every position of the crank.',
    );
  });
});

describe('other speeds', () => {
  const points = [
    { speed: 10, stable: false },
    { speed: 31, stable: true },
    { speed: 60, stable: true },
  ];

  it('are told when it settles at one of several', () => {
    const told = driveSentences(drive({ operatingPoints: points }), 30).join(' ');
    expect(told).toContain('It could also settle at 573 rpm');
    expect(told).toContain('Slower than 95.5 rpm the load overcomes it.');
  });

  it('are none when the only crossing is the settled speed, or when it does not settle', () => {
    expect(driveSentences(drive({}), 30)).toHaveLength(2);
    expect(driveSentences(drive({ operatingPoints: points }), undefined)).toHaveLength(2);
  });
});
