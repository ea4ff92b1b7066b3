import { existsSync, readdirSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { CommandError } from "./commandError.js";
import { EXIT } from "./exitCodes.js";

/**
 * The folder to write to. Nothing of the user's is written over without being asked: a named folder
 * must be new or empty unless `replace` is set, and a default one gets a number where it is taken.
 *
 * @throws CommandError where the named folder holds something, or is a file.
 */
export function freshFolder(choice: {
  readonly wanted: string | undefined;
  readonly byDefault: string;
  readonly replace: boolean;
}): string {
  const { wanted, byDefault, replace } = choice;
  const first = wanted === undefined ? byDefault : resolve(wanted);
  if (existsSync(first) && !statSync(first).isDirectory()) {
    throw new CommandError(EXIT.output, `${first} is a file, not a folder.`);
  }
  if (replace || isFree(first)) return first;
  if (wanted !== undefined) {
    throw new CommandError(
      EXIT.output,
      `${first} is not empty. Give another folder, or --replace to write over what an earlier run made.`,
    );
  }
  let number = 2;
  while (!isFree(`${byDefault}-${number}`)) number += 1;
  return `${byDefault}-${number}`;
}

function isFree(folder: string): boolean {
  return (
    !existsSync(folder) || (statSync(folder).isDirectory() && readdirSync(folder).length === 0)
  );
}
