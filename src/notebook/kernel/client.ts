import { clearInterval, setInterval } from "node:timers";
import { setTimeout as wait } from "node:timers/promises";
import { addWords, type CellOutput, errorOutput, record } from "../notebookFile.js";
import { type KernelMessage, newRequest, openChannels, openConnection } from "./channels.js";
import { type ProcessEnd, startKernelProcess } from "./process.js";

export type Answer =
  | { readonly outcome: "replied"; readonly status: string }
  | { readonly outcome: "died"; readonly end: ProcessEnd }
  | { readonly outcome: "timed-out" };

/** A request to run code: `answer` comes later, `outputs` can be asked at any time. */
export interface KernelExecution {
  readonly answer: Promise<Answer>;
  readonly outputs: () => CellOutput[];
  /** Line of the cell, from 1, where it failed; absent where the kernel does not tell. */
  readonly errorLine: () => number | undefined;
}

/** A kernel that can run code. */
export type KernelClient = Awaited<ReturnType<typeof startKernel>>;

const POLITE_MS = 2000;
/** Time for the last outputs of a dead kernel, which may be on their way to us. */
const DRAIN_MS = 50;
const ASK_AGAIN_MS = 250;

interface Pending {
  status?: string;
  idle: boolean;
  readonly done: (status: string) => void;
  readonly fail: (error: unknown) => void;
}

/**
 * Keeps the requests under way, to which what comes in from the kernel is matched. A request is known before
 * it is sent, because a quick kernel answers before the sending is known to be done, and an answer to nobody
 * would be lost.
 */
export function trackRequests(send: (request: KernelMessage) => Promise<void>) {
  const pending = new Map<string, Pending>();
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
  return {
    /** Sends a request; `reply` comes once the kernel has answered and has published all of its outputs. */
    async ask(type: string, content: KernelMessage["content"]) {
      if (fault !== undefined) throw fault.error;
      const request = newRequest(type, content);
      const reply = new Promise<Answer>((resolve, fail) => {
        const done = (status: string) => resolve({ outcome: "replied", status });
        pending.set(request.id, { idle: false, done, fail });
      });
      // whoever asked looks at the reply only once the sending is done
      reply.catch(() => undefined);
      try {
        await send(request);
      } catch (error) {
        pending.delete(request.id);
        throw error;
      }
      return { id: request.id, reply };
    },
    onReply: ({ parentId = "", content }: KernelMessage) =>
      settle(parentId, { status: String(content.status ?? "ok") }),
    onPublished({ type, parentId = "", content }: KernelMessage) {
      if (type === "status" && content.execution_state === "idle") settle(parentId, { idle: true });
    },
    /** All requests under way fail, and all later ones. */
    onFault(error: unknown) {
      fault ??= { error };
      for (const { fail } of pending.values()) fail(error);
    },
  };
}

/**
 * Starts tslab as a kernel and speaks the Jupyter messaging protocol with it. Whatever happens,
 * `close` leaves no process behind; so does the end of this process.
 *
 * @param cwd folder the cells run in
 * @param transport default: Unix sockets where there are any, else TCP on 127.0.0.1
 */
