import { describe, expect, it } from "vitest";
import {
  byDefault,
  forms,
  group,
  list,
  names,
  optional,
  required,
} from "../../src/entries/groups.js";
import {
  BESIDE,
  date,
  fixedOrRange,
  isGroup,
  type Kind,
  label,
  NOWHERE,
  number,
  oneOf,
  pattern,
  percent,
  positive,
  quantity,
  shaped,
  size,
  text,
} from "../../src/entries/kinds.js";
import { price } from "../../src/entries/supply.js";
import { say } from "../../src/words/message.js";
import { renderAll } from "../../src/words/render.js";

/** What is read, or the places and words of what is wrong. */
function read(kind: Kind<unknown>, written: unknown): unknown {
  const outcome = kind.read(written, ["at"]);
  if ("value" in outcome) return outcome.value;
  return renderAll(outcome.problems).map(({ path, message, expected }) =>
    [path.slice(1).join("."), message, expected].filter((part) => part !== "").join(" | "),
  );
}

const OUTSIDE = "This value is outside the allowed range.";

describe("a single value", () => {
  it.each<[string, Kind<unknown>, unknown, unknown]>([
    ["a text", text("Wall"), "  East wall ", "East wall"],
    [
      "a bare number for a text",
      text("Wall"),
      3,
      ["This is not a text. | a text, for example “Wall”"],
    ],
    ["blanks for a text", text("Wall"), "  ", ["This text is empty. | a text, for example “Wall”"]],
    ["a number for a label", label("2012"), 2012, "2012"],
    ["a truth value for a label", label("2012"), true, "true"],
    [
      "a list for a label",
      label("2012"),
      [1],
      ["This is not a text. | a text, for example “2012”"],
    ],
    ["a pattern", pattern(/^[a-z]+$/, "sand", say`Letters.`), "soil", "soil"],
    [
      "another pattern",
      pattern(/^[a-z]+$/, "sand", say`Letters.`),
      "S1",
      ["Letters. | for example “sand”"],
    ],
    ["a leap day", date("2026-05-18"), "2024-02-29", "2024-02-29"],
    [
      "no leap day",
      date("2026-05-18"),
      "2026-02-29",
      [
        "A date is written year-month-day, for example 2026-05-18. | a date, year-month-day, for example “2026-05-18”",
      ],
    ],
    ["one of some", oneOf("a", "b"), "b", "b"],
    [
      "none of some",
      oneOf("a", "b"),
      "c",
      ["This is none of the values that may stand here. | one of a, b"],
    ],
    [
      "not the only one",
      oneOf(true),
      "yes",
      ["This is none of the values that may stand here. | true"],
    ],
    ["the least number", number({ min: 1, max: 3, example: 2 }), 1, 1],
    [
      "a number below the least",
      number({ min: 1, max: 3, example: 2 }),
      0.99,
      [`${OUTSIDE} | a number, 1 to 3, for example “2”`],
    ],
    [
      "a number at what it must be above",
      number({ above: 0, max: 9, example: 2 }),
      0,
      [`${OUTSIDE} | a number, more than 0, at most 9, for example “2”`],
    ],
    ["a number above it", number({ above: 0, example: 2 }), 0.001, 0.001],
    [
      "a half for a count",
      number({ whole: true, min: 1, example: 2 }),
      1.5,
      ["This is not a whole number. | a whole number, at least 1, for example “2”"],
    ],
    [
      "a text for a number",
      number({ max: 3, example: 2 }),
      "2",
      ["This is not a number. | a number, at most 3, for example “2”"],
    ],
    [
      "a number that is none",
      number({ example: 2 }),
      Number.NaN,
      ["This is not a number. | a number, for example “2”"],
    ],
    ["a length in metres", quantity("m", { min: 0.1, max: 3, example: "400 mm" }), "400 mm", 0.4],
    // In binary one foot is a last digit less than 0.3048 m.
    [
      "the least of it in feet",
      quantity("m", { min: 0.3048, example: "1 ft" }),
      "1 ft",
      expect.closeTo(0.3048, 12),
    ],
    ["a volume in litres", positive("L", "12 L"), "0.5 m3", 500],
    ["hours from minutes", positive("h", "8 h"), "90 min", 1.5],
    [
      "nothing of what must be more",
      positive("kg", "10 kg"),
      "0 kg",
      [expect.stringMatching(/^This value is outside.*more than 0 kg, for example “10 kg”$/)],
    ],
    [
      "a share without its sign",
      percent("4 %"),
      "4",
      [expect.stringMatching(/^This number has no unit\./)],
    ],
    [
      "a share in grams",
      percent("4 %"),
      "4 g",
      [expect.stringMatching(/^The unit “g” is not known here\./)],
    ],
    ["a share with a comma", percent("4 %"), "4,5 %", [expect.stringMatching(/decimal comma/)]],
    [
      "a list for a share",
      percent("4 %"),
      [4],
      [expect.stringMatching(/^This is not a number with a unit\./)],
    ],
    [
      "more than all",
      percent("4 %"),
      "100.1 %",
      [expect.stringMatching(/0 to 100 %, for example “4 %”$/)],
    ],
    ["a sieve", size("20 mm", "3/4 in"), "3/4 in", 19],
    ["the largest grain", size("20 mm"), "100 mm", 100],
    [
      "a boulder",
      size("20 mm"),
      "101 mm",
      [expect.stringMatching(/1 to 100 mm, for example “20 mm”$/)],
    ],
    ["a bare size", size("20 mm"), 20, [expect.stringMatching(/^This number has no unit\./)]],
    [
      "no size",
      size("20 mm", "3/4 in"),
      "coarse",
      [expect.stringMatching(/^This is not a grain size\..*“20 mm” or “3\/4 in”$/)],
    ],
  ])("%s", (_, kind, written, outcome) => {
    expect(read(kind, written)).toEqual(outcome);
  });

  it("may be a range", () => {
    const kind = fixedOrRange(quantity("number", { min: 0.05, max: 1, example: "0.25" }), 0.25);
    const told = (message: string) => [
      `${message} | a number, or two with “to” between them, 0.05 to 1, for example “0.25”`,
    ];
    expect(read(kind, 0.25)).toBe(0.25);
    expect(read(kind, "0.2 to 0.35")).toEqual({ min: 0.2, max: 0.35 });
    expect(read(kind, "0.2 to 2")).toEqual(told(OUTSIDE));
    expect(read(kind, "0.2 to 0.2")).toEqual(
      told("This range runs from its larger end to its smaller."),
    );
    expect(read(kind, "0.2 to 0.3 to 0.4")).toEqual(told("This is neither a value nor a range."));
  });

  it("may be a price, for the unit that it is reckoned in", () => {
    const kind = price(["t", "m3"], "38 per t");
    expect(read(kind, "25 to 31 per t")).toMatchObject({ low: 25, amount: 28, high: 31, per: "t" });
    expect(read(kind, "2 per kg")).toMatchObject({ amount: 2000, per: "t" });
    expect(read(kind, "40 / m³")).toMatchObject({ amount: 40, per: "m3", written: "40 / m³" });
    const words = (written: unknown) => String(read(kind, written)).split(" | ")[0];
    expect(words("dear")).toBe("This is not a price.");
    expect(words(true)).toBe("This is not a price.");
    expect(words("38 a tonne")).toBe("This is not a price.");
    expect(words(38)).toBe("This price has no unit.");
    expect(words("38 per bag")).toBe("The unit “bag” is not known here.");
    expect(words("31 to 25 per t")).toBe("This range runs from its larger end to its smaller.");
  });
});

