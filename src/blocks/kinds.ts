import type { Finding } from "../findings/finding.js";
import { isMessage, joinTexts, say, type Text } from "../words/message.js";
import { type Locale, renderAll } from "../words/render.js";
import type { ChecklistBlock, Placed, ReportBlock } from "./block.js";
import { count, type Fields, flag, list, object, oneOf, optional, text, words } from "./fields.js";
import type { Entry, GridCell, GridColumn, GridPart, Part, SaidPart } from "./part.js";

/** All that is to be known of one kind of block: a new kind is one more row of `KINDS`. */
interface Kind<Block> {
  /** What it must hold. */
  readonly fields: Fields<Omit<Block, "kind">>;
  /** What else must hold, told as a RangeError. */
  readonly check?: (block: Block) => void;
  /** Whether a report numbers it among its tables. */
  readonly numbered: boolean;
  /** What it is made of, for HTML, text and PDF. */
  readonly parts: (block: Block & Placed) => readonly Part[];
  /** As rows, for CSV and workbooks; without it, its table. */
  readonly rows?: (block: Block) => BlockRows;
}

/** A block as plain rows. */
export interface BlockRows {
  readonly caption: Text;
  readonly columns: readonly { readonly header: Text; readonly numeric: boolean }[];
  readonly rows: readonly (readonly Text[])[];
  readonly notes: readonly Text[];
}

type Kinds = {
  readonly [K in ReportBlock["kind"]]: Kind<Extract<ReportBlock, { readonly kind: K }>>;
};

const finding = object<Finding>({
  severity: oneOf("error", "warning", "note"),
  code: text,
  file: text,
  row: optional(count),
  column: optional(text),
  value: optional(words),
  message: words,
  expected: words,
  remedy: words,
});

