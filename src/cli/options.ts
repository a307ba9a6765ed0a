/** Options that several commands have. */

/** Of what people read: terminal and page. JSON and CSV keep their own units. */
export const unitsOption = {
  units: {
    choices: ['metric', 'imperial'],
    default: 'metric',
    describe: 'Show values in bar, mm, N·m or in psi, in, lbf·ft',
  },
} as const;
