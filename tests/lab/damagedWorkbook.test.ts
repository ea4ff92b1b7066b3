import { readFileSync } from "node:fs";
import { join } from "node:path";
import { deflateRawSync } from "node:zlib";
import { CFB, utils, write } from "@e965/xlsx";
import { describe, expect, it } from "vitest";
import { readGrid } from "../../src/lab/sheet/grid.js";
import { stored, unzip } from "../../src/lab/sheet/zip.js";
import { render } from "../../src/words/render.js";
import { EXAMPLES } from "../support/studyCopy.js";

const whole = new Uint8Array(readFileSync(join(EXAMPLES, "bus-shelter/sheets/blocks.xlsx")));
const read = async (bytes: Uint8Array) => {
  const { grid, findings } = await readGrid("a.xlsx", bytes);
  return { rows: grid?.rows, said: findings.map(({ message }) => render(message)) };
};
const book = (rows: unknown[][]) => {
  const made = utils.book_new();
  utils.book_append_sheet(made, utils.aoa_to_sheet(rows), "sheet");
  return new Uint8Array(write(made, { type: "array", bookType: "xlsx", compression: true }));
};
/** The workbook with another text in its sheet. */
const withSheet = (bytes: Uint8Array, change: (xml: string) => string) => {
  const files = CFB.read(bytes, { type: "buffer" });
  const path = "/xl/worksheets/sheet1.xml";
  const xml = new TextDecoder().decode(new Uint8Array(CFB.find(files, path)?.content ?? []));
  CFB.utils.cfb_add(files, path, new TextEncoder().encode(change(xml)));
  const options = { fileType: "zip", type: "buffer", compression: true } as const;
  return new Uint8Array(CFB.write(files, options) as unknown as Uint8Array);
};

describe("a damaged workbook", () => {
  it("is read as it was or refused, whichever bit is flipped", { timeout: 60_000 }, async () => {
    const { rows } = await read(whole);
    expect(rows?.length).toBeGreaterThan(20);
    const outcomes = { same: 0, refused: 0 };
    for (let flip = 0; flip < 300; flip++) {
      const bytes = Uint8Array.from(whole);
      bytes[(flip * 7919) % bytes.length] ^= 1 << (flip % 8);
      const found = await read(bytes);
      if (found.rows === undefined) outcomes.refused += 1;
      else {
        expect(found.rows).toEqual(rows);
        outcomes.same += 1;
      }
    }
    expect(outcomes.refused).toBeGreaterThan(150);
  });

  it("is refused wherever it ends", async () => {
    for (let length = 4; length < whole.length; length += 211) {
      expect((await read(whole.slice(0, length))).rows).toBeUndefined();
    }
  });

  it("says that it is damaged, in words of ours", async () => {
    const { said } = await read(whole.slice(0, whole.length - 40));
    expect(said).toEqual(["The file is damaged, or was not saved to its end."]);
  });
});

describe("a workbook without end", () => {
  it("is stopped where it unpacks to more than it may", async () => {
    const bomb = withSheet(book([["a", "b"]]), (xml) =>
      xml.replace("</sheetData>", `${" ".repeat(40_000_000)}</sheetData>`),
    );
    expect(bomb.length).toBeLessThan(1_000_000);
    const start = performance.now();
    expect((await read(bomb)).said).toEqual([
      "Unpacked, the workbook has more than 16777216 bytes.",
    ]);
    expect(performance.now() - start).toBeLessThan(2000);
  });

  it("is stopped also where it states less than it holds", async () => {
    const files = new Map([["a.xml", new Uint8Array(10)]]);
    const packed = deflateRawSync(new Uint8Array(40_000_000));
    const archive = stored(new Map([["a.xml", packed]]));
    const view = new DataView(archive.buffer);
    const list = 30 + 5 + packed.length;
    view.setUint16(list + 10, 8, true);
    view.setUint32(list + 24, 10, true);
    expect((await unzip(archive, () => true)).files).toBeUndefined();
    const wrongSum = stored(files);
    new DataView(wrongSum.buffer).setUint32(30 + 5 + 10 + 16, 1, true);
    expect((await unzip(wrongSum, () => true)).files).toBeUndefined();
  });

  it("is refused for too many cells", async () => {
    const row = `<row>${'<c t="n"><v>1</v></c>'.repeat(250)}</row>`;
    const crowded = withSheet(book([["a", "b"]]), (xml) =>
      xml.replace("</sheetData>", `${row.repeat(450)}</sheetData>`),
    );
    expect((await read(crowded)).said).toEqual([
      "A sheet of the workbook has more than 100000 cells.",
    ]);
  });

  it("costs nothing where its dimension or a cell is far away", async () => {
    const start = performance.now();
    const far = withSheet(
      book([
        ["a", "b"],
        [1, 2],
      ]),
      (xml) => xml.replace(/<dimension ref="[^"]*"/, '<dimension ref="A1:XFD1048576"'),
    );
    expect((await read(far)).rows).toEqual([
      ["a", "b"],
      ["1", "2"],
    ]);
    const cell = withSheet(
      book([
        ["a", "b"],
        [1, 2],
      ]),
      (xml) =>
        xml.replace(
          "</sheetData>",
          '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData>',
        ),
    );
    expect((await read(cell)).said[0]).toMatch(/^Cell XFD1048576 stands beyond/);
    expect(performance.now() - start).toBeLessThan(2000);
  });
});

it("a workbook behind a password is told as such", async () => {
  const encrypted = Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, ...new Array(600).fill(0)]);
  expect((await read(encrypted)).said[0]).toMatch(/password/);
});
