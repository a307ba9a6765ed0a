/** Quantities tabulated over a stretch of the turn, or over the whole of it. */
import { expect, it } from 'vitest';
import { turnTable, turnTableValue, wholeTurnTable } from '../../../src/parts/turn-table.ts';

const TURN = 2 * Math.PI;

it('stands on what holds elsewhere, turn after turn and backwards', () => {
  const table = turnTable((since) => 3 + Math.sin(since), 5, [0, Math.PI], 3);
  for (const angle of [5.5, 5.5 + TURN, 5.5 - 3 * TURN])
    expect(turnTableValue(table, angle)).toBeCloseTo(3 + Math.sin(0.5), 6);
  for (const angle of [5, 5 + Math.PI, 4.9, 3]) expect(turnTableValue(table, angle)).toBeCloseTo(3, 12);
});

it('goes over the whole turn between edges', () => {
  const law = (angle: number): number => Math.abs(Math.cos(angle));
  const table = wholeTurnTable(law, [Math.PI / 2, (3 * Math.PI) / 2]);
  for (let angle = -7; angle < 7; angle += 0.01)
    expect(turnTableValue(table, angle)).toBeCloseTo(law(angle), 5);
});

it('goes over the whole turn of a smooth law without edges', () => {
  const table = wholeTurnTable(Math.cos, []);
  expect(turnTableValue(table, 2)).toBeCloseTo(Math.cos(2), 4);
});
