import { randomUUID } from "node:crypto";
import { Session } from "node:inspector";
import { setTimeout as wait } from "node:timers/promises";
import { parentPort, workerData } from "node:worker_threads";
import { fromWire, startOfMessage, toWire } from "./channels.js";

/**
 * The program of the thread that holds the control channel. The kernel's own thread hears nothing while
 * code runs that never waits; this one does, and can stop that code.
 */

/** What the kernel gives its control thread. */
export interface ControlData {
  readonly address: string;
  readonly key: string;
  /**
   * 0 while the compiler runs, which may not be stopped in its midst; how many cells have begun; and 1 once
   * this thread has closed its socket.
   */
  readonly running: Int32Array;
}

export type FromControl =
  | { readonly type: "ready" | "interrupt" | "ping" }
  | { readonly type: "request"; readonly frames: readonly Uint8Array[] };

export type ToControl =
  | { readonly type: "pong" | "close" }
  | { readonly type: "reply"; readonly frames: readonly (Uint8Array | string)[] };

/**
 * So long the kernel may compute before it shows that it is not held up: in processor time, as a machine with
 * much else to do lets it wait, and a cell that was given up already must not be terminated while it is told so.
 */
const GRACE_MS = 300;
/** So long in any case, for a cell that is held up without computing. */
const PATIENCE_MS = 5000;
/** So often that time is looked at. */
const STEP_MS = 50;
/** So often it is asked after an interrupt. */
const LOOKS = 4;

const { address, key, running } = workerData as ControlData;
const kernel = parentPort as NonNullable<typeof parentPort>;
const tell = (message: FromControl) => kernel.postMessage(message);
const { Router } = await import("zeromq");
const socket = new Router();
let answered = () => {};

kernel.on("message", (message: ToControl) => {
  if (message.type === "pong") answered();
  else if (message.type === "reply") void socket.send([...message.frames]);
  else {
    socket.close();
    kernel.close();
    Atomics.store(running, 2, 1);
    Atomics.notify(running, 2);
  }
});
await socket.bind(address);
tell({ type: "ready" });
for await (const frames of socket) {
  if (typeOf(frames) === "interrupt_request") {
    await reply(frames, "interrupt_reply", { status: "ok" });
    void interrupt();
  } else tell({ type: "request", frames });
}

/** Type of a request; nothing where it is not signed as it should be, which the kernel tells. */
function typeOf(frames: readonly Uint8Array[]): string | undefined {
  try {
    return fromWire(key, frames).type;
  } catch {
    return undefined;
  }
}

async function reply(frames: readonly Buffer[], type: string, content: object): Promise<void> {
  const start = startOfMessage(frames);
  const parent = JSON.parse(String(frames[start + 2])) as { readonly session: string };
  const message = { id: randomUUID(), type, content: { ...content }, session: parent.session };
  await socket.send([...frames.slice(0, start), ...toWire(key, message, parent)]);
}

/**
 * Interrupts the cell: code that runs to its end without waiting is ended by the signal, a cell that waits
 * is given up by the kernel. Code that runs on after it has waited hears neither: it is terminated.
 */
async function interrupt(): Promise<void> {
  // Windows knows no signals: there it would end the process
  if (process.platform === "win32") tell({ type: "interrupt" });
  else process.kill(process.pid, "SIGINT");
  // a cell that is given up while it waits goes on by itself, and may begin such code then
  const cell = Atomics.load(running, 1);
  for (let look = 0; look < LOOKS; look += 1) {
    const idle = await answers();
    if (idle) await wait(GRACE_MS);
    if (Atomics.load(running, 1) !== cell) return;
    if (!idle && Atomics.load(running, 0) === 1) terminate();
  }
}

/** Whether the kernel's own thread answers before it has computed for so long without doing so. */
async function answers(): Promise<boolean> {
  let heard = false;
  answered = () => {
    heard = true;
  };
  tell({ type: "ping" });
  const before = process.cpuUsage();
  const end = performance.now() + PATIENCE_MS;
  while (!heard && performance.now() < end) {
    await wait(STEP_MS);
    const { user, system } = process.cpuUsage(before);
    if ((user + system) / 1000 > GRACE_MS) return heard;
  }
  return heard;
}

function terminate(): void {
  const session = new Session();
  session.connectToMainThread();
  session.post("Runtime.terminateExecution", () => session.disconnect());
}
