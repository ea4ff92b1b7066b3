import { describe, expect, it } from "vitest";
import { fromWire, newRequest, toWire } from "../../src/notebook/kernel/channels.js";

const request = newRequest("execute_request", { code: "const π = '„x“';" });
const frames = toWire("key", { ...request, session: "session" }).map((frame) => Buffer.from(frame));

describe("wire messages", () => {
  it("come back as they were sent, whatever routing frames stand before them", () => {
    const read = fromWire("key", [Buffer.from("identity"), ...frames]);
    expect(read).toEqual({
      id: request.id,
      type: "execute_request",
      parentId: undefined,
      content: request.content,
      metadata: {},
    });
  });

  it("are signed by HMAC-SHA256 over the four parts in order", () => {
    const parts = ['{"msg_id":"1","msg_type":"status"}', '{"msg_id":"0"}', "{}", '{"a":1}'];
    // made with Python's hmac module
    const signature = "7f0001eeabfcc5fea33e17724000904a782d6fcb015dece4789e6bfadc4e0aec";
    const wire = ["<IDS|MSG>", signature, ...parts].map((part) => Buffer.from(part));
    expect(fromWire("key", wire)).toEqual({
      id: "1",
      type: "status",
      parentId: "0",
      content: { a: 1 },
      metadata: {},
    });
    const [delimiter, signed, ...rest] = wire as [Buffer, Buffer, ...Buffer[]];
    expect(() => fromWire("key", [delimiter, signed, ...rest.reverse()])).toThrow(/signature/);
  });

  it("are refused with another key, a changed part, or a part missing", () => {
    expect(() => fromWire("other", frames)).toThrow(/wrong signature/);
    const changed = frames.with(5, Buffer.from('{"code":"process.exit()"}'));
    expect(() => fromWire("key", changed)).toThrow(/wrong signature/);
    expect(() => fromWire("key", frames.slice(0, 5))).toThrow(/3 after the signature/);
    expect(() => fromWire("key", frames.slice(1))).toThrow(/no delimiter/);
  });
});
