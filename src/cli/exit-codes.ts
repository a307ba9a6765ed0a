/** What the exit status of the command says. */
export const EXIT = {
  /** It did what was asked, also when the engine does not run. */
  ran: 0,
  /** A fault of ours. */
  fault: 1,
  /** Something about the input or the place to write to. */
  badInput: 2,
  /** Stopped by the user; what is written stands. */
  stopped: 130,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Something the user can put right; its text is all they need to see. */
export class InputError extends Error {}
