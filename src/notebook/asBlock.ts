import type { ReportBlock } from "../tables/reportBlock.js";

type Field = "text" | "list" | "texts" | "rows";

/** What each kind of block must hold. */
const FIELDS: Readonly<Record<ReportBlock["kind"], Readonly<Record<string, Field>>>> = {
  table: { caption: "text", columns: "list", rows: "rows" },
  findings: { findings: "list" },
  cautions: { items: "list" },
  keyValues: { caption: "text", items: "list" },
  references: { items: "list" },
  signature: { label: "text", lines: "texts" },
  paragraph: { text: "text" },
  note: { text: "text" },
  checklist: { caption: "text", items: "list" },
  pageBreak: {},
};

const isText = (value: unknown) => typeof value === "string";

const FITS: Readonly<Record<Field, (value: unknown) => boolean>> = {
  text: isText,
  list: (value) =>
    Array.isArray(value) && value.every((item) => typeof item === "object" && item !== null),
  texts: (value) => Array.isArray(value) && value.every(isText),
  rows: (value) =>
    Array.isArray(value) && value.every((row) => Array.isArray(row) && row.every(isText)),
};

const EXPECTED: Readonly<Record<Field, string>> = {
  text: "a text",
  list: "a list of objects",
  texts: "a list of texts",
  rows: "a list of lists of texts",
};

/**
 * Takes a value with the `kind` of a report block as that block; `undefined` where it has none.
 *
 * @throws TypeError when the kind is known and a field is missing or of another sort; RangeError when
 * a row has not as many cells as the table has columns
 */
export function asBlock(value: unknown): ReportBlock | undefined {
  if (typeof value !== "object" || value === null || !("kind" in value)) return undefined;
  const { kind } = value;
  if (typeof kind !== "string" || !Object.hasOwn(FIELDS, kind)) return undefined;
  const record = value as Record<string, unknown>;
  for (const [name, field] of Object.entries(FIELDS[kind as ReportBlock["kind"]])) {
    if (!FITS[field](record[name])) {
      throw new TypeError(
        `invalid \`${kind}.${name}\`: ${JSON.stringify(record[name])}; expected ${EXPECTED[field]}`,
      );
    }
  }
  const block = value as ReportBlock;
  if (block.kind === "table") {
    const wrong = block.rows.findIndex((row) => row.length !== block.columns.length);
    if (wrong >= 0) {
      throw new RangeError(
        `invalid \`table.rows[${wrong}]\`: ${block.rows[wrong]?.length} cells; expected ${block.columns.length}`,
      );
    }
  }
  return block;
}
