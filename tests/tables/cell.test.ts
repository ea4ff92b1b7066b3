import { expect, it } from "vitest";
import {
  digits,
  ends,
  fixed,
  looseVolume,
  massText,
  plain,
  priceText,
  pValueText,
  quantity,
  volumeText,
  yesOrNo,
} from "../../src/tables/cell.js";
import { listOf, note, present, tableOf, warning } from "../../src/tables/tableOf.js";
import type { Text } from "../../src/words/message.js";
import { render, renderAll } from "../../src/words/render.js";

const said = (text: Text) => render(text, "en");

it("a value that is not there is a dash, nought is none", () => {
  for (const missing of [undefined, null]) {
    const cells = [
      fixed(missing, 1),
      digits(missing),
      plain(missing),
      quantity(missing, "mass", "SI"),
    ];
    expect(cells.map(said)).toEqual(["–", "–", "–", "–"]);
  }
  expect([fixed(0, 1), digits(0), plain(0)].map(said)).toEqual(["0.0", "0", "0"]);
  expect([yesOrNo(true), yesOrNo(false), yesOrNo(undefined)].map(said)).toEqual(["yes", "no", "–"]);
});

it("small p-values are not told apart, from a thousandth on they are", () => {
  expect([0.0009999, 0.001, 0.0123, null].map((p) => said(pValueText(p)))).toEqual([
    "< 0.001",
    "0.0010",
    "0.012",
    "–",
  ]);
});

it("two ends that read the same stand once", () => {
  const whole = (low: number, high: number) => said(ends({ low, high }, (end) => fixed(end, 0)));
  expect([whole(5.1, 5.4), whole(5.4, 5.6), whole(7, 7)]).toEqual(["5", "5 to 6", "7"]);
  expect(said(ends(undefined, (end) => fixed(end, 0)))).toBe("–");
});

it("masses and volumes in the units of the study", () => {
  // 1 lb = 0.45359237 kg; 1 ft³ = 28.316846592 L; 1 yd³ = 0.764554857984 m³
  expect([massText(45.359237, "SI"), massText(45.359237, "US")].map(said)).toEqual([
    "45.4 kg",
    "100 lb",
  ]);
  expect([looseVolume(28.316846592, "SI"), looseVolume(28.316846592, "US")].map(said)).toEqual([
    "28.3",
    "1.00",
  ]);
  expect(said(volumeText(2 * 0.764554857984, "US"))).toBe("2.00 yd³");
  expect(said(looseVolume(null, "SI"))).toBe("–");
});

it("a price as it was written, in words that a language can say", () => {
  const both = ["2", "2 to 4", "2 per t", "2 to 4 per  t "].map((written) => priceText(written));
  expect(both.map(said)).toEqual(["2", "2 to 4", "2 per t", "2 to 4 per t"]);
  expect(both.map((text) => render(text, "es"))).toEqual(["2", "2 a 4", "2 por t", "2 a 4 por t"]);
});

it("tables and lists hold what is there: a column with its cells, a row for each item, a line with its link", () => {
  const items = [{ sizeMm: 2 }, { sizeMm: 4 }];
  const table = (isSplit: boolean) =>
    renderAll(
      tableOf(
        "Sizes",
        items,
        [
          ["No.", (_, index) => `${index + 1}`],
          isSplit && ["Part", () => "whole"],
          [{ header: "Size", unit: "mm", align: "right" }, ({ sizeMm }) => plain(sizeMm)],
        ],
        ["A note.", isSplit && "Of parts."],
      ),
    );
  expect(table(false)).toEqual({
    kind: "table",
    caption: "Sizes",
    columns: [{ header: "No." }, { header: "Size", unit: "mm", align: "right" }],
    rows: [
      ["1", "2"],
      ["2", "4"],
    ],
    notes: ["A note."],
  });
  expect(table(true).rows[1]).toEqual(["2", "whole", "4"]);
  expect(table(true).notes).toEqual(["A note.", "Of parts."]);
  expect(JSON.stringify(tableOf("Sizes", items, []))).not.toContain("notes");
  expect(present([0, false, "", null, undefined, 1])).toEqual([0, "", 1]);
  expect(listOf("Facts", [["A", "1"], false, ["B", "2", "there"]]).items).toStrictEqual([
    { label: "A", value: "1" },
    { label: "B", value: "2", to: "there" },
  ]);
  expect([note("A").tone, warning("A").tone]).toEqual(["note", "warning"]);
});
