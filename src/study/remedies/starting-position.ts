/** Another starting position: the middle of the widest stretch of the turn from which the engine starts unaided. */
import type { StartPosition } from '../../run/drive-result.ts';
import { rampText } from '../variations/variation.ts';
import { writtenAt, type RemedyRule } from './remedy.ts';

const PATH = 'start.crank_angle';

export const startingPosition: RemedyRule = (engine, { drive }) => {
  const middle = drive && middleOfWidest(drive.startMap.positions);
  if (middle === undefined) return undefined;
  const now = writtenAt(engine, PATH) ?? degreesText(engine.spec.start.crank_angle);
  return {
    what: 'another starting position',
    rungs: [[{ path: PATH, now, then: degreesText(middle) }]],
  };
};

const degreesText = (angle: number): string => rampText(Math.round((angle * 180) / Math.PI), 'deg');

/** Crank angle [rad]; undefined when it starts from nowhere. */
function middleOfWidest(positions: readonly StartPosition[]): number | undefined {
  const count = positions.length;
  const starts = (i: number): boolean => positions[i % count]?.startsUnaided === true;
  let widest = { first: 0, width: 0 };
  for (let first = 0; first < count; first += 1) {
    let width = 0;
    while (width < count && starts(first + width)) width += 1;
    if (width > widest.width) widest = { first, width };
  }
  if (widest.width === 0) return undefined;
  return positions[(widest.first + Math.floor((widest.width - 1) / 2)) % count]?.crankAngle;
}
