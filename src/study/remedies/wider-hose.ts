/** A wider hose, and wider fittings with it. */
import { starvesChest, type RemedyRule } from './remedy.ts';
import { rungsBy } from './rungs.ts';

const BORES = ['supply.hose.bore', 'supply.hose.fitting_bore'];
const FACTORS = [4 / 3, 2];

export const widerHose: RemedyRule = ({ given }, result) => {
  if (!starvesChest(result)) return undefined;
  const bores = given.filter(({ path }) => BORES.includes(path));
  return {
    what: bores.length > 1 ? 'a wider hose with wider fittings' : 'a wider hose',
    rungs: rungsBy(bores, FACTORS),
  };
};
