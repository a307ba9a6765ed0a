/** A bench sheet: which test, on what day, with which readings. */
import { choice, group, optional, part, quantity, text } from '../kinds/describe.ts';
import { gases } from '../gas/registry.ts';
import { benchTests } from './tests/registry.ts';

/** The room on the day of the test. */
export const roomParameters = {
  gas: choice(
    gases.map(({ name }) => name),
    'The gas that was used.',
    'dry air',
  ),
  atmosphere: group('The room on the day of the test; gauge pressures count from its pressure.', {
    pressure: quantity(
      'pressure',
      { min: 50e3, max: 120e3, default: 101_325 },
      '1013 mbar absolute',
      'Air pressure.',
    ),
    temperature: quantity(
      'temperature',
      { min: 230, max: 330, default: 288.15 },
      '15 degC',
      'Air temperature.',
    ),
  }),
};

/** Every key of a bench sheet. */
export const sheetParameters = {
  title: text(120, 'What was tested.'),
  notes: text(4000, 'Anything worth remembering about the test.', ''),
  ...roomParameters,
  engine: optional(
    text(200, 'Scenario file of the engine, in the folder of this sheet or below it; some tests need one.'),
  ),
  test: part(benchTests, 'What was done and read.'),
};
