import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { onTestFinished } from "vitest";
import { main } from "../../src/cli/main.js";

export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

export interface CliRun {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Calls the command line in this process, from the sources, and keeps what it prints: one call at a time. */
export async function runCli(
  words: readonly string[],
  cwd: string = ROOT,
  env: NodeJS.ProcessEnv = process.env,
): Promise<CliRun> {
  const { stdout, stderr } = process;
  const before = {
    cwd: process.cwd(),
    env: process.env,
    listeners: stdout.listeners("error"),
    terminals: [process.stdin, stdout, stderr].map((stream) => [stream, stream.isTTY] as const),
    write: [stdout.write, stderr.write] as const,
  };
  const printed = { stdout: "", stderr: "" };
  process.chdir(cwd);
  process.env = { ...env };
  for (const [stream] of before.terminals) stream.isTTY = false;
  const keep = (name: keyof typeof printed) => (text: string | Uint8Array) => {
    printed[name] += text;
    return true;
  };
  stdout.write = keep("stdout");
  stderr.write = keep("stderr");
  try {
    return { code: await main(words), ...printed };
  } finally {
    [stdout.write, stderr.write] = before.write;
    for (const [stream, isTTY] of before.terminals) stream.isTTY = isTTY;
    for (const listener of stdout.listeners("error")) {
      if (!before.listeners.includes(listener)) stdout.off("error", listener as () => void);
    }
    process.env = before.env;
    process.chdir(before.cwd);
  }
}

/** Starts the built command line as a person would, with its output in a pipe. */
export function startCli(
  words: readonly string[],
  cwd: string = ROOT,
  env: NodeJS.ProcessEnv = process.env,
): Promise<CliRun> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(ROOT, "bin/loambook.cjs"), ...words], { cwd, env });
    let stdout = "";
    let stderr = "";
    child.stdout.setEncoding("utf8").on("data", (text: string) => {
      stdout += text;
    });
    child.stderr.setEncoding("utf8").on("data", (text: string) => {
      stderr += text;
    });
    child.on("error", reject).on("close", (code) => resolve({ code, stdout, stderr }));
  });
}

/** A folder that is deleted when the test ends. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "loambook-test-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