export async function startKernel(cwd: string, transport?: "ipc" | "tcp") {
  const connection = await openConnection(transport);
  const collector = outputCollector();
  const requests = trackRequests((request) => channels.send("shell", request));
  const channels = await openChannels(connection, {
    ...requests,
    onPublished(message) {
      collector.take(message);
      requests.onPublished(message);
    },
  });
  const kernel = startKernelProcess(connection, cwd);

  const firstOf = async (reply: Promise<Answer>, milliseconds: number): Promise<Answer> => {
    const died = kernel.ended.then((end): Answer => ({ outcome: "died", end }));
    const answer = await withTimeout(milliseconds, Promise.race([reply, died]));
    if (answer === undefined) return { outcome: "timed-out" };
    if (answer.outcome === "died") await wait(DRAIN_MS);
    return answer;
  };

  return {
    /** Waits until the kernel answers and what it publishes reaches us. */
    async ready(milliseconds: number): Promise<Answer> {
      // asked again and again: what the kernel published before our subscription reached it is lost
      let timer: ReturnType<typeof setInterval> | undefined;
      const reply = new Promise<Answer>((resolve, reject) => {
        const again = () => {
          const asked = requests.ask("kernel_info_request", {});
          asked.then((request) => request.reply).then(resolve, reject);
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
    /**
     * Runs code; the answer is the kernel's reply, once all that was published by then has come in.
     *
     * @param stopOnError whether code that was sent meanwhile is aborted when this fails
     */
    async execute(
      code: string,
      milliseconds: number,
      stopOnError = true,
    ): Promise<KernelExecution> {
      const { id, reply } = await requests.ask("execute_request", {
        code,
        silent: false,
        store_history: true,
        allow_stdin: false,
        stop_on_error: stopOnError,
      });
      return {
        answer: firstOf(reply, milliseconds),
        outputs: () => collector.outputsOf(id),
        errorLine: () => collector.errorLineOf(id),
      };
    },
    /** Asks the kernel to interrupt the code that runs. */
    interrupt: () => channels.send("control", newRequest("interrupt_request", {})),
    ownText: kernel.ownText,
    /** Asks the kernel to end, ends it if it does not, and removes what was made for it. */
    async close() {
      try {
        await channels.send("control", newRequest("shutdown_request", { restart: false }));
        await withTimeout(POLITE_MS, kernel.ended);
      } finally {
        kernel.kill();
        await kernel.ended;
        channels.close();
        await connection.remove();
      }
    },
  };
}

/**
 * Gathers what the kernel publishes, cell by cell. An output belongs to the request that its message names,
 * also when it comes late; an update replaces every output shown under the same display id, whichever cell
 * showed it. Texts of the same stream that follow each other are joined.
 */
function outputCollector() {
  const cells = new Map<string, CellOutput[]>();
  const displayIds = new WeakMap<CellOutput, unknown>();
  const errorLines = new Map<string, number>();
  const display = ({ data, metadata }: KernelMessage["content"], displayId: unknown) => {
    const shown: CellOutput = {
      output_type: "display_data",
      data: record(data),
      metadata: record(metadata),
    };
    displayIds.set(shown, displayId);
    return shown;
  };
  const update = (content: KernelMessage["content"], displayId: unknown): void => {
    for (const outputs of cells.values()) {
      outputs.forEach((output, at) => {
        if (displayIds.get(output) === displayId) outputs[at] = display(content, displayId);
      });
    }
  };
  const take = ({ type, parentId, content, metadata }: KernelMessage): void => {
    if (parentId === undefined) return;
    const outputs = cells.get(parentId) ?? [];
    cells.set(parentId, outputs);
    const displayId = record(content.transient).display_id;
    switch (type) {
      case "stream":
        addWords(outputs, content.name === "stderr" ? "stderr" : "stdout", String(content.text));
        break;
      case "display_data":
        outputs.push(display(content, displayId));
        break;
      case "update_display_data":
        if (displayId !== undefined) update(content, displayId);
        break;
      case "error":
        outputs.push(errorOutput(content));
        if (typeof metadata?.line === "number") errorLines.set(parentId, metadata.line);
    }
  };
  return {
    take,
    outputsOf: (requestId: string) => [...(cells.get(requestId) ?? [])],
    errorLineOf: (requestId: string) => errorLines.get(requestId),
  };
}

/** Waits for a promise, but not longer than so many milliseconds: `undefined` when the time is up. */
async function withTimeout<T>(milliseconds: number, promise: Promise<T>): Promise<T | undefined> {
  let forget = () => {};
  const late = new Promise<undefined>((resolve) => {
    const timer = setTimeout(() => resolve(undefined), milliseconds);
    forget = () => clearTimeout(timer);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    forget();
  }
}
