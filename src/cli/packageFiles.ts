import { fileURLToPath } from "node:url";

/** The folder of this package: examples and notebooks are found from here, wherever the command is called. */
export function packageFolder(): string {
  return fileURLToPath(new URL("../..", import.meta.url));
}
