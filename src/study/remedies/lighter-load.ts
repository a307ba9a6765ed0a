/** A lighter load: three quarters of it, and half. Gearing the machine down does the same. */
import type { ChangedSetting } from '../../run/trials.ts';
import type { RemedyRule } from './remedy.ts';
import { rungsBy } from './rungs.ts';

const SHARES = [0.75, 0.5];

export const lighterLoad: RemedyRule = ({ given }, _result) => {
  const torques = given.filter(({ path }) => path === 'load.torque');
  const byFormula = torques.filter(({ parameter }) => parameter.type === 'formula');
  const rungs = SHARES.map((share) =>
    byFormula.map(({ path, text }): ChangedSetting => ({ path, now: text, then: `${share}*(${text})` })),
  );
  return {
    what: 'a lighter load',
    rungs: byFormula.length > 0 ? rungs : rungsBy(torques, SHARES),
  };
};
