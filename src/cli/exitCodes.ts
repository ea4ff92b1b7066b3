/** What the command line returns, so that a script can tell the outcomes apart. */
export const EXIT = {
  ok: 0,
  /** A fault of ours: an exception that nobody expected. */
  fault: 1,
  /** The command was called wrongly. */
  usage: 2,
  /** The study has errors. */
  badInput: 3,
  /** A notebook cell failed. */
  failedCell: 4,
  /** The notebook kernel ended while it was needed. */
  kernelDied: 5,
  /** A start, a cell or the whole run took longer than allowed. */
  timeOut: 6,
  /** The output exists already, or cannot be written. */
  output: 7,
} as const;
