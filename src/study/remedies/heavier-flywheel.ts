/** A flywheel of twice the moment of inertia: that is a disc or a rim twice as thick. */
import type { RemedyRule } from './remedy.ts';
import { rungsBy } from './rungs.ts';

const INERTIA = ['flywheel.thickness', 'flywheel.moment_of_inertia'];

export const heavierFlywheel: RemedyRule = ({ given }, _result) => ({
  what: 'a flywheel twice as heavy',
  rungs: rungsBy(
    given.filter(({ path }) => INERTIA.includes(path)),
    [2],
  ),
});
