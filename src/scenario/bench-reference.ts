/** Reference pages of bench sheets and of notebooks of attempts. */
import { attemptsParameters } from '../measure/attempts-description.ts';
import { sheetParameters } from '../measure/sheet-description.ts';
import { referencePage } from './reference-page.ts';

const SHEET = `# Keys of a bench sheet

Generated from the descriptions in the code. Values are written as in a [scenario](scenario.md). Readings stand in a CSV file
beside the sheet: the first line names each column and its unit, \`pressure_bar_gauge\`, \`speed_rpm\`, \`time_min\`; any unit
of the kind will do, the columns may stand in any order, and below stand plain numbers with points. What to do at the bench
is told in [the bench tests](../bench/README.md).
`;

const NOTEBOOK = `# Keys of a notebook of attempts

Generated from the descriptions in the code. Values are written as in a [scenario](scenario.md); what the notebook is for is
told in [attempts](../bench/attempts.md).
`;

/** Markdown: every key of a bench sheet. */
export const benchReferencePage = (): string =>
  referencePage(sheetParameters, { file: 'sheet', head: SHEET });

/** Markdown: every key of a notebook of attempts. */
export const attemptsReferencePage = (): string =>
  referencePage(attemptsParameters, { file: 'notebook', head: NOTEBOOK });
