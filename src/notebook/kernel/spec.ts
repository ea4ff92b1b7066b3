import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { filesAlreadyIn, writeFilesWhole } from "../wholeFolder.js";

/** Name of the kernel in a notebook's metadata and of its folder below `kernels/`. */
export const KERNEL_NAME = "loambook";

/** What Jupyter reads from a `kernel.json`. */
export interface KernelSpec {
  /** Command of the kernel; `{connection_file}` stands for the path Jupyter fills in. */
  readonly argv: readonly string[];
  readonly display_name: string;
  readonly language: string;
}

/**
 * Loaded before tslab, because of what was measured of tslab 1.0.22 with zeromq 6.8:
 *
 * - Its publishing socket takes no more than 512 messages at a stretch unless the time-out is 0, and
 *   ZeroMQ drops what is beyond the 1000 it holds. A cell that prints more lines loses the rest and the
 *   sign of its end, so that a front end waits for ever.
 * - Its compiler reads every package of `@types` in the folders above, those of the browser's graphics
 *   among them, which doubles the time until the first cell. Only Node's types are global in a cell;
 *   the types of a package that a cell imports are found all the same.
 */
function preload(manifest: string): string {
  const code = `import { createRequire } from "node:module";
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { filesAlreadyIn, writeFilesWhole } from "../wholeFolder.js";
const require = createRequire(${JSON.stringify(manifest)});
const zmq = require("zeromq");
zmq.Publisher = class extends zmq.Publisher {
  constructor(options) {
    super({ sendHighWaterMark: 0, sendTimeout: 0, ...options });
  }
};
const ownTypes = join(dirname(${JSON.stringify(manifest)}), "node_modules", "@types");
if (existsSync(join(ownTypes, "node", "package.json"))) {
  const compiler = require.resolve("@tslab/typescript-for-tslab");
  const properties = Object.getOwnPropertyDescriptors(require(compiler));
  properties.getDefaultTypeRoots = { value: () => [ownTypes], enumerable: true };
  require.cache[compiler].exports = Object.defineProperties({}, properties);
}`;
  return `data:text/javascript,${encodeURIComponent(code)}`;
}

/**
 * Describes the notebook kernel: tslab in its TypeScript mode, started by the Node.js that runs now.
 *
 * Both paths are absolute, because Jupyter starts the kernel with another working folder and often
 * without the shell's PATH. Stacks are long enough to reach the cell below the library's frames.
 *
 * Source: kernel specs, Jupyter client documentation, from memory; the options are those of tslab 1.0.22.
 *
 * @example
 * kernelSpec().display_name // => "TypeScript (loambook)"
 */
export function kernelSpec(): KernelSpec {
  const manifest = createRequire(import.meta.url).resolve("tslab/package.json");
  const program = join(dirname(manifest), "bin", "tslab");
  return {
    argv: [
      process.execPath,
      "--stack-trace-limit=100",
      "--import",
      preload(manifest),
      program,
      "kernel",
      "--config-path",
      "{connection_file}",
    ],
    display_name: "TypeScript (loambook)",
    language: "typescript",
  };
}

/**
 * Writes `<folder>/kernels/loambook/kernel.json`, whole or not at all, and replaces an older one.
 *
 * @param folder made when it is not there
 * @returns the folder, to be named in `JUPYTER_PATH`
 */
export async function writeKernelSpec(folder: string): Promise<string> {
  const target = join(folder, "kernels", KERNEL_NAME);
  const files = { "kernel.json": `${JSON.stringify(kernelSpec(), undefined, 2)}\n` };
  await writeFilesWhole(target, files, await filesAlreadyIn(target, true));
  return folder;
}
