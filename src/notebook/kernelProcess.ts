import { type ChildProcess, spawn } from "node:child_process";
import { kernelSpec } from "./kernelSpec.js";

/** How a process ended: a code, or the signal that ended it. */
export interface ProcessEnd {
  readonly exitCode: number | null;
  readonly signal: string | null;
}

/** A running kernel process and everything it started. */
export interface KernelProcess {
  readonly ended: Promise<ProcessEnd>;
  /** The last part of what the process itself wrote, outside of any cell. */
  readonly ownText: () => string;
  /** Ends the process and its children at once. */
  readonly kill: () => void;
}

/** Ends the kernel when our end of its stdin closes: the one sign it gets when we are killed outright. */
const GUARD = "process.stdin.on('end', () => process.exit(0)).resume().unref();";
const SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"] as const;
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
 * Starts the kernel in a process group of its own, which is killed as a whole: when asked, when the
 * kernel ends, when this process ends, and when a signal would end this process.
 */
export function startKernelProcess(connectionFile: string, cwd: string): KernelProcess {
  const [node, ...words] = kernelSpec().argv;
  const filled = words.map((word) => word.replace("{connection_file}", connectionFile));
  // colours would put escape codes into the outputs
  const { FORCE_COLOR: _, ...env } = process.env;
  const child = spawn(node, ["--import", `data:text/javascript,${GUARD}`, ...filled], {
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
  const onSignal = (signal: NodeJS.Signals) => {
    kill();
    forget();
    // nobody else wants to know: let the signal do what it would have done without us
    if (process.listenerCount(signal) === 0) process.kill(process.pid, signal);
  };
  const forget = () => {
    process.off("exit", kill);
    for (const signal of SIGNALS) process.off(signal, onSignal);
  };
  process.on("exit", kill);
  for (const signal of SIGNALS) process.on(signal, onSignal);

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
  return { ended, ownText: () => text.trim(), kill };
}
