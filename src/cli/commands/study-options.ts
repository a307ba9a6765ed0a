/** Options that several commands take. */

/** `--set path=value` */
export const setOption = {
  type: 'string',
  array: true,
  // One value for each --set, so that a file may follow it.
  nargs: 1,
  default: [] as string[],
  describe: 'Value instead of one in the scenario: path=value, e.g. "cylinder.bore=60 mm"; may be repeated',
} as const;

export const outOption = {
  type: 'string',
  requiresArg: true,
  describe: 'Folder for the files [reports/<study>]',
} as const;

export const workersOption = {
  type: 'number',
  requiresArg: true,
  describe: 'How many engines run at once [as many as the machine has cores]',
} as const;

export const quietOption = {
  type: 'boolean',
  default: false,
  describe: 'Print nothing; only write the files',
} as const;

export const jsonOption = {
  type: 'boolean',
  default: false,
  describe: 'Print one JSON object instead of text',
} as const;
