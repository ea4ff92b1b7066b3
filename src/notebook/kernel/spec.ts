import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { filesAlreadyIn, writeFilesWhole } from "../wholeFolder.js";

/** Name of the kernel in a notebook's metadata and of its folder below `kernels/`. */
export const KERNEL_NAME = "loambook";

/** What Jupyter reads from a `kernel.json`. */
export interface KernelSpec {
  /** Command of the kernel; `{connection_file}` stands for the path Jupyter fills in. */
  readonly argv: readonly string[];
  readonly display_name: string;
  readonly language: string;
  /** How an interrupt comes: by the control channel, which a thread of the kernel holds. */
  readonly interrupt_mode: "message";
}

/**
 * What the kernel says of its language. Jupyter writes it into every notebook that it saves, and so do we:
 * saving a notebook that is already there must change nothing. The version is the compiler's, inside tslab.
 */
export const LANGUAGE_INFO = {
  codemirror_mode: { mode: "typescript", name: "javascript", typescript: true },
  file_extension: ".ts",
  mimetype: "text/typescript",
  name: "typescript",
  version: "5.0.4",
} as const;

/** The kernel's program, as it is built: also where this runs from the sources. */
const PROGRAM = fileURLToPath(new URL("../../../dist/notebook/kernel/main.js", import.meta.url));

/**
 * Describes the notebook kernel: tslab in its TypeScript mode, started by the Node.js that runs now.
 *
 * Both paths are absolute, because Jupyter starts the kernel with another working folder and often
 * without the shell's PATH. Stacks are long enough to reach the cell below the library's frames.
 *
 * Source: kernel specs, Jupyter client documentation, from memory.
 *
 * @example
 * kernelSpec().display_name // => "TypeScript (loambook)"
 */
export function kernelSpec(): KernelSpec {
  return {
    argv: [process.execPath, "--stack-trace-limit=100", PROGRAM, "{connection_file}"],
    display_name: "TypeScript (loambook)",
    language: "typescript",
    interrupt_mode: "message",
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
