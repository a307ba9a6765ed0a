/**
 * More supply pressure, as far as what holds it is rated, and as far as the compressor always keeps so much in front of the
 * regulator.
 */
import { changedTo, type RemedyRule } from './remedy.ts';
import { rungsBy } from './rungs.ts';

const FACTORS = [4 / 3, 2];

export const morePressure: RemedyRule = (engine, _result) => {
  const { supply, compressor } = engine.spec;
  const rated = supply.rated_pressure;
  const most = Math.min(rated ?? Infinity, compressor?.cut_in ?? Infinity);
  const settings = engine.given.filter(({ path }) => path === 'supply.pressure');
  const rungs = rungsBy(settings, FACTORS).filter(
    (rung) => (changedTo(engine, rung)?.supply.pressure ?? Infinity) <= most,
  );
  return {
    what: 'more supply pressure',
    rungs,
    ...(rated === undefined
      ? { proviso: 'Hose, fittings, chest and barrel must bear it; the scenario gives no rated pressure.' }
      : {}),
  };
};
