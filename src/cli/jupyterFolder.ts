import { execFile } from "node:child_process";
import { homedir } from "node:os";
import { delimiter, join, resolve } from "node:path";
import { promisify } from "node:util";

/** Where an installed Jupyter looks for the kernels of this user, and how that is known. */
export interface JupyterFolder {
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
