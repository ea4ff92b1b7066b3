import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { stored, unzip } from "../../src/lab/sheet/zip.js";

const FILES = new Map([
  ["study.yaml", new TextEncoder().encode("title: Señal\n")],
  ["sheets/más-arena.csv", new TextEncoder().encode("123456789")],
]);

it("writes an archive that is read back whole, its checksums compared", async () => {
  const { files } = await unzip(stored(FILES), () => true);
  expect([...(files ?? [])]).toEqual([...FILES]);
});

it("writes an archive that another reader takes, names and checksums alike", () => {
  const folder = mkdtempSync(join(tmpdir(), "loambook-archive-"));
  try {
    writeFileSync(join(folder, "a.zip"), stored(FILES));
    const program =
      "import sys,zipfile; z=zipfile.ZipFile(sys.argv[1]); print(z.testzip(), [(i.filename, hex(i.CRC)) for i in z.infolist()])";
    const told = execFileSync("python3", ["-c", program, join(folder, "a.zip")], {
      encoding: "utf8",
    });
    expect(told.trim()).toContain("None [('study.yaml', ");
    expect(told).toContain("('sheets/más-arena.csv', '0xcbf43926')");
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