const KINDS: Kinds = {
  table: {
    fields: {
      key: optional(text),
      caption: words,
      columns: list(
        object({ header: words, unit: optional(words), align: optional(oneOf("left", "right")) }),
      ),
      rows: list(list(words)),
      rowKeys: optional(list(text)),
      links: optional(list(object({ row: count, column: count, to: text }))),
      notes: optional(list(words)),
    },
    check({ columns, rows }) {
      const wrong = rows.findIndex((row) => row.length !== columns.length);
      if (wrong < 0) return;
      throw new RangeError(
        `invalid \`table.rows[${wrong}]\`: ${rows[wrong]?.length} cells; expected ${columns.length}`,
      );
    },
    numbered: true,
    parts: ({ caption, columns, rows, rowKeys, links = [], notes, places = {} }) => {
      const linkOf = (row: number, column: number) =>
        links.find((link) => link.row === row && link.column === column)?.to;
      const cells = rows.map((row, at) =>
        row.map((cell, column) => linked(cell, linkOf(at, column), places)),
      );
      const rowIds = rowKeys?.map((key) => places[key]?.id ?? "");
      return [{ ...grid(caption, columns, cells, notes), rowIds }];
    },
  },
  keyValues: {
    fields: {
      key: optional(text),
      caption: words,
      items: list(object({ label: words, value: words, to: optional(text) })),
    },
    numbered: true,
    parts: ({ caption, items, places = {} }) => [
      {
        ...grid(
          caption,
          [2, 3].map((share) => ({ header: "", align: "left", share })),
          items.map(({ label, value, to }) => [label, linked(value, to, places)]),
        ),
        look: "pairs",
      },
    ],
    rows: ({ caption, items }) =>
      textRows(caption, { label: say`entry`, value: say`value` }, items),
  },
  checklist: {
    fields: {
      key: optional(text),
      caption: words,
      items: list(
        object({
          clause: text,
          requirement: text,
          remark: text,
          sectionKey: optional(text),
          sectionTitle: optional(words),
        }),
      ),
    },
    numbered: true,
    parts: ({ caption, items, sections }) => [
      grid(
        caption,
        [
          { header: say`Clause`, align: "left", share: 2 },
          { header: say`Requirement`, align: "left", share: 5 },
          { header: say`Answered in`, align: "left", share: 3.4, links: true },
          { header: say`Remark`, align: "left", share: 2.6 },
        ],
        items.map((item, at) => [
          item.clause,
          item.requirement,
          answer(item, sections, at),
          item.remark,
        ]),
      ),
    ],
    rows: ({ caption, items }) =>
      textRows(
        caption,
        {
          clause: say`clause`,
          requirement: say`requirement`,
          section: say`section`,
          remark: say`remark`,
        },
        items.map((item) => ({ ...item, section: item.sectionTitle ?? item.sectionKey })),
      ),
  },
  findings: {
    fields: { findings: list(finding) },
    numbered: false,
    parts: ({ findings }) => [
      {
        part: "entries",
        look: "findings",
        entries: findings.map(findingEntry),
        whenEmpty: say`No findings.`,
      },
    ],
    rows: ({ findings }) =>
      textRows(
        say`Findings of the checks`,
        {
          severity: say`severity`,
          code: say`code`,
          file: say`file`,
          row: say`row`,
          column: say`column`,
          value: say`value`,
          message: say`finding`,
          expected: say`expected`,
          remedy: say`remedy`,
        },
        findings.map((found) => ({ ...found, row: String(found.row ?? "") })),
      ),
  },
  cautions: {
    fields: { items: list(object({ title: words, text: words, source: words })) },
    numbered: false,
    parts: ({ items }) => [
      {
        part: "entries",
        look: "cautions",
        entries: items.map(({ title, text, source }) => ({
          tone: "warning",
          title,
          text,
          details: [say`Source: ${source}`],
        })),
      },
    ],
    rows: ({ items }) =>
      textRows(say`Cautions`, { title: say`caution`, text: say`text`, source: say`source` }, items),
  },
  references: {
    fields: { items: list(object({ text: words, mark: words })) },
    numbered: false,
    parts: ({ items }) => [{ part: "entries", look: "references", entries: items }],
    rows: ({ items }) => textRows(say`References`, { text: say`source`, mark: say`mark` }, items),
  },
  question: {
    fields: { text: words, options: optional(list(words)), lines: count, unit: optional(words) },
    numbered: false,
    parts: ({ text: asked, options = [], lines, unit }) => [
      {
        part: "blanks",
        label: joinTexts([asked, ...options.map((option) => say`☐\u00a0${option}`)], "   "),
        lines: [
          ...Array.from({ length: lines }, () => ""),
          ...(options.length > 0 && unit === undefined
            ? []
            : [unit === undefined ? say`Answer` : say`Answer, ${unit}`]),
        ],
      },
    ],
  },
  signature: {
    fields: { label: words, lines: list(words) },
    numbered: false,
    parts: ({ label, lines }) => [{ part: "blanks", label, lines }],
  },
  paragraph: {
    fields: { text: words, cites: optional(list(text)) },
    numbered: false,
    parts: ({ text, cites = [], places = {} }) => [
      {
        part: "text",
        text,
        cites: cites.flatMap((key) => {
          const place = places[key];
          return place ? [{ text: place.label, to: place.id }] : [];
        }),
      },
    ],
  },
  note: {
    fields: { tone: oneOf("note", "warning"), text: words },
    numbered: false,
    parts: ({ tone, text }) => [{ part: "box", tone, tag: severityWord(tone), text }],
  },
  section: {
    fields: {
      level: count,
      title: words,
      key: optional(text),
      annex: optional(flag),
    },
    numbered: false,
    parts: ({ level, title }) => [{ part: "title", level, text: title }],
  },
  contents: { fields: {}, numbered: false, parts: () => [{ part: "contents" }] },
  pageBreak: { fields: {}, numbered: false, parts: () => [{ part: "break" }] },
};

/**
 * Takes a value with the `kind` of a report block as that block; `undefined` where it has none. Fields that
 * the kind does not have are left out.
 *
 * @throws TypeError when the kind is known and a field is missing or of another sort; RangeError when
 * a row has not as many cells as the table has columns
 *
 * @example
 * readBlock({ kind: "paragraph", text: "Dry.", size: 3 }) // => { kind: "paragraph", text: "Dry." }
 */
export function readBlock(value: unknown): ReportBlock | undefined {
  if (typeof value !== "object" || value === null || !("kind" in value)) return undefined;
  const { kind, ...fields } = value;
  if (typeof kind !== "string" || !Object.hasOwn(KINDS, kind)) return undefined;
  const known = kindOf(kind as ReportBlock["kind"]);
  const block = { kind, ...object(known.fields)(fields, kind) } as ReportBlock;
  known.check?.(block);
  return block;
}

