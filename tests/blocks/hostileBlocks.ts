import type { ReportBlock } from "../../src/blocks/block.js";

/** Text that would do harm wherever it were taken for markup. */
export const X = `<script>alert("x")</script><img src=x onerror='y'>&amp;`;

/** One block of each kind, every text of it hostile. */
export const BLOCKS: { readonly [K in ReportBlock["kind"]]: Extract<ReportBlock, { kind: K }> } = {
  table: {
    kind: "table",
    caption: X,
    columns: [
      { header: X, unit: X },
      { header: "n", align: "right" },
    ],
    rows: [[X, X]],
    notes: [X],
  },
  findings: {
    kind: "findings",
    findings: [
      {
        severity: "warning",
        code: "x",
        file: X,
        row: 3,
        column: X,
        value: X,
        message: X,
        expected: X,
        remedy: X,
      },
    ],
  },
  cautions: { kind: "cautions", items: [{ title: X, text: X, source: X }] },
  keyValues: { kind: "keyValues", caption: X, items: [{ label: X, value: X }] },
  references: { kind: "references", items: [{ text: X, mark: X }] },
  question: { kind: "question", text: X, options: [X], lines: 1, unit: X },
  signature: { kind: "signature", label: X, lines: [X] },
  paragraph: { kind: "paragraph", text: X },
  note: { kind: "note", tone: "warning", text: X },
  checklist: {
    kind: "checklist",
    caption: X,
    items: [{ clause: X, requirement: X, remark: X, sectionTitle: X }],
  },
  section: { kind: "section", level: 1, title: X, annex: true },
  contents: { kind: "contents" },
  pageBreak: { kind: "pageBreak" },
};
