import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { MADE_WITH } from "../../src/study/madeWith.js";

it("names the version of the package", () => {
  const { name, version } = JSON.parse(
    readFileSync(new URL("../../package.json", import.meta.url), "utf8"),
  );
  expect(MADE_WITH).toBe(`${name} ${version}`);
});
