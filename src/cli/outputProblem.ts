import { CommandError } from "./commandError.js";
import { EXIT } from "./exitCodes.js";

/** What the file system says where a place cannot be written to: the user's to mend, no fault of ours. */
const CODES = new Set([
  "EACCES",
  "EEXIST",
  "EISDIR",
  "ENOENT",
  "ENOSPC",
  "ENOTDIR",
  "ENOTEMPTY",
  "EPERM",
  "EROFS",
]);

/** Turns a failed write into a message about its place; anything else comes back as it was. */
export function outputProblem(place: string, problem: unknown): unknown {
  const { code, message } = problem as NodeJS.ErrnoException;
  if (!(problem instanceof Error) || code === undefined || !CODES.has(code)) return problem;
  return new CommandError(
    EXIT.output,
    code === "EEXIST" || code === "ENOTEMPTY"
      ? `${place} exists already. Give another name, or remove it first.`
      : `${place} cannot be written: ${message}`,
  );
}
