/**
 * The radial clearance that a gap, a fit or two finishes come to.
 *
 * Sizes are diameters, the clearance is radial:
 *
 *   least = (smallest bore − largest rod)/2,  most = (largest bore − smallest rod)/2,  mean = (least + most)/2
 *
 * The mean is that of any spread of sizes centred between the limits. Two finishes are made to one nominal size, the bore
 * from there upwards and the rod downwards (an H hole and an h shaft of the grades that the finishes hold), so that
 *
 *   least = 0,  most = (IT bore + IT rod)/2,  mean = (IT bore + IT rod)/4
 */
import type { Complaint } from '../../kinds/kind.ts';
import type { Clearance, ClearanceParameter } from '../../kinds/parameter.ts';
import type { DerivedSize } from '../valve-gears/valve-gear.ts';
import { boreFinishes, rodFinishes } from './finishes.ts';
import { shaftLetters } from './fundamental-deviations.ts';
import { deviationsOf } from './limits-of-size.ts';
import { grades, stepOf, steps } from './tolerance-grades.ts';

/** What a fit or two finishes may be made up of. */
export const clearanceWords = {
  holes: ['H'],
  shafts: shaftLetters,
  grades,
  boreFinishes: [...boreFinishes.keys()],
  rodFinishes: [...rodFinishes.keys()],
};

/**
 * A parameter for the play between a bore and a rod of one nominal diameter, which stands beside it under the key
 * `diameter` or, with a point in it, at that path of the scenario.
 */
export const clearance = (
  example: string,
  doc: string,
  measure: string,
  diameter: string,
): ClearanceParameter => ({
  type: 'clearance',
  max: 1e-3,
  words: clearanceWords,
  diameter,
  example,
  doc,
  measure,
});

/** Radial [m]. */
export interface ClearanceSpread {
  readonly mean: number;
  readonly least: number;
  readonly most: number;
}

/** Nominal diameter [m] and a clearance that `clearanceComplaints` has nothing to say about. */
export function clearanceOf(nominalDiameter: number, own: Clearance): ClearanceSpread {
  if (own.by === 'gap') return { mean: own.gap, least: own.gap, most: own.gap };
  const { bore, rod } = deviationsOf(nominalDiameter, own);
  const least = (bore.least - rod.most) / 2;
  const most = (bore.most - rod.least) / 2;
  return { mean: (least + most) / 2, least, most };
}

const mm = (length: number): string => `${Number((length * 1e3).toPrecision(6))} mm`;

const inWords = (own: Clearance): string => {
  if (own.by === 'gap') return mm(own.gap);
  return own.by === 'fit' ? `${own.hole}/${own.shaft}` : `${own.bore} / ${own.rod}`;
};

const [smallest, largest] = [steps[0][0], steps[steps.length - 1]![1]];

/** What keeps a clearance from belonging to a part's diameter [m], called `name` in the scenario. */
export function clearanceComplaints(
  path: readonly string[],
  name: string,
  diameter: number,
  own: Clearance,
): readonly Complaint[] {
  if (own.by === 'gap') return [];
  const nominal = own.by === 'fit' ? own.nominal : undefined;
  if (nominal !== undefined && Math.abs(nominal / diameter - 1) > 1e-9)
    return [
      {
        path,
        expected: `a fit for the ${name}, ${mm(diameter)}`,
        received: `one for ${mm(nominal)}`,
        hint: `The diameter may be left out: "${inWords(own)}".`,
      },
    ];
  if (stepOf(diameter) >= 0) return [];
  return [
    {
      path,
      expected: `a gap, for fits are known for diameters over ${smallest} mm up to ${largest} mm only`,
      received: `${inWords(own)} on a ${name} of ${mm(diameter)}`,
      hint: 'Measure bore and rod; the gap is half the difference.',
    },
  ];
}

/** What the turner needs: limits of size, to the micrometre, and what clearance is reckoned with. */
export function fitSizes(part: string, nominalDiameter: number, own: Clearance): DerivedSize[] {
  if (own.by === 'gap') return [];
  const { bore, rod } = deviationsOf(nominalDiameter, own);
  const size = (what: string, deviation: number): DerivedSize => ({
    label: `${what}, ${inWords(own)}`,
    value: nominalDiameter + deviation,
    dimension: 'length',
    digits: 5,
  });
  return [
    size(`smallest bore for the ${part}`, bore.least),
    size(`largest bore for the ${part}`, bore.most),
    size(`smallest ${part}`, rod.least),
    size(`largest ${part}`, rod.most),
    {
      label: `mean radial clearance of the ${part}`,
      value: clearanceOf(nominalDiameter, own).mean,
      dimension: 'length',
    },
  ];
}
