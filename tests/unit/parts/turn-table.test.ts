/** Quantities tabulated over a stretch of the turn, or over the whole of it. */
import { openingLaw } from '../../../src/parts/passage.ts';
import { expect, it } from 'vitest';
import {
  thereAndBack,
  turnTable,
  turnTableValue,
  wholeTurnTables,
  type TurnTable,
} from '../../../src/parts/turn-table.ts';

const TURN = 2 * Math.PI;

it('holds over its stretch, turn after turn and backwards', () => {
  const table = turnTable(Math.sin, 5, [0, Math.PI]);
  for (const angle of [5.5, 5.5 + TURN, 5.5 - 3 * TURN])
    expect(turnTableValue(table, angle)).toBeCloseTo(Math.sin(0.5), 6);
  for (const angle of [5, 5 + Math.PI, 4.9, 3]) expect(turnTableValue(table, angle)).toBeCloseTo(0, 12);
});

it('goes over the whole turn between edges, for laws that are worked out together', () => {
  const [kinked, smooth] = wholeTurnTables(
    2,
    (angle, values) => {
      values[0] = Math.abs(Math.cos(angle));
      values[1] = 5 + Math.sin(angle);
    },
    [Math.PI / 2, (3 * Math.PI) / 2],
  ) as [TurnTable, TurnTable];
  for (let angle = -7; angle < 7; angle += 0.01) {
    expect(turnTableValue(kinked, angle)).toBeCloseTo(Math.abs(Math.cos(angle)), 5);
    expect(turnTableValue(smooth, angle)).toBeCloseTo(5 + Math.sin(angle), 5);
  }
});

it('goes over the whole turn of a smooth law without edges', () => {
  const [table] = wholeTurnTables(
    1,
    (angle, values) => {
      values[0] = Math.cos(angle);
    },
    [],
  );
  expect(turnTableValue(table!, 2)).toBeCloseTo(Math.cos(2), 4);
});

/** Rises to a stage of 2 in 2 rad, rests, and falls back over 1 rad. */
const trip = { leaves: 5, returns: 9, perStageThere: 1, perStageBack: 0.5 };
const stageAt = (since: number): number => Math.max(0, Math.min(since, 2, (4 - since) / 0.5));

it('goes there and back, at unlike paces and with a rest between', () => {
  const law = (stage: number): number => 1 + Math.sin(stage);
  const table = openingLaw(thereAndBack(law, [0, 0.5, 2, 2], trip, 1));
  for (let since = 0; since < TURN; since += 0.01)
    expect(table(5 + since, 0)).toBeCloseTo(law(stageAt(since)), 6);
});

it('begins where the law does, if that is later than the motion', () => {
  const law = (stage: number): number => Math.max(0, stage - 0.75);
  const table = openingLaw(thereAndBack(law, [0.75, 2], trip, 0));
  for (let since = 0; since < TURN; since += 0.01)
    expect(table(5 + since, 0)).toBeCloseTo(law(stageAt(since)), 6);
});

it('goes over the whole turn of a motion that rests nowhere', () => {
  const swinging = { leaves: 1, returns: 1 + Math.PI, perStageThere: 1, perStageBack: 1 };
  const law = (stage: number): number => 3 + Math.sin(stage);
  const table = openingLaw(thereAndBack(law, [-Math.PI / 2, Math.PI / 2], swinging, 2));
  for (let angle = -7; angle < 7; angle += 0.01)
    expect(table(angle, 0)).toBeCloseTo(3 + Math.sin(angle - 1), 5);
});

it('is a number where the motion reaches no bend but one', () => {
  expect(thereAndBack(Math.sin, [2, 2], trip, 0.5)).toBe(0.5);
});
