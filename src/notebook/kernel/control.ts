import { Worker } from "node:worker_threads";
import type { ControlData, FromControl, ToControl } from "./controlThread.js";

interface ControlSocket {
  send(frames: readonly (Uint8Array | string)[]): void;
  close(): void;
}

interface Server {
  readonly connInfo: {
    readonly transport: string;
    readonly ip: string;
    readonly key: string;
  };
  control: ControlSocket;
  bindSocket(socket: unknown, port: number): Promise<void>;
  handleShellMessage(socket: ControlSocket, ...frames: Buffer[]): Promise<void>;
}

/** So long the thread may take to close its socket when the process ends. */
const CLOSING_MS = 1000;

/**
 * Gives the control channel a thread of its own, which hears of an interrupt while a cell computes.
 *
 * @param server tslab's, before it is started
 * @param running 0 while the compiler runs; how many cells have begun; 1 once the thread has closed its socket
 */
export function giveControlAThread(server: { prototype: object }, running: Int32Array): void {
  const { prototype } = server as { prototype: Server };
  const { bindSocket } = prototype;
  prototype.bindSocket = async function (this: Server, socket, port) {
    if (socket !== this.control) return bindSocket.call(this, socket, port);
    const { transport, ip, key } = this.connInfo;
    const workerData: ControlData = { address: `${transport}://${ip}:${port}`, key, running };
    const thread = new Worker(new URL("./controlThread.js", import.meta.url), {
      workerData,
      // what the kernel's own process is told is not meant for its threads
      execArgv: [],
    });
    const tell = (message: ToControl) => thread.postMessage(message);
    // A process that ends while the thread holds a socket is aborted, and its own exit code is lost.
    process.once("exit", () => {
      tell({ type: "close" });
      Atomics.wait(running, 2, 0, CLOSING_MS);
    });
    const own = this.control;
    this.control = {
      send: (frames) => tell({ type: "reply", frames }),
      close() {
        own.close();
        tell({ type: "close" });
      },
    };
    const heard = (message: FromControl) => {
      if (message.type === "ping") tell({ type: "pong" });
      if (message.type === "interrupt") process.emit("SIGINT");
      if (message.type !== "request") return;
      const frames = message.frames.map((frame) => Buffer.from(frame));
      void this.handleShellMessage(this.control, ...frames);
    };
    await new Promise<void>((ready, fail) => {
      thread.once("error", fail);
      thread.once("message", () => {
        ready();
        thread.on("message", heard);
      });
    });
  };
}
