import { createHash } from "node:crypto";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { studyAttachments } from "../../src/report/attachments.js";
import type { StudyResult } from "../../src/study/studyResult.js";

const SHEET = "size,mass\n2,10\n";
let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "loambook-attach-"));
  await mkdir(join(folder, "sheets"));
  await writeFile(join(folder, "sheets", "sand.csv"), SHEET);
});
afterAll(() => rm(folder, { recursive: true }));

// only what is read of a result here
const resultOf = (sha256: string) =>
  ({
    config: { language: "en" },
    inputs: [{ file: "sheets/sand.csv", sha256 }],
  }) as unknown as StudyResult;

test("the result and every file that it was computed from, byte for byte", async () => {
  const result = resultOf(createHash("sha256").update(SHEET).digest("hex"));
  const attachments = await studyAttachments(folder, result);
  expect(
    attachments.map(({ name, mimeType, relationship }) => [name, mimeType, relationship]),
  ).toEqual([
    ["result.json", "application/json", "data"],
    ["sheets/sand.csv", "text/csv", "source"],
  ]);
  const [json, sheet] = attachments.map(({ bytes }) => new TextDecoder().decode(bytes));
  expect(JSON.parse(json!)).toEqual(result);
  expect(sheet).toBe(SHEET);
});

test("a file that has changed since is refused", async () => {
  await expect(studyAttachments(folder, resultOf("00"))).rejects.toThrow(/sheets\/sand\.csv/);
});
