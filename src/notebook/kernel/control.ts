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

/**
 * Gives the control channel a thread of its own, which hears of an interrupt while a cell computes.
 *
 * @param server tslab's, before it is started
 * @param running 0 while the compiler runs; and how many cells have begun
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
