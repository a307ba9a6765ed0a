/** Ways of working that keep a clearance within a limit. */
import { boreFinishes, rodFinishes } from '../parts/fits/finishes.ts';
import { clearanceOf } from '../parts/fits/clearance.ts';
import { stepOf } from '../parts/fits/tolerance-grades.ts';

/** Pairs of finishes that keep a clearance small enough. */
export interface Processes {
  /** The coarsest pairs of finishes, bore / rod, whose largest clearance stays within the limit. */
  readonly surely: readonly string[];
  /** The coarsest pairs whose mean clearance does, while some come out wider. */
  readonly often: readonly string[];
}

interface Pair {
  readonly name: string;
  readonly bore: number;
  readonly rod: number;
  readonly mean: number;
  readonly most: number;
}

interface Way {
  /** Any one of them, for the rules. */
  readonly finish: string;
  readonly names: string;
}

/** Ways of working from coarse to fine; those that hold the same grade stand together. */
function ways(finishes: ReadonlyMap<string, string>): readonly Way[] {
  const byGrade = new Map<string, string[]>();
  for (const [finish, grade] of finishes) byGrade.set(grade, [...(byGrade.get(grade) ?? []), finish]);
  return [...byGrade.values()].map((own) => ({ finish: own[0] ?? '', names: own.join(' or ') }));
}

/** Diameter and radial clearance in metres; `undefined` where the tables of fits do not go. */
export function processesWithin(diameter: number, gap: number): Processes | undefined {
  if (stepOf(diameter) < 0) return undefined;
  const pairs = ways(boreFinishes).flatMap((bore, i) =>
    ways(rodFinishes).map((rod, k): Pair => {
      const { mean, most } = clearanceOf(diameter, { by: 'process', bore: bore.finish, rod: rod.finish });
      return { name: `${bore.names} / ${rod.names}`, bore: i, rod: k, mean, most };
    }),
  );
  const surely = pairs.filter(({ most }) => most <= gap);
  const often = pairs.filter(({ mean, most }) => mean <= gap && most > gap);
  return { surely: coarsest(surely), often: coarsest(often) };
}

/** Those that no other of them is coarser than in one finish and no finer in the other. */
function coarsest(pairs: readonly Pair[]): string[] {
  return pairs
    .filter((own) => !pairs.some((other) => other !== own && other.bore <= own.bore && other.rod <= own.rod))
    .map(({ name }) => name);
}
