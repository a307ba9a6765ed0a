/** Limits of size of a bore and its rod, from a fit or from two finishes. */
import type { Clearance } from '../../kinds/parameter.ts';
import { boreFinishes, rodFinishes } from './finishes.ts';
import { shaftLetters, shortfall, type ShaftLetter } from './fundamental-deviations.ts';
import { grades, stepOf, toleranceWidth, type Grade } from './tolerance-grades.ts';

export interface Limits {
  readonly least: number;
  readonly most: number;
}

/** Deviations of two diameters from the same nominal one [m]. */
export interface Deviations {
  readonly bore: Limits;
  readonly rod: Limits;
}

interface Symbols {
  readonly holeGrade: Grade;
  readonly shaftLetter: ShaftLetter;
  readonly shaftGrade: Grade;
}

/** A fit or a pair of finishes that is in the tables; a gap has no limits. */
export type Toleranced = Exclude<Clearance, { readonly by: 'gap' }>;

const oneOf = <T extends string>(known: readonly T[], text: string | undefined): T => {
  const found = known.find((own) => own === text);
  if (found === undefined) throw new Error(`"${text ?? ''}" is not in the tables of fits`);
  return found;
};

/** Two finishes are an H hole and an h shaft of the grades they hold. */
function symbolsOf(clearance: Toleranced): Symbols {
  if (clearance.by === 'process')
    return {
      holeGrade: oneOf(grades, boreFinishes.get(clearance.bore)),
      shaftLetter: 'h',
      shaftGrade: oneOf(grades, rodFinishes.get(clearance.rod)),
    };
  return {
    holeGrade: oneOf(grades, clearance.hole.slice(1)),
    shaftLetter: oneOf(shaftLetters, clearance.shaft.slice(0, 1)),
    shaftGrade: oneOf(grades, clearance.shaft.slice(1)),
  };
}

const MICROMETRE = 1e-6;

/** Nominal diameter [m], within the steps of the tables. */
export function deviationsOf(nominal: number, clearance: Toleranced): Deviations {
  const step = stepOf(nominal);
  if (step < 0) throw new Error('the tables of fits do not go there');
  const { holeGrade, shaftLetter, shaftGrade } = symbolsOf(clearance);
  const below = shortfall(shaftLetter, step);
  return {
    bore: { least: 0, most: toleranceWidth(holeGrade, step) * MICROMETRE },
    rod: {
      least: -(below + toleranceWidth(shaftGrade, step)) * MICROMETRE,
      most: -below * MICROMETRE,
    },
  };
}
