import { type ChildProcess, spawn } from "node:child_process";
import { rmSync } from "node:fs";
import { onSignal } from "../onSignal.js";
import type { Connection } from "./channels.js";
import { kernelSpec } from "./spec.js";

/** How a process ended: a code, or the signal that ended it. */
export interface ProcessEnd {
  readonly exitCode: number | null;
  readonly signal: string | null;
}

/** Looks every second whether the parent is still there; a thread hears its clock also while a cell never yields. */
const WATCHING = `
const { workerData: { parent, folder } } = require("node:worker_threads");
const { rmSync } = require("node:fs");
const isThere = () => {
  try {
    return process.ppid === parent && process.kill(parent, 0);
  } catch {
    return false;
  }
};
setInterval(() => {
  if (isThere()) return;
  rmSync(folder, { recursive: true, force: true });
  process.kill(process.pid, "SIGKILL");
}, 1000);
`;

/**
 * Loaded in the kernel: when our end of its stdin closes, we were killed outright, and the kernel ends
 * itself and removes its folder. Where a cell that never yields keeps it from seeing that, a thread does it.
 */
function guard(folder: string): string {
  const code = `import { rmSync } from "node:fs";
import { Worker } from "node:worker_threads";
const folder = ${JSON.stringify(folder)};
process.stdin.on("end", () => {
  rmSync(folder, { recursive: true, force: true });
  process.exit(0);
}).resume().unref();
const workerData = { parent: process.ppid, folder };
new Worker(${JSON.stringify(WATCHING)}, { eval: true, execArgv: [], workerData }).unref();`;
  return `data:text/javascript,${encodeURIComponent(code)}`;
}

const KEPT_TEXT = 4000;

function killGroup(child: ChildProcess): void {
  if (child.pid === undefined) return;
  if (process.platform === "win32") {
    child.kill("SIGKILL");
    return;
  }
  try {
    process.kill(-child.pid, "SIGKILL");
  } catch (error) {
    // the group is gone already
    if ((error as NodeJS.ErrnoException).code !== "ESRCH") throw error;
  }
}

/**
 * Machine code that is made meanwhile on other threads takes more of the processor's time than it saves, as the
 * compiler runs for a second: it is made later, of what runs long. Known in these versions alone, as in
 * `bin/loambook.cjs`.
 */
const LATE_MACHINE_CODE =
  Number.parseInt(process.versions.node, 10) <= 24 ? ["--interrupt-budget=1000000"] : [];

/**
 * Starts the kernel in a process group of its own, which is killed as a whole: when asked, when the
 * kernel ends, when this process ends, and when a signal would end this process. In the last two cases
 * the kernel's folder goes with it.
 */
export function startKernelProcess(
  { file, folder }: Pick<Connection, "file" | "folder">,
  cwd: string,
) {
  const [node, ...words] = kernelSpec().argv;
  const filled = words.map((word) => word.replace("{connection_file}", file));
  // colours would put escape codes into the outputs
  const { FORCE_COLOR: _, ...env } = process.env;
  const child = spawn(node, [...LATE_MACHINE_CODE, "--import", guard(folder), ...filled], {
    cwd,
    env: { ...env, NO_COLOR: "1" },
    detached: process.platform !== "win32",
    stdio: ["pipe", "pipe", "pipe"],
    windowsHide: true,
  });
  let text = "";
  const keep = (part: string) => {
    text = (text + part).slice(-KEPT_TEXT);
  };
  child.stdout.setEncoding("utf8").on("data", keep);
  child.stderr.setEncoding("utf8").on("data", keep);
  // the kernel may be gone before its stdin is closed
  child.stdin.on("error", (error) => keep(`${error.message}\n`));

  const kill = () => killGroup(child);
  const lastChance = () => {
    kill();
    rmSync(folder, { recursive: true, force: true });
  };
  process.on("exit", lastChance);
  const endListening = onSignal(lastChance);
  const forget = () => {
    process.off("exit", lastChance);
    endListening();
  };

  const ended = new Promise<ProcessEnd>((resolve) => {
    const end = (exitCode: number | null, signal: string | null) => {
      kill();
      forget();
      resolve({ exitCode, signal });
    };
    child.once("error", (error) => {
      keep(`${error.message}\n`);
      end(null, null);
    });
    child.once("exit", end);
  });
  /** The last part of what the process itself wrote, outside of any cell. */
  const ownText = () => text.trim();
  return { ended, ownText, kill };
}
