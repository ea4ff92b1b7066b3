import type {
  CautionsBlock,
  ChecklistBlock,
  FindingsBlock,
  ReferencesBlock,
} from "../../tables/reportBlock.js";
import { say } from "../../words/say.js";
import type { DocumentNode, NumberedBlock } from "../documentNode.js";

/** A column as another program gets it: the unit stands in the header. */
export interface ExportColumn {
  readonly header: string;
  /** Whether its cells may be numbers; identifiers made of digits must stay text. */
  readonly numeric: boolean;
}

/** A table of the report, or one of its lists, as plain rows. */
export interface ExportTable {
  /** Of the report's numbering; lists have none. */
  readonly number?: number;
  readonly caption: string;
  readonly columns: readonly ExportColumn[];
  readonly rows: readonly (readonly string[])[];
  readonly notes: readonly string[];
}

type Listed = NumberedBlock | ChecklistBlock | FindingsBlock | CautionsBlock | ReferencesBlock;

const texts = (...headers: readonly string[]): ExportColumn[] =>
  headers.map((header) => ({ header, numeric: false }));

function rowsOf(block: Listed): ExportTable {
  switch (block.kind) {
    case "table":
      return {
        number: block.number,
        caption: block.caption,
        columns: block.columns.map(({ header, unit, align }) => ({
          header: unit === undefined ? header : `${header} (${unit})`,
          numeric: align === "right",
        })),
        rows: block.rows,
        notes: block.notes ?? [],
      };
    case "keyValues":
      return {
        number: block.number,
        caption: block.caption,
        columns: texts(say`entry`, say`value`),
        rows: block.items.map(({ label, value }) => [label, value]),
        notes: [],
      };
    case "findings":
      return {
        caption: say`Findings of the checks`,
        columns: texts(
          ...[say`severity`, say`code`, say`file`, say`row`, say`column`, say`value`],
          ...[say`finding`, say`expected`, say`way out`],
        ),
        rows: block.findings.map((found) => [
          ...[found.severity, found.code, found.file, String(found.row ?? "")],
          ...[found.column ?? "", found.value ?? ""],
          ...[found.message, found.expected, found.wayOut],
        ]),
        notes: [],
      };
    case "checklist":
      return {
        caption: block.caption,
        columns: texts(say`clause`, say`requirement`, say`section`, say`remark`),
        rows: block.items.map(({ clause, requirement, sectionTitle, sectionKey, remark }) => [
          ...[clause, requirement, sectionTitle ?? sectionKey ?? "", remark],
        ]),
        notes: [],
      };
    case "cautions":
      return {
        caption: say`Cautions`,
        columns: texts(say`caution`, say`text`, say`source`),
        rows: block.items.map(({ title, text, source }) => [title, text, source]),
        notes: [],
      };
    case "references":
      return {
        caption: say`References`,
        columns: texts(say`source`, say`mark`),
        rows: block.items.map(({ text, mark }) => [text, mark]),
        notes: [],
      };
  }
}

const KINDS = new Set<DocumentNode["kind"]>([
  ...(["table", "keyValues", "checklist", "findings", "cautions", "references"] as const),
]);

/** Every table and list of a report, in its order and with its numbers. */
export function exportTables(nodes: readonly DocumentNode[]): ExportTable[] {
  return nodes
    .filter((node): node is Listed & DocumentNode => KINDS.has(node.kind))
    .map(rowsOf)
    .filter(({ rows }) => rows.length > 0);
}
