import { JSDOM } from "jsdom";
import { describe, expect, it } from "vitest";
import type { ReportBlock } from "../../src/blocks/block.js";
import { partsOf, readBlock, rowsOf } from "../../src/blocks/kinds.js";
import { blockHtml } from "../../src/blocks/partHtml.js";
import { blockText } from "../../src/blocks/partText.js";
import { say } from "../../src/words/message.js";
import { render, renderAll } from "../../src/words/render.js";
import { BLOCKS, X } from "./hostileBlocks.js";

const KINDS = Object.values(BLOCKS);

/** Fields that a block can do without. */
const OPTIONAL =
  /section\.annex|question\.options$|\.(unit|align|notes|row|column|value|sectionKey|sectionTitle)$|^(checklist|table)\.notes/;

type Path = readonly (string | number)[];

/** The places of all fields, deepest too. */
function paths(value: unknown, above: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const own = [...above, Array.isArray(value) ? Number(key) : key];
    return [own, ...paths(inner, own)];
  });
}

/** A copy with one field taken out, or replaced. */
function changed(block: ReportBlock, path: Path, put?: unknown): unknown {
  const copy = structuredClone(block) as unknown as Record<string | number, unknown>;
  let at = copy;
  for (const key of path.slice(0, -1)) at = at[key] as typeof copy;
  const last = path.at(-1) as string | number;
  if (put === undefined) delete at[last];
  else at[last] = put;
  return copy;
}

/** As the check writes a place: `table.rows[0][1]`. */
const placeOf = (kind: string, path: Path) =>
  path.reduce<string>(
    (text, key) => text + (typeof key === "number" ? `[${key}]` : `.${key}`),
    kind,
  );

describe.each(KINDS)("a block of the kind $kind", (block) => {
  const fields = paths(block).filter(([first]) => first !== "kind");

  it("is read as it is, without fields that it does not have", () => {
    expect(readBlock(block)).toEqual(block);
    expect(readBlock({ ...block, more: 1 })).toEqual(block);
  });

  it("is refused with the place of a field that is missing or of another sort", () => {
    for (const path of fields) {
      const place = placeOf(block.kind, path);
      expect(() => readBlock(changed(block, path, 3.5)), place).toThrow(
        `invalid \`${place}\`: 3.5`,
      );
      if (typeof path.at(-1) === "number" || OPTIONAL.test(place)) continue;
      expect(() => readBlock(changed(block, path)), place).toThrow(`invalid \`${place}\``);
    }
  });

  it("shows every text once on a page, and none as markup", () => {
    const { document } = new JSDOM(`<body>${blockHtml(block, "page", "en")}</body>`).window;
    expect(document.querySelectorAll("script, img")).toHaveLength(0);
    const texts = JSON.stringify(block).split(JSON.stringify(X).slice(1, -1)).length;
    expect(document.body.textContent.split(X)).toHaveLength(texts);
  });

  it("gives each row a cell for each column, as rows too", () => {
    for (const part of partsOf(block, "en")) {
      if (part.part !== "grid") continue;
      for (const row of part.rows) expect(row).toHaveLength(part.columns.length);
    }
    const rows = rowsOf(block);
    for (const row of rows?.rows ?? []) expect(row).toHaveLength(rows?.columns.length ?? 0);
  });
});

describe("blocks", () => {
  it("that have no kind, or another, are none", () => {
    for (const value of [undefined, 3, "text", {}, { kind: "figure" }, { kind: "toString" }]) {
      expect(readBlock(value)).toBeUndefined();
    }
  });

  it("are said in the language asked for, a user's own words as they are", () => {
    const block: ReportBlock = {
      kind: "keyValues",
      caption: say`Warning`,
      items: [{ label: "Warning", value: { number: "1.5" } }],
    };
    const [grid] = partsOf(block, "es");
    const caption = render(say`Warning`, "es");
    expect(grid).toMatchObject({ caption, rows: [["Warning", "1,5"]] });
    expect(caption).not.toBe("Warning");
  });

  it("show control characters in text for a terminal", () => {
    const text = blockText({ kind: "paragraph", text: "a\u001b[31mb\nc" }, "en");
    expect(text).toBe("a\\u001b[31mb\nc");
  });

  it("without entries say so, or nothing", () => {
    expect(blockHtml({ kind: "findings", findings: [] }, "page", "en")).toBe("<p>No findings.</p>");
    expect(blockHtml({ kind: "cautions", items: [] }, "page", "en")).toBe("");
  });

  it("link a clause to its section on a page, and say what this report does not have", () => {
    const items = ["3.1", "3.2", "3.3"].map((clause, at) => ({
      clause,
      requirement: "r",
      remark: "",
      ...(at < 2 ? { sectionKey: `key-${at}` } : {}),
    }));
    const sections = [{ id: "s-mix", number: "2", title: "Mix" }, null, null];
    const placed = { kind: "checklist", caption: "c", items, number: 4, sections } as const;
    const { document } = new JSDOM(blockHtml(placed, "page", "en")).window;
    const answers = [...document.querySelectorAll("tbody tr")].map((row) => row.children[2]);
    expect(answers[0]?.innerHTML).toBe('<a href="#s-mix">2 Mix</a>');
    expect(answers[1]?.innerHTML).toBe("<strong>key-1: not in this report</strong>");
    expect(answers[2]?.innerHTML).toBe("<strong>open</strong>");
    expect(document.querySelector("table")?.id).toBe("table-4");
    const unlinked = renderAll(rowsOf({ kind: "checklist", caption: "c", items }));
    expect(unlinked?.rows[0]).toEqual(["3.1", "r", "key-0", ""]);
  });
});
