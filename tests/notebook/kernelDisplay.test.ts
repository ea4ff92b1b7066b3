import { describe, expect, it } from "vitest";
import { kernelSender } from "../../src/notebook/show.js";

const PATH = "/x/node_modules/tslab/dist/jupyter.js";
const BUNDLE = { data: { "text/html": "<p>", "text/plain": "p" }, metadata: { a: 1 } };

function noTslab(): never {
  throw new Error("tslab was loaded");
}

describe("kernelSender", () => {
  it("finds none outside of a kernel, or before a cell has run", () => {
    expect(kernelSender({ "/x/other/jupyter.js": { exports: {} } }, noTslab)).toBeUndefined();
    const idle = { [PATH]: { exports: { lastWriteDisplayData: null } } };
    expect(kernelSender(idle, noTslab)).toBeUndefined();
  });

  it("sends the whole bundle at once, by the copy of tslab that runs", () => {
    const sent: unknown[][] = [];
    const cache = {
      "C:\\y\\tslab\\dist\\jupyter.js": { exports: { lastWriteDisplayData: null } },
      [PATH]: { exports: { lastWriteDisplayData: (...words: unknown[]) => sent.push(words) } },
    };
    kernelSender(cache, noTslab)?.(BUNDLE);
    expect(sent).toEqual([[{ ...BUNDLE, transient: {} }, undefined]]);
  });

  it("shows the HTML, or the text, by the public way where there is no other", () => {
    const shown: string[] = [];
    const load = (path: string) => ({
      display: {
        html: (text: string) => shown.push(`${path} html ${text}`),
        text: (text: string) => shown.push(`${path} text ${text}`),
      },
    });
    const send = kernelSender({ [PATH]: { exports: {} } }, load);
    send?.(BUNDLE);
    send?.({ data: { "text/plain": "only" }, metadata: {} });
    expect(shown).toEqual([`${PATH} html <p>`, `${PATH} text only`]);
  });
});
