/** Every caution, in the order in which they are shown. To add one: a file beside this one and a line here. */
import type { CautionRule } from './caution.ts';
import { flywheelCaution } from './flywheel.ts';
import { icingCaution } from './icing.ts';
import { peopleCaution } from './people.ts';
import { storedEnergyCaution } from './stored-energy.ts';
import { supplyPressureCaution } from './supply-pressure.ts';

export const cautions: readonly CautionRule[] = [
  storedEnergyCaution,
  supplyPressureCaution,
  flywheelCaution,
  icingCaution,
  peopleCaution,
];
