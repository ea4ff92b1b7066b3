import { clearInterval, setInterval } from "node:timers";
import { setTimeout as wait } from "node:timers/promises";
import { openConnection } from "./connection.js";
import { openChannels } from "./kernelChannels.js";
import { type ProcessEnd, startKernelProcess } from "./kernelProcess.js";
import type { KernelMessage } from "./messages.js";
import type { CellOutput } from "./nbformat.js";
import { outputCollector } from "./outputCollector.js";
import { within } from "./within.js";

/** How a request ended. */
export type Answer =
  | { readonly outcome: "replied"; readonly status: string }
  | { readonly outcome: "died"; readonly end: ProcessEnd }
  | { readonly outcome: "timed-out" };

/** A request to run code: `answer` comes later, `outputs` can be asked at any time. */
export interface Execution {
  readonly answer: Promise<Answer>;
  readonly outputs: () => CellOutput[];
}

/** A kernel that can run code. */
export interface KernelClient {
  /** Waits until the kernel answers and what it publishes reaches us. */
  readonly ready: (milliseconds: number) => Promise<Answer>;
  /** Runs code; the answer is the kernel's reply, once all that was published by then has come in. */
  readonly execute: (code: string, milliseconds: number) => Promise<Execution>;
  /** What the process wrote outside of any cell. */
  readonly ownText: () => string;
  /** Asks the kernel to end, ends it if it does not, and removes what was made for it. */
  readonly close: () => Promise<void>;
}

const POLITE_MS = 2000;
/** Time for the last outputs of a dead kernel, which may be on their way to us. */
const DRAIN_MS = 50;
const ASK_AGAIN_MS = 250;

/** A request under way. */
interface Pending {
  status?: string;
  idle: boolean;
  readonly done: (status: string) => void;
  readonly fail: (error: unknown) => void;
}

/**
 * Starts tslab as a kernel and speaks the Jupyter messaging protocol with it. Whatever happens,
 * `close` leaves no process behind; so does the end of this process.
 *
 * @param cwd folder the cells run in
 * @param transport default: Unix sockets where there are any, else TCP on 127.0.0.1
 */
export async function startKernel(cwd: string, transport?: "ipc" | "tcp"): Promise<KernelClient> {
  const connection = await openConnection(transport);
  const pending = new Map<string, Pending>();
  const collector = outputCollector();
  let fault: { readonly error: unknown } | undefined;
  const settle = (id: string, change: Partial<Pending>): void => {
    const request = pending.get(id);
    if (request === undefined) return;
    Object.assign(request, change);
    // the reply and the end of the outputs come by different sockets, in any order
    if (request.status === undefined || !request.idle) return;
    pending.delete(id);
    request.done(request.status);
  };
  const channels = await openChannels(connection, {
    onReply: ({ parentId = "", content }) =>
      settle(parentId, { status: String(content.status ?? "ok") }),
    onPublished(message: KernelMessage) {
      collector.take(message);
      if (message.type !== "status" || message.content.execution_state !== "idle") return;
      settle(message.parentId ?? "", { idle: true });
    },
    onFault(error) {
      fault ??= { error };
      for (const { fail } of pending.values()) fail(error);
    },
  });
  const kernel = startKernelProcess(connection, cwd);

  const ask = async (type: string, content: Readonly<Record<string, unknown>>) => {
    if (fault !== undefined) throw fault.error;
    const id = await channels.send("shell", type, content);
    const reply = new Promise<Answer>((resolve, fail) => {
      const done = (status: string) => resolve({ outcome: "replied", status });
      pending.set(id, { idle: false, done, fail });
    });
    return { id, reply };
  };
  const firstOf = async (reply: Promise<Answer>, milliseconds: number): Promise<Answer> => {
    const died = kernel.ended.then((end): Answer => ({ outcome: "died", end }));
    const answer = await within(milliseconds, Promise.race([reply, died]));
    if (answer === undefined) return { outcome: "timed-out" };
    if (answer.outcome === "died") await wait(DRAIN_MS);
    return answer;
  };

  return {
    async ready(milliseconds) {
      // asked again and again: what the kernel published before our subscription reached it is lost
      let timer: ReturnType<typeof setInterval> | undefined;
      const reply = new Promise<Answer>((resolve, reject) => {
        const again = () => {
          ask("kernel_info_request", {})
            .then((request) => request.reply)
            .then(resolve, reject);
        };
        again();
        timer = setInterval(again, ASK_AGAIN_MS);
      });
      try {
        return await firstOf(reply, milliseconds);
      } finally {
        clearInterval(timer);
      }
    },
    async execute(code, milliseconds) {
      const content = { code, silent: false, store_history: true, allow_stdin: false };
      const { id, reply } = await ask("execute_request", { ...content, stop_on_error: true });
      return { answer: firstOf(reply, milliseconds), outputs: () => collector.outputsOf(id) };
    },
    ownText: kernel.ownText,
    async close() {
      try {
        await channels.send("control", "shutdown_request", { restart: false });
        await within(POLITE_MS, kernel.ended);
      } finally {
        kernel.kill();
        await kernel.ended;
        channels.close();
        await connection.remove();
      }
    },
  };
}
