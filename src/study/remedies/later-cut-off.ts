/** A later cut-off: by a tenth of the stroke, or by 10 degrees, as the scenario says it. */
import { readNumber } from '../../quantity/number.ts';
import { rampText } from '../variations/variation.ts';
import type { RemedyRule } from './remedy.ts';

const STEP = 10;

export const laterCutOff: RemedyRule = ({ given }, _result) => {
  const closes = given.find(({ path }) => path === 'valve_gear.admission.closes');
  const number = closes && readNumber(closes.text, '');
  if (closes === undefined || !number?.ok) return undefined;
  const { path, text } = closes;
  return {
    what: 'a later cut-off',
    rungs: [[{ path, now: text, then: rampText(number.value + STEP, number.rest) }]],
  };
};
