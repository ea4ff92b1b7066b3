import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import type { TestContext } from "vitest";

function find(name: string): string | undefined {
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    const path = join(folder, name);
    try {
      accessSync(path, constants.X_OK);
      return path;
    } catch {
      // not in this folder: the next one may have it
    }
  }
  return undefined;
}

/**
 * Path of a program that a test drives. Without it the test is skipped, with the reason; where
 * `LOAMBOOK_REQUIRE_TOOLS=1` is set it fails, so that a full check cannot pass by leaving tests out.
 */
export function toolOrSkip(context: TestContext, name: string): string {
  const path = find(name);
  if (path !== undefined) return path;
  const reason = `${name} is not on the PATH`;
  if (process.env.LOAMBOOK_REQUIRE_TOOLS === "1") throw new Error(reason);
  return context.skip(reason);
}
