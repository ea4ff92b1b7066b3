import { readFile } from "node:fs/promises";
import { join, resolve } from "node:path";
import { KERNEL_NAME, kernelSpec, writeKernelSpec } from "../notebook/kernelSpec.js";
import { CommandError } from "./commandError.js";
import { EXIT } from "./exitCodes.js";
import { type JupyterFolder, jupyterFolder } from "./jupyterFolder.js";
import { outputProblem } from "./outputProblem.js";

const NO_JUPYTER =
  "If Jupyter is not installed yet: “pip install notebook” (or your system's package), or the\n" +
  "Jupyter extension of VS Code, which finds the kernel in this place too. If it is installed in an\n" +
  "environment of its own, switch that on and call this command again.\n";

/** Sets the kernel up in the user's own Jupyter, and says what it does before it does it. */
export async function installKernel(replace: boolean): Promise<void> {
  const found = await jupyterFolder();
  const file = join(resolve(found.folder), "kernels", KERNEL_NAME, "kernel.json");
  process.stdout.write(whereFrom(found));
  const present = await readFile(file, "utf8").catch((problem: NodeJS.ErrnoException) => {
    if (problem.code === "ENOENT") return undefined;
    throw outputProblem(file, problem);
  });
  if (present === `${JSON.stringify(kernelSpec(), undefined, 2)}\n`) {
    process.stdout.write(`The kernel is there already: ${file}\n`);
  } else {
    if (present !== undefined && !replace) {
      throw new CommandError(
        EXIT.output,
        `${file} is there already and differs, for example because it starts another copy of loambook.\n` +
          "Nothing was written. Use --replace to write over it.",
      );
    }
    process.stdout.write(`Writing ${file}\n`);
    await writeKernelSpec(resolve(found.folder)).catch((problem: unknown) => {
      throw outputProblem(file, problem);
    });
  }
  process.stdout.write(
    "\nStart Jupyter as usual and choose the kernel “TypeScript (loambook)”. The file names this copy of\n" +
      "loambook and this Node.js: when either moves, call the command again with --replace.\n" +
      "To take the kernel away again, delete that folder.\n",
  );
  if (found.problem !== undefined) process.stdout.write(`\n${NO_JUPYTER}`);
}

function whereFrom({ folder, from, problem }: JupyterFolder): string {
  const place = {
    jupyter: `Jupyter keeps this user's kernels in ${folder}\n`,
    JUPYTER_DATA_DIR: `JUPYTER_DATA_DIR says that Jupyter keeps this user's kernels in ${folder}\n`,
    documented: `On this system Jupyter looks for this user's kernels in ${folder}\n`,
  }[from];
  return problem === undefined ? place : `No Jupyter was found (${problem}).\n${place}`;
}
