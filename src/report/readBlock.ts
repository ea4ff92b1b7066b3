import { z } from "zod";
import type { ReportBlock } from "../tables/reportBlock.js";

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
  wayOut: text,
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
