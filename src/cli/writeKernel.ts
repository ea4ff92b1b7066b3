import { resolve } from "node:path";
import { writeKernelSpec } from "../notebook/kernelSpec.js";
import { EXIT } from "./exitCodes.js";
import { parseCall } from "./parseCall.js";

/** `loambook kernel`: the kernel description for an installed Jupyter. */
export async function writeKernel(words: readonly string[]): Promise<number> {
  const call = parseCall(
    "kernel",
    words,
    { folder: { type: "string", default: ".jupyter" } },
    false,
  );
  const folder = await writeKernelSpec(resolve(call.text("folder") as string));
  process.stdout.write(
    `The kernel “loambook” is described in ${folder}\n\n` +
      "Start Jupyter with it:\n" +
      `  JUPYTER_PATH="${folder}" jupyter notebook\n\n` +
      "In VS Code: start it from a terminal with the same JUPYTER_PATH, then choose the kernel\n" +
      "“TypeScript (loambook)” in the notebook's upper right corner.\n",
  );
  return EXIT.ok;
}