describe("values together", () => {
  it("in a group: each key below its name, beside the group or nowhere", () => {
    const window = group({
      min: byDefault("minPct", percent("40 %"), "0 %", "Least."),
      max: required("maxPct", percent("40 %"), "Greatest."),
    });
    const kind = group({
      format: required(NOWHERE, oneOf("one"), "Version."),
      share: required(BESIDE, window, "Allowed share."),
      spare: optional(BESIDE, window, "Another."),
      note: optional("note", text("Dry"), "Note.", { earlier: ["remark"] }),
    });
    const share = { max: "60 %" };
    expect(read(kind, { format: "one", share })).toEqual({ minPct: 0, maxPct: 60 });
    expect(read(kind, { format: "one", share, note: "Wet" })).toEqual({
      minPct: 0,
      maxPct: 60,
      note: "Wet",
    });
    expect(read(kind, { format: "two", remark: "x", spare: null })).toEqual([
      "remark | The key “remark” is now called “note”. | note",
      "format | This is none of the values that may stand here. | one",
      "share | This key is missing. | a group of keys",
      "spare | Nothing stands behind this key. | a group of keys",
    ]);
    expect(read(kind, { format: "one", share, colour: 1 })).toEqual([
      "colour | The key “colour” is not known here. | one of format, share, spare, note",
    ]);
    expect(read(kind, ["one"])).toEqual([
      "This is no group of keys. | the keys format, share, spare, note",
    ]);
    expect(kind.schema()).toMatchObject({
      required: ["format", "share"],
      additionalProperties: false,
      properties: { note: { description: "Note. A text, for example “Dry”.", examples: ["Dry"] } },
    });
  });

  it("in a group that must hold together, told at a key or at the group", () => {
    const holds = ({ low, high }: { readonly low: number; readonly high: number }) => low <= high;
    const kind = (at?: string) =>
      group(
        {
          low: required("low", number({ example: 1 }), "Low."),
          high: required("high", number({ example: 2 }), "High."),
        },
        { checks: [{ at, holds, message: say`Upside down.`, expected: say`low first` }] },
      );
    expect(read(kind(), { low: 1, high: 1 })).toEqual({ low: 1, high: 1 });
    expect(read(kind(), { low: 2, high: 1 })).toEqual(["Upside down. | low first"]);
    expect(read(kind("high"), { low: 2, high: 1 })).toEqual(["high | Upside down. | low first"]);
    // What cannot be read is not held against anything.
    expect(read(kind(), { low: "2", high: 1 })).toHaveLength(1);
  });

  it("by default as it would be written, which must be right", () => {
    expect(() => byDefault("a", percent("4 %"), "4", "A.")).toThrow('invalid default: "4"');
  });

  it("in a list, as many as may be, none with the id of another", () => {
    const item = group({ id: required("id", text("a"), "Id.") });
    const kind = list(item, { min: 1, max: 2, unique: "id" });
    expect(read(kind, [{ id: "a" }, { id: "b" }])).toEqual([{ id: "a" }, { id: "b" }]);
    const length = "This list is too short or too long. | a list of 1 to 2";
    expect([read(kind, []), read(kind, [1, 2, 3])]).toEqual([[length], [length]]);
    expect(read(kind, [{ id: "a" }, { id: "a" }])).toEqual([
      "1.id | Two entries have this id. | each id once",
    ]);
    expect(read(kind, { id: "a" })).toEqual(["This is no list. | a list of 1 to 2"]);
    expect(read(list(item), [{ id: "a" }, { id: "a" }, 3])).toEqual([
      "2 | This is no group of keys. | the keys id",
    ]);
  });

  it("by names of the user's own", () => {
    const kind = names(percent("55 %"), "soil");
    expect(read(kind, { soil: "60 %", sand: "40 %" })).toEqual({ soil: 60, sand: 40 });
    expect(read(kind, { soil: "60", sand: "40 %" })).toHaveLength(1);
    expect(read(kind, "60 %")).toEqual([expect.stringMatching(/^This is no group of keys\./)]);
    expect(kind.schema().examples).toEqual([{ soil: "55 %" }]);
  });

  it("in the form that was meant", () => {
    const round = group({ diameter: required("d", positive("m", "1 m"), "Diameter.") });
    const square = group({ side: required("s", positive("m", "1 m"), "Side.") });
    const kind = forms({ round, square }, (written) => {
      if (!isGroup(written) || written.kind === "oval") {
        return { at: "kind", choices: ["round", "square"], message: say`Not known.` };
      }
      return "diameter" in written ? "round" : "square";
    });
    expect(read(kind, { side: "2 m" })).toEqual({ s: 2 });
    expect(read(kind, { diameter: "2 m", side: "2 m" })).toEqual([
      "side | This key belongs to another form of this entry. | one of diameter",
    ]);
    expect(read(kind, { kind: "oval" })).toEqual(["kind | Not known. | one of round, square"]);
    expect(read(kind, 3)).toEqual(["This is no group of keys. | a group of keys"]);
  });

  it("brought to another shape", () => {
    const days = shaped(positive("age", "28 d"), "number", Math.ceil);
    expect(read(days, "1.5 d")).toBe(2);
  });
});
