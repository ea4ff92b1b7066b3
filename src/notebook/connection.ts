import { randomBytes, randomInt } from "node:crypto";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { createServer, type Server } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

const CHANNELS = ["shell", "iopub", "stdin", "control", "hb"] as const;
type Channel = (typeof CHANNELS)[number];

/** Where a kernel listens, and the key its messages are signed with. */
export interface Connection {
  readonly key: string;
  readonly file: string;
  /** Holds the connection file and the sockets, nothing else. */
  readonly folder: string;
  readonly address: (channel: Channel) => string;
  /** Deletes the connection file and its folder. */
  readonly remove: () => Promise<void>;
}

/** Longest socket path that every Unix takes (104 bytes with the closing zero on macOS). */
const LONGEST_SOCKET_PATH = 100;

/**
 * Ports that systems give to nobody who asks for any port (Linux from 32768, others from 49152). One of
 * those could be taken between choice and start, also by our own sockets, which try to connect meanwhile.
 */
const PORTS = { from: 20_000, to: 30_000 } as const;
const MOST_TRIES = 100;

/** Holds a free port. */
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
      if (attempt === MOST_TRIES) throw error;
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
): Promise<Connection> {
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
