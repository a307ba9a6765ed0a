import { SUPPLY, type Engine } from './engine.ts';

/** What comes out of the supply, all told, of a quantity that is known by passage. */
export function fromSupply({ passages }: Engine, byPassage: ArrayLike<number>): number {
  return passages.reduce((sum, { from }, i) => (from === SUPPLY ? sum + byPassage[i]! : sum), 0);
}
