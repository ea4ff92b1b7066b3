import { resolve } from "node:path";
import { writeKernelSpec } from "../notebook/kernelSpec.js";
import { CommandError } from "./commandError.js";
import { EXIT } from "./exitCodes.js";
import { installKernel } from "./installKernel.js";
import { outputProblem } from "./outputProblem.js";
import { parseCall } from "./parseCall.js";

const OPTIONS = {
  folder: { type: "string" },
  "for-jupyter": { type: "boolean" },
  replace: { type: "boolean" },
} as const;

/** `loambook kernel`: the kernel description for an installed Jupyter. */
export async function writeKernel(words: readonly string[]): Promise<number> {
  const call = parseCall("kernel", words, OPTIONS, false);
  const wanted = call.text("folder");
  if (call.flag("for-jupyter")) {
    if (wanted !== undefined) {
      throw new CommandError(EXIT.usage, "Give --folder or --for-jupyter, not both.");
    }
    await installKernel(call.flag("replace"));
    return EXIT.ok;
  }
  if (call.flag("replace")) {
    throw new CommandError(EXIT.usage, "--replace goes with --for-jupyter.");
  }
  const place = resolve(wanted ?? ".jupyter");
  const folder = await writeKernelSpec(place).catch((problem: unknown) => {
    throw outputProblem(place, problem);
  });
  process.stdout.write(
    `The kernel “loambook” is described in ${folder}\n\n` +
      "Start Jupyter with it:\n" +
      `  JUPYTER_PATH="${folder}" jupyter notebook\n\n` +
      "In VS Code: start it from a terminal with the same JUPYTER_PATH, then choose the kernel\n" +
      "“TypeScript (loambook)” in the notebook's upper right corner.\n" +
      "To set it up once for all: loambook kernel --for-jupyter\n",
  );
  return EXIT.ok;
}