/** Whether a report numbers a kind of block among its tables. */
export function isNumbered(kind: string): boolean {
  return isBlock({ kind }) && kindOf(kind as ReportBlock["kind"]).numbered;
}

/** Whether something with a `kind` is a block, and not another node of a document. */
export function isBlock<Node extends { readonly kind: string }>(
  node: Node,
): node is Node & ReportBlock {
  return Object.hasOwn(KINDS, node.kind);
}

/** What a block is made of, said in a language. */
export function partsOf(block: ReportBlock & Placed, locale: Locale): readonly SaidPart[] {
  const { number } = block;
  const parts = kindOf(block.kind).parts(block);
  return renderAll(
    parts.map((part) => (part.part === "grid" ? { ...part, number } : part)),
    locale,
  );
}

/** A block as rows, or nothing where it holds none. */
export function rowsOf(block: ReportBlock): BlockRows | undefined {
  const { rows, parts } = kindOf(block.kind);
  if (rows) return rows(block);
  const [part] = parts(block);
  if (part?.part !== "grid") return undefined;
  const { caption, columns, notes } = part;
  return {
    caption,
    columns: columns.map(({ header, unit, align }) => ({
      header: unit === undefined ? header : say`${header} (${unit})`,
      numeric: align === "right",
    })),
    rows: part.rows.map((row) => row.map(textOf)),
    notes,
  };
}

/** The compiler cannot know that a block's kind and its row of the table go together. */
function kindOf(kind: ReportBlock["kind"]): Kind<ReportBlock> {
  return KINDS[kind] as unknown as Kind<ReportBlock>;
}

function textOf(cell: GridCell): Text {
  return typeof cell === "string" || isMessage(cell) ? cell : cell.text;
}

/** A cell that leads elsewhere, where the report has that place. */
function linked(
  text: Text,
  to: string | undefined,
  places: NonNullable<Placed["places"]>,
): GridCell {
  const place = to === undefined ? undefined : places[to];
  // a cell without words names the place itself
  return place ? { text: text === "" ? place.label : text, to: place.id } : text;
}

function grid(
  caption: Text,
  columns: readonly GridColumn[],
  rows: readonly (readonly GridCell[])[],
  notes: readonly Text[] = [],
): GridPart {
  return { part: "grid", look: "table", caption, columns, rows, notes };
}

/** Rows of texts: the headers of the columns by their keys, and an item a row. */
function textRows<Key extends string>(
  caption: Text,
  headers: Readonly<Record<Key, Text>>,
  items: readonly { readonly [Name in NoInfer<Key>]?: Text }[],
): BlockRows {
  const keys = Object.keys(headers) as Key[];
  return {
    caption,
    columns: keys.map((key) => ({ header: headers[key], numeric: false })),
    rows: items.map((item) => keys.map((key) => item[key] ?? "")),
    notes: [],
  };
}

/** Where a clause is answered: as far as it is known before there is a report, or a link into it. */
function answer(
  { sectionKey, sectionTitle }: ChecklistBlock["items"][number],
  sections: Placed["sections"],
  at: number,
): GridCell {
  if (sections === undefined) return sectionTitle ?? sectionKey ?? say`open`;
  const section = sections[at];
  if (section) return { text: `${section.number} ${section.title}`.trim(), to: section.id };
  const missing = sectionKey === undefined ? say`open` : say`${sectionKey}: not in this report`;
  return { text: missing, strong: true };
}

/** How serious a finding is, as the word before it. */
function severityWord(severity: Finding["severity"]): Text {
  if (severity === "error") return say`Error`;
  return severity === "warning" ? say`Warning` : say`Note`;
}

function findingEntry(found: Finding): Entry {
  const { severity, file, row, column, value, message, expected, remedy } = found;
  const place = joinTexts([
    file,
    row === undefined ? undefined : say`row ${row}`,
    column,
    value === undefined ? undefined : say`“${value}”`,
  ]);
  return {
    tone: severity,
    tag: severityWord(severity),
    text: message,
    details: [place, say`Expected: ${expected}`, say`What to do: ${remedy}`],
  };
}
