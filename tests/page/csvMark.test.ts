import { expect, it } from "vitest";
import { inventedMark } from "../../src/page/view/keepView.js";
import { exampleResult } from "../support/exampleResult.js";

it("tables of invented data say so in their first line, and others have none", async () => {
  const result = await exampleResult("reading-room");
  expect(inventedMark(result, "en").trim()).toMatch(/invented for a demonstration\. Do not build/);
  expect(inventedMark(result, "en")).toMatch(/\n$/);
  const own = { ...result, config: { ...result.config, invented: false } };
  expect(inventedMark(own, "en")).toBe("");
});
