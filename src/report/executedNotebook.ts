import { z } from "zod";
import type { ReportBlock } from "../blocks/block.js";

const lines = z
  .union([z.string(), z.array(z.string())])
  .transform((text) => (typeof text === "string" ? text : text.join("")));

const output = z.discriminatedUnion("output_type", [
  z.object({ output_type: z.literal("stream"), name: z.string(), text: lines }),
  z.object({
    output_type: z.enum(["display_data", "execute_result"]),
    data: z.record(z.string(), z.unknown()),
    metadata: z.record(z.string(), z.unknown()).default({}),
  }),
  z.object({
    output_type: z.literal("error"),
    ename: z.string(),
    evalue: z.string(),
    traceback: z.array(z.string()).default([]),
  }),
]);

const tagged = z.object({ tags: z.array(z.string()).default([]) });

const notebook = z.object({
  nbformat: z.literal(4),
  metadata: z.object({ language_info: z.object({ name: z.string() }).optional() }).default({}),
  cells: z.array(
    z.discriminatedUnion("cell_type", [
      z.object({ cell_type: z.literal("markdown"), source: lines, metadata: tagged }),
      z.object({ cell_type: z.literal("raw"), source: lines, metadata: tagged }),
      z.object({
        cell_type: z.literal("code"),
        source: lines,
        metadata: tagged,
        outputs: z.array(output),
      }),
    ]),
  ),
});

/** A notebook as nbformat 4 stores it, its texts joined and only the parts a report reads kept. */
type Notebook = z.output<typeof notebook>;
/** One output of a code cell. */
export type NotebookOutput = z.output<typeof output>;

/**
 * Checks that a value is an nbformat 4 notebook and joins its multi-line texts.
 * Throws TypeError naming the first place that does not fit.
 * Source: the notebook format, version 4 (nbformat documentation), from memory.
 */
export function readNotebook(value: unknown): Notebook {
  const result = notebook.safeParse(value);
  if (result.success) return result.data;
  const [issue] = result.error.issues;
  const place = ["notebook", ...(issue?.path ?? [])].join(".");
  throw new TypeError(`invalid \`${place}\`: ${issue?.message}; expected an nbformat 4 notebook`);
}

/** Text of one MIME entry, which nbformat may store as a string or as a list of lines. */
export function mimeText(value: unknown): string | undefined {
  const result = lines.safeParse(value);
  return result.success ? result.data : undefined;
}

const text = z.string();
const list = z.array(text);

const finding = z.object({
  severity: z.enum(["error", "warning", "note"]),
  code: text,
  file: text,
  row: z.number().optional(),
  column: text.optional(),
  value: text.optional(),
  message: text,
  expected: text,
  remedy: text,
});

const block = z.discriminatedUnion("kind", [
  z.object({
    kind: z.literal("table"),
    caption: text,
    columns: z.array(
      z.object({
        header: text,
        unit: text.optional(),
        align: z.enum(["left", "right"]).optional(),
      }),
    ),
    rows: z.array(list),
    notes: list.optional(),
  }),
  z.object({ kind: z.literal("findings"), findings: z.array(finding) }),
  z.object({
    kind: z.literal("cautions"),
    items: z.array(z.object({ title: text, text, source: text })),
  }),
  z.object({
    kind: z.literal("keyValues"),
    caption: text,
    items: z.array(z.object({ label: text, value: text })),
  }),
  z.object({ kind: z.literal("signature"), label: text, lines: list }),
  z.object({ kind: z.literal("paragraph"), text }),
  z.object({ kind: z.literal("note"), tone: z.enum(["note", "warning"]), text }),
  z.object({
    kind: z.literal("checklist"),
    caption: text,
    items: z.array(
      z.object({
        clause: text,
        requirement: text,
        remark: text,
        sectionKey: text.optional(),
        sectionTitle: text.optional(),
      }),
    ),
  }),
  z.object({ kind: z.literal("pageBreak") }),
  z.object({ kind: z.literal("references"), items: z.array(z.object({ text, mark: text })) }),
]);

/**
 * Reads a report block from notebook output, which is a file a person may have edited.
 * Returns the block, or one sentence that says what is wrong with it.
 */
export function readBlock(value: unknown): ReportBlock | string {
  const result = block.safeParse(value);
  if (!result.success) {
    const [issue] = result.error.issues;
    return `${issue?.path.join(".") || "block"}: ${issue?.message}`;
  }
  if (result.data.kind === "table") {
    const { columns, rows } = result.data;
    const bad = rows.findIndex((row) => row.length !== columns.length);
    if (bad >= 0) return `rows.${bad}: ${rows[bad]!.length} cells; expected ${columns.length}`;
  }
  return result.data;
}
