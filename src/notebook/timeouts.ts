/** Limits of a run, in seconds. */
export interface Timeouts {
  /** For the kernel to start; default 60. */
  readonly startSeconds?: number;
  /** For each cell; default 120. */
  readonly cellSeconds?: number;
  /** For the whole run, the start included; default 600. */
  readonly totalSeconds?: number;
}

const DEFAULTS = { startSeconds: 60, cellSeconds: 120, totalSeconds: 600 };
/** Timers of Node.js count milliseconds in 31 bits. */
const LONGEST_SECONDS = 2_147_483;

/** Fills in the defaults; a limit given as `undefined` is not given. */
export function checkTimeouts(given: Timeouts = {}): Required<Timeouts> {
  const limit = (name: keyof Timeouts): number => {
    const value = given[name] ?? DEFAULTS[name];
    if (!(value > 0 && value <= LONGEST_SECONDS)) {
      throw new RangeError(
        `invalid \`timeouts.${name}\`: ${value}; expected more than 0, at most ${LONGEST_SECONDS}`,
      );
    }
    return value;
  };
  return {
    startSeconds: limit("startSeconds"),
    cellSeconds: limit("cellSeconds"),
    totalSeconds: limit("totalSeconds"),
  };
}
