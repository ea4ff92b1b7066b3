import { type ChildProcess, spawn } from "node:child_process";
import { createServer } from "node:net";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { writeKernelSpec } from "../../src/notebook/kernel/spec.js";
import { CHROMIUM, CHROMIUM_ARGUMENTS } from "../report/chromium.js";

/** What the notebook server puts into its page; only what is called here. */
declare const Jupyter: {
  notebook?: { kernel?: { is_connected(): boolean } };
};

const children: ChildProcess[] = [];
let browser: Browser | undefined;

/** Ends what `serve` and `openPage` started. */
export async function endServers(): Promise<void> {
  await browser?.close();
  // Asked, not killed: only so does the server end its kernels too.
  await Promise.all(children.map(endOf));
}

/** Ends a server that may have ended already. */
function endOf(child: ChildProcess): Promise<void> {
  return new Promise((ended) => {
    if (child.exitCode !== null || child.signalCode !== null) return ended();
    const last = setTimeout(() => child.kill("SIGKILL"), 15_000);
    child.once("exit", () => {
      clearTimeout(last);
      ended();
    });
    child.kill("SIGTERM");
  });
}

/** A port that nobody listens on: the server writes no port that it chose itself. */
function freePort(): Promise<number> {
  return new Promise((found, failed) => {
    const probe = createServer().on("error", failed);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => found(typeof address === "object" && address ? address.port : 0));
    });
  });
}

/** Starts a notebook server on a free port of this machine and waits for its address. */
export async function serve(jupyter: string, folder: string): Promise<string> {
  await writeKernelSpec(join(folder, ".jupyter"));
  const words = ["--no-browser", "--allow-root", "--ip=127.0.0.1", `--port=${await freePort()}`];
  const server = spawn(jupyter, [...words, "--NotebookApp.token=", `--notebook-dir=${folder}`], {
    env: { ...process.env, JUPYTER_PATH: join(folder, ".jupyter"), HOME: folder },
    cwd: folder,
  });
  children.push(server);
  return new Promise((found, failed) => {
    let told = "";
    server.stderr.on("data", (chunk: Buffer) => {
      told += chunk;
      const address = /http:\/\/127\.0\.0\.1:\d+/.exec(told)?.[0];
      if (address) found(address);
    });
    server.on("exit", () => failed(new Error(`the notebook server ended:\n${told}`)));
  });
}

/** Opens a notebook of the served folder in a window of its own and waits for its kernel. */
export async function openPage(address: string, notebook: string): Promise<Page> {
  browser ??= await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
  const page = await browser.newPage({ viewport: { width: 1280, height: 1600 } });
  await page.goto(`${address}/notebooks/${notebook}`);
  await page.waitForFunction(
    () => "Jupyter" in globalThis && Jupyter.notebook?.kernel?.is_connected(),
    undefined,
    { timeout: 60_000 },
  );
  return page;
}
