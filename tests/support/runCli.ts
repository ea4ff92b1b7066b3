import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { onTestFinished } from "vitest";

export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

export interface CliRun {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Calls the built command line as a person would, with its output in a pipe. */
export function runCli(
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
