import { createHmac, randomBytes, randomInt, randomUUID, timingSafeEqual } from "node:crypto";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { createServer, type Server } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

const CHANNELS = ["shell", "iopub", "stdin", "control", "hb"] as const;
type Channel = (typeof CHANNELS)[number];

/** Where a kernel listens, and the key its messages are signed with. */
export type Connection = Awaited<ReturnType<typeof openConnection>>;

/** Longest socket path that every Unix takes (104 bytes with the closing zero on macOS). */
const LONGEST_SOCKET_PATH = 100;

/**
 * Ports that systems give to nobody who asks for any port (Linux from 32768, others from 49152). One of
 * those could be taken between choice and start, also by our own sockets, which try to connect meanwhile.
 */
const PORTS = { from: 20_000, to: 30_000 } as const;
const MAX_TRIES = 100;

async function holdPort(): Promise<Server> {
  for (let attempt = 1; ; attempt += 1) {
    const server = createServer();
    try {
      await new Promise<void>((resolve, reject) => {
        server.once("error", reject);
        server.listen(randomInt(PORTS.from, PORTS.to), "127.0.0.1", resolve);
      });
      return server;
    } catch (error) {
      if (attempt === MAX_TRIES) throw error;
    }
  }
}

/** As many free ports as there are channels, all held until the last is known. */
async function freePorts(): Promise<number[]> {
  const servers = await Promise.all(CHANNELS.map(holdPort));
  const ports = servers.map((server) => (server.address() as { port: number }).port);
  await Promise.all(servers.map((server) => new Promise((done) => server.close(done))));
  return ports;
}

/**
 * Writes the connection file of a new kernel into a fresh folder that only this user can read.
 *
 * Unix sockets in that folder where there are any, because no other program can take them between
 * the choice and the kernel's start; TCP on 127.0.0.1 on Windows and where the path is too long.
 *
 * Source: connection files, Jupyter client documentation, from memory. tslab joins address and
 * number by a colon for both transports (seen in tslab 1.0.22).
 */
export async function openConnection(
  transport: "ipc" | "tcp" = process.platform === "win32" ? "tcp" : "ipc",
) {
  // for the connection file and the sockets, and nothing else
  const folder = await mkdtemp(join(tmpdir(), "loambook-kernel-"));
  const remove = () => rm(folder, { recursive: true, force: true });
  try {
    const socket = join(folder, "s");
    const used = Buffer.byteLength(`${socket}:5`) > LONGEST_SOCKET_PATH ? "tcp" : transport;
    const ip = used === "ipc" ? socket : "127.0.0.1";
    const numbers = used === "ipc" ? CHANNELS.map((_, index) => index + 1) : await freePorts();
    const key = randomBytes(32).toString("hex");
    const file = join(folder, "connection.json");
    const ports = CHANNELS.map((channel, index) => [`${channel}_port`, numbers[index]]);
    const content = { transport: used, ip, ...Object.fromEntries(ports), key };
    await writeFile(file, JSON.stringify({ ...content, signature_scheme: "hmac-sha256" }), {
      mode: 0o600,
    });
    const address = (channel: Channel) => `${used}://${ip}:${numbers[CHANNELS.indexOf(channel)]}`;
    return { key, file, folder, address, remove };
  } catch (error) {
    await remove();
    throw error;
  }
}

/** A message of the Jupyter protocol, as much of it as we use. */
export interface KernelMessage {
  readonly id: string;
  readonly type: string;
  /** Id of the request that this message answers. */
  readonly parentId?: string;
  readonly content: Readonly<Record<string, unknown>>;
  readonly metadata?: Readonly<Record<string, unknown>>;
}

const DELIMITER = "<IDS|MSG>";
const PROTOCOL = "5.3";

function sign(key: string, parts: readonly (string | Uint8Array)[]): string {
  const hmac = createHmac("sha256", key);
  for (const part of parts) hmac.update(part);
  return hmac.digest("hex");
}

/** Makes a request with an id of its own, known before it is sent. */
export function newRequest(
  type: string,
  content: Readonly<Record<string, unknown>>,
): KernelMessage {
  return { id: randomUUID(), type, content };
}

/**
 * Serialises a message to the frames of the wire: delimiter, signature, header, parent, metadata, content.
 * The signature is HMAC-SHA256 over the last four.
 *
 * @param parent header of the request that is answered
 *
 * Source: the Jupyter wire protocol, version 5, Jupyter client documentation, from memory.
 */
export function toWire(
  key: string,
  message: KernelMessage & { readonly session: string },
  parent: object = {},
): string[] {
  const header = {
    msg_id: message.id,
    msg_type: message.type,
    session: message.session,
    username: "loambook",
    date: new Date().toISOString(),
    version: PROTOCOL,
  };
  const parts = [header, parent, {}, message.content].map((part) => JSON.stringify(part));
  return [DELIMITER, sign(key, parts), ...parts];
}

/** Place of the delimiter among the frames: the sender's names stand before it; -1 where there is none. */
export function startOfMessage(frames: readonly Uint8Array[]): number {
  return frames.findIndex((frame) => Buffer.from(frame).toString("latin1") === DELIMITER);
}

/**
 * Parses the frames of a message and checks its signature.
 *
 * @throws RangeError when there is no delimiter, a frame is missing, or the signature is wrong
 */
export function fromWire(key: string, frames: readonly Uint8Array[]): KernelMessage {
  const start = startOfMessage(frames);
  if (start < 0) throw new RangeError("invalid `frames`: no delimiter; expected <IDS|MSG>");
  const [signature, ...parts] = frames.slice(start + 1);
  if (signature === undefined || parts.length < 4) {
    throw new RangeError(
      `invalid \`frames\`: ${parts.length} after the signature; expected 4 or more`,
    );
  }
  const expected = Buffer.from(sign(key, parts));
  if (signature.length !== expected.length || !timingSafeEqual(signature, expected)) {
    throw new RangeError("invalid `frames`: wrong signature; expected one made with the key");
  }
  const [header, parent, metadata, content] = parts.map((part) =>
    JSON.parse(Buffer.from(part).toString()),
  );
  return { id: header.msg_id, type: header.msg_type, parentId: parent.msg_id, content, metadata };
}

/**
 * Connects to the shell, control and iopub channels of a kernel, which need not listen yet. Every message that
 * comes in has been checked: one that is not the kernel's, or cannot be read, is a fault.
 */
export async function openChannels(
  connection: Connection,
  listeners: {
    readonly onReply: (message: KernelMessage) => void;
    readonly onPublished: (message: KernelMessage) => void;
    readonly onFault: (error: unknown) => void;
  },
) {
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
    /** Sends a request, whose answer may come in before the sending is known to be done. */
    async send(channel: "shell" | "control", request: KernelMessage) {
      const frames = toWire(connection.key, { ...request, session });
      await (channel === "shell" ? shell : control).send(frames);
    },
    close() {
      for (const socket of [shell, control, iopub]) socket.close();
    },
  };
}
