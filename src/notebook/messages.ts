import { createHmac, randomUUID, timingSafeEqual } from "node:crypto";

/** A message of the Jupyter protocol, as much of it as we use. */
export interface KernelMessage {
  readonly id: string;
  readonly type: string;
  /** Id of the request that this message answers. */
  readonly parentId?: string;
  readonly content: Readonly<Record<string, unknown>>;
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
 * Serialises a request to the frames of the wire: delimiter, signature, header, parent, metadata, content.
 * The signature is HMAC-SHA256 over the last four.
 *
 * Source: the Jupyter wire protocol, version 5, Jupyter client documentation, from memory.
 */
export function toWire(
  key: string,
  message: KernelMessage & { readonly session: string },
): string[] {
  const header = {
    msg_id: message.id,
    msg_type: message.type,
    session: message.session,
    username: "loambook",
    date: new Date().toISOString(),
    version: PROTOCOL,
  };
  const parts = [header, {}, {}, message.content].map((part) => JSON.stringify(part));
  return [DELIMITER, sign(key, parts), ...parts];
}

/**
 * Parses the frames of a message and checks its signature.
 *
 * @throws RangeError when there is no delimiter, a frame is missing, or the signature is wrong
 */
export function fromWire(key: string, frames: readonly Uint8Array[]): KernelMessage {
  const start = frames.findIndex((frame) => Buffer.from(frame).toString("latin1") === DELIMITER);
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
  const [header, parent, , content] = parts.map((part) => JSON.parse(Buffer.from(part).toString()));
  return { id: header.msg_id, type: header.msg_type, parentId: parent.msg_id, content };
}
