/** Every caution, in the order in which they are shown. To add one: a file beside this one and a line here. */
import { barrelCaution } from './barrel.ts';
import { bottledGasCaution } from './bottled-gas.ts';
import type { CautionRule } from './caution.ts';
import { compressorDutyCaution } from './compressor-duty.ts';
import { flywheelCaution } from './flywheel.ts';
import { icingCaution } from './icing.ts';
import { noiseCaution } from './noise.ts';
import { peopleCaution } from './people.ts';
import { ratedPressureCaution } from './rated-pressure.ts';
import { storedEnergyCaution } from './stored-energy.ts';
import { supplyPressureCaution } from './supply-pressure.ts';

export const cautions: readonly CautionRule[] = [
  bottledGasCaution,
  storedEnergyCaution,
  supplyPressureCaution,
  ratedPressureCaution,
  barrelCaution,
  flywheelCaution,
  compressorDutyCaution,
  icingCaution,
  noiseCaution,
  peopleCaution,
];
