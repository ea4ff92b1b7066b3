import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { joinText, type NotebookText } from "../../src/notebook/notebookFile.js";
import { runNotebook } from "../../src/notebook/runNotebook.js";
import { fixture, outputsOf, plainOutputs } from "./support.js";

const BUILT = fileURLToPath(new URL("../../dist/notebook/show.js", import.meta.url));

describe("show in a kernel", () => {
  beforeAll(() => {
    if (!existsSync(BUILT)) throw new Error("the package is not built: run `npm run build` first");
  });

  it("sends one bundle with all MIME types and their metadata", { timeout: 120_000 }, async () => {
    const run = await runNotebook({ notebookPath: fixture("show") });
    if (run.status !== "cell-failed") throw new Error(`the run ended as ${run.status}`);
    const [, figure, table] = outputsOf(run.notebook);
    expect(plainOutputs(figure)).toEqual([
      "application/vnd.plotly.v1+json, image/svg+xml, image/png, text/plain",
    ]);
    const [shown] = figure ?? [];
    if (shown?.output_type !== "display_data") throw new Error("no display_data");
    const title = "Shares </svg><script>alert(1)</script>";
    const words = { alt: "Bars: soil 62, sand 38.", caption: title };
    for (const mime of Object.keys(shown.data)) expect(shown.metadata[mime]).toMatchObject(words);
    expect(shown.data["application/vnd.plotly.v1+json"]).toMatchObject({
      data: [{ type: "bar", x: ["soil", "sand"], y: [62, 38] }],
    });
    const svg = joinText(shown.data["image/svg+xml"] as NotebookText);
    expect(svg).toMatch(/^<svg /);
    expect(svg).not.toContain("<script");

    expect(plainOutputs(table)).toEqual([
      "application/vnd.loambook.node+json, text/html, text/plain",
      "application/vnd.loambook.node+json, text/html, text/plain",
      "stdout: after\n",
    ]);
    // the last cell shows a block that is none: the library's frames are named, this machine's folders not
    expect(run.failure).toMatchObject({ cellNumber: 4, line: 1 });
    expect(run.failure.kernelMessage).toMatch(
      /^RangeError: invalid `table\.rows\[0\]`: 1 cells; expected 0\n {4}at .*\(loambook\/dist\/blocks\/kinds\.js:\d+:\d+\)/,
    );
    expect(run.failure.kernelMessage).not.toContain(
      fileURLToPath(new URL("../../", import.meta.url)),
    );
  });
});
