/** Every change that can be suggested for an engine that runs. To add one: a rule in a file here and a line below. */
import { blowThrough, largestLeak } from './air-losses.ts';
import { fillingOfClearance, squeezedClearance } from './clearance.ts';
import { compressorShortfall } from './compressor-shortfall.ts';
import { backPressure, earlyCutOff, hoseLoss, lateCutOff, portLoss } from './pressure-losses.ts';
import { drag } from './work-losses.ts';
import type { SuggestionRule } from './suggestion.ts';

export const suggestionRules: readonly SuggestionRule[] = [
  compressorShortfall,
  largestLeak,
  blowThrough,
  fillingOfClearance,
  squeezedClearance,
  lateCutOff,
  earlyCutOff,
  hoseLoss,
  portLoss,
  backPressure,
  drag,
];
