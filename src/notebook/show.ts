import { displayBundle } from "./kernelDisplay.js";
import { toBundle } from "./toBundle.js";

/**
 * Shows a value below the notebook cell that runs: a figure, a part of a report, a table of a
 * danfo.js frame or of a list of flat objects, or text. A cell waits for it: `await show(x)`.
 *
 * Outside of a notebook the text form goes to standard output.
 *
 * @throws TypeError or RangeError when the value says that it is a figure or a block of a report but
 * has not the fields of one
 *
 * @example
 * await show([{ sizeMm: 2, passingPct: 78 }]) // => undefined
 */
export async function show(value: unknown): Promise<void> {
  displayBundle(await toBundle(value));
}
