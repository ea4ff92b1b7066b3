import { randomUUID } from "node:crypto";
import type { Connection } from "./connection.js";
import { fromWire, type KernelMessage, toWire } from "./messages.js";

/** The sockets to a kernel; every message that comes in has been checked. */
export interface KernelChannels {
  /** Sends a request, whose answer may come in before the sending is known to be done. */
  readonly send: (channel: "shell" | "control", request: KernelMessage) => Promise<void>;
  readonly close: () => void;
}

/** Who takes what comes in. */
export interface ChannelListeners {
  readonly onReply: (message: KernelMessage) => void;
  readonly onPublished: (message: KernelMessage) => void;
  /** Called with a message that is not the kernel's or cannot be read. */
  readonly onFault: (error: unknown) => void;
}

/** Connects to the shell, control and iopub channels of a kernel, which need not listen yet. */
export async function openChannels(
  connection: Connection,
  listeners: ChannelListeners,
): Promise<KernelChannels> {
  const { Dealer, Subscriber } = await import("zeromq");
  const session = randomUUID();
  const shell = new Dealer({ linger: 0 });
  const control = new Dealer({ linger: 0 });
  // no limit: a cell that prints much must not lose lines
  const iopub = new Subscriber({ linger: 0, receiveHighWaterMark: 0 });
  iopub.subscribe();
  shell.connect(connection.address("shell"));
  control.connect(connection.address("control"));
  iopub.connect(connection.address("iopub"));

  const listen = async (
    socket: AsyncIterable<Buffer[]>,
    take: (message: KernelMessage) => void,
  ): Promise<void> => {
    for await (const frames of socket) {
      try {
        take(fromWire(connection.key, frames));
      } catch (error) {
        listeners.onFault(error);
      }
    }
  };
  for (const socket of [shell, control]) {
    listen(socket, listeners.onReply).catch(listeners.onFault);
  }
  listen(iopub, listeners.onPublished).catch(listeners.onFault);

  return {
    async send(channel, request) {
      const frames = toWire(connection.key, { ...request, session });
      await (channel === "shell" ? shell : control).send(frames);
    },
    close() {
      for (const socket of [shell, control, iopub]) socket.close();
    },
  };
}
