import { execFile } from "node:child_process";
import { readFile } from "node:fs/promises";
import { homedir } from "node:os";
import { delimiter, join, resolve } from "node:path";
import { promisify } from "node:util";
import { KERNEL_NAME, kernelSpec, writeKernelSpec } from "../notebook/kernel/spec.js";
import { CommandError, EXIT, misuse, parseCall } from "./call.js";
import { outputProblem, writtenAt } from "./output.js";

/** `loambook kernel`: the kernel description for an installed Jupyter. */
export async function writeKernel(words: readonly string[]): Promise<number> {
  const options = { texts: ["folder"], flags: ["for-jupyter", "replace"] };
  const call = parseCall("kernel", words, options, 0);
  const wanted = call.text("folder");
  if (call.flag("for-jupyter")) {
    if (wanted !== undefined) throw misuse("Give --folder or --for-jupyter, not both.");
    await installKernel(call.flag("replace"));
    return EXIT.ok;
  }
  if (call.flag("replace")) throw misuse("--replace goes with --for-jupyter.");
  const place = resolve(wanted ?? ".jupyter");
  const folder = await writtenAt(place, writeKernelSpec(place));
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

const NO_JUPYTER =
  "If Jupyter is not installed yet: “pip install notebook” (or your system's package), or the\n" +
  "Jupyter extension of VS Code, which finds the kernel in this place too. If it is installed in an\n" +
  "environment of its own, switch that on and call this command again.\n";

/** Sets the kernel up in the user's own Jupyter, and says what it does before it does it. */
async function installKernel(replace: boolean): Promise<void> {
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
    await writtenAt(file, writeKernelSpec(resolve(found.folder)));
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

/** Where an installed Jupyter looks for the kernels of this user, and how that is known. */
interface JupyterFolder {
  readonly folder: string;
  /** What `jupyter` itself said, what the environment says, or the documented place of this system. */
  readonly from: "jupyter" | "JUPYTER_DATA_DIR" | "documented";
  /** Why `jupyter` was not heard, where it was not. */
  readonly problem?: string;
}

type Environment = Readonly<Record<string, string | undefined>>;

/**
 * Finds the data folder of this user's Jupyter: `JUPYTER_DATA_DIR` where it is set; else the first of the
 * data folders that `jupyter --paths --json` names, those of `JUPYTER_PATH` left out because they hold for
 * one session; else the folder that Jupyter's documentation names for the system.
 *
 * Source: Jupyter documentation, “Common directories and file locations” (from memory).
 */
export async function jupyterFolder(
  environment: Environment = process.env,
  platform: NodeJS.Platform = process.platform,
): Promise<JupyterFolder> {
  const { JUPYTER_DATA_DIR: set, JUPYTER_PATH: session } = environment;
  let problem: string | undefined;
  try {
    const { stdout } = await promisify(execFile)("jupyter", ["--paths", "--json"], {
      env: environment as NodeJS.ProcessEnv,
      timeout: 60_000,
      // On Windows programs of Python may be scripts, which only a shell starts; no word comes from the user.
      shell: platform === "win32",
    });
    const said = JSON.parse(stdout) as { data?: unknown };
    const passing = new Set(
      (session ?? "")
        .split(delimiter)
        .filter(Boolean)
        .map((path) => resolve(path)),
    );
    const data = Array.isArray(said.data)
      ? said.data.filter((path) => typeof path === "string")
      : [];
    const own = data.find((path) => !passing.has(resolve(path)));
    if (own !== undefined) return { folder: own, from: set ? "JUPYTER_DATA_DIR" : "jupyter" };
    problem = "“jupyter --paths --json” names no data folder";
  } catch (failure) {
    const { code, message } = failure as NodeJS.ErrnoException;
    problem =
      code === "ENOENT"
        ? "no program “jupyter” is on the PATH"
        : `“jupyter --paths --json” failed: ${message.split("\n")[0]}`;
  }
  if (set) return { folder: set, from: "JUPYTER_DATA_DIR", problem };
  return { folder: documentedFolder(environment, platform), from: "documented", problem };
}

function documentedFolder(environment: Environment, platform: NodeJS.Platform): string {
  const home = environment.HOME ?? environment.USERPROFILE ?? homedir();
  if (platform === "darwin") return join(home, "Library", "Jupyter");
  if (platform === "win32") {
    return join(environment.APPDATA ?? join(home, "AppData", "Roaming"), "jupyter");
  }
  return join(environment.XDG_DATA_HOME || join(home, ".local", "share"), "jupyter");
}
