import type { ReportBlock } from "../../src/blocks/block.js";
import { type DrawableFigure, renderSvg } from "../../src/figures/svg/renderSvg.js";
import type { ReportMeta } from "../../src/report/reportMeta.js";

/** Text that would do harm or vanish wherever it were taken for markup. */
export const HOSTILE =
  '<script>alert(1)</script> #panic() "q" \\ $x$ *b* _i_ @ref <label> </title> {{x}} `c`';

export const META: ReportMeta = {
  title: "Wall mix for a reading room",
  subtitle: "Technical appendix: grading, blend, strength and recipe",
  place: "Demonstration site",
  date: "2024-05-02",
  language: "en",
  invented: true,
  code: true,
  page: "A4",
  keywords: ["rammed earth", "cement-stabilised earth"],
  inputs: [
    {
      file: "sieve-pit-1.csv",
      sha256: "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
    },
    {
      file: "strength.csv",
      sha256: "60303ae22b998861bce3b28f33eec1be758a213c86c93c076dbe9f558c11c752",
    },
  ],
  madeWith: "loambook 0.1.0",
};

export const GRADING: DrawableFigure = {
  title: "Grading of the blend",
  altText:
    "Passing in percent on particle size in millimetres, logarithmic. The blend runs inside the envelope from 8 % at 0.002 mm to 100 % at 20 mm.",
  data: [
    {
      type: "scatter",
      mode: "lines",
      x: [0.002, 0.063, 0.6, 6.3, 20],
      y: [5, 18, 40, 72, 100],
      line: { width: 0 },
      showlegend: false,
      hoverinfo: "skip",
    },
    {
      type: "scatter",
      mode: "lines",
      x: [0.002, 0.063, 0.6, 6.3, 20],
      y: [15, 38, 66, 95, 100],
      fill: "tonexty",
      fillcolor: "rgba(166,124,82,0.22)",
      line: { width: 0 },
      name: "Envelope",
    },
    {
      type: "scatter",
      mode: "lines+markers",
      x: [0.002, 0.006, 0.02, 0.063, 0.2, 0.6, 2, 6.3, 20],
      y: [8, 14, 22, 30, 41, 52, 66, 85, 100],
      name: "Blend",
      line: { color: "#5b3a1e", width: 2.5 },
    },
  ],
  layout: {
    xaxis: {
      type: "log",
      title: { text: "Particle size, mm" },
      tickvals: [0.002, 0.02, 0.2, 2, 20],
    },
    yaxis: { title: { text: "Passing, % by dry mass" }, range: [0, 104] },
    legend: { x: 0.02, y: 0.98 },
    margin: { t: 24, r: 24, b: 60, l: 64 },
  },
};

export const BARS: DrawableFigure = {
  title: "Shares of the blend",
  altText: "Bars: site soil 62 %, sharp sand 23 %, gravel 15 % of the dry mass.",
  data: [
    {
      type: "bar",
      x: ["Site soil", "Sharp sand", "Gravel"],
      y: [62, 23, 15],
      text: ["62 %", "23 %", "15 %"],
      textposition: "outside",
      marker: { color: "#8a5a2b" },
    },
  ],
  layout: {
    yaxis: { title: { text: "Share, % of dry mass" }, range: [0, 75] },
    margin: { t: 24, r: 24, b: 44, l: 64 },
  },
};

type Cell = Record<string, unknown>;

export function markdownCell(source: string): Cell {
  return { cell_type: "markdown", metadata: {}, source: source.split(/(?<=\n)/) };
}

export function codeCell(source: string, outputs: object[], tags: string[] = []): Cell {
  return { cell_type: "code", metadata: { tags }, execution_count: null, source, outputs };
}

export function blockOutput(block: ReportBlock): object {
  const data = { "application/vnd.loambook.node+json": block, "text/plain": [block.kind] };
  return { output_type: "display_data", data, metadata: {} };
}

export async function figureOutput(figure: DrawableFigure, caption: string): Promise<object> {
  return {
    output_type: "display_data",
    data: {
      "application/vnd.plotly.v1+json": { data: figure.data, layout: figure.layout },
      "image/svg+xml": (await renderSvg(figure)).split(/(?<=\n)/),
      "text/plain": [figure.altText],
    },
    metadata: { "image/svg+xml": { alt: figure.altText, caption } },
  };
}

export function notebookOf(cells: Cell[]): object {
  return {
    nbformat: 4,
    nbformat_minor: 5,
    metadata: { language_info: { name: "typescript" } },
    cells,
  };
}

const longTable: ReportBlock = {
  kind: "table",
  caption: "Strength of each specimen, as tested",
  columns: [
    { header: "Specimen" },
    { header: "Cement", unit: "% of dry mass", align: "right" },
    { header: "Dry density", unit: "kg/m³", align: "right" },
    { header: "Strength", unit: "MPa", align: "right" },
  ],
  rows: Array.from({ length: 48 }, (_, index) => [
    `B${index + 1}`,
    String(4 + 2 * (index % 4)),
    String(1870 + ((index * 17) % 90)),
    (1.4 + (index % 4) * 0.9 + ((index * 7) % 10) / 20).toFixed(2),
  ]),
  notes: ["Cylinders, moist cured; the values are invented."],
};

const wideTable: ReportBlock = {
  kind: "table",
  caption: "Published limits the blend is checked against",
  columns: [
    { header: "Limit" },
    { header: "Found", align: "right" },
    { header: "Recommended", align: "right" },
    { header: "Verdict" },
    { header: "What the limit is for, and where it is written" },
  ],
  rows: [
    [
      "Clay",
      "8.0 %",
      "5–20 %",
      "within",
      "Enough clay to bind before the cement sets; from memory",
    ],
    ["Fines", "30 %", "20–40 %", "within", "Keeps shrinkage in bounds; common practice, no source"],
    ["Plasticity index", "14", "5–15", "within, near the edge", "From memory"],
  ],
};

/** An executed notebook with everything a report can hold. */
export async function sampleNotebook(): Promise<object> {
  return notebookOf([
    markdownCell(
      "# Notebook title that gives way\n\nThis appendix shows how the mix was found, from the *lab sheets* to the **recipe**. See [the package](https://example.org/loambook).\n\n## Soil and grading\n\nThe target curve is $P(d) = 100\\left(\\frac{d}{D}\\right)^n$ with `n` near 0.45. Raw <b>HTML</b> stays text.\n\n$$\\min_x \\; (A x - b)^T W (A x - b) \\quad \\text{subject to} \\quad \\sum_{i=1}^{m} x_i = 1,\\; x_i \\ge 0$$\n\n- sieves down to 0.063 mm\n- hydrometer below\n  1. read at 2 min\n  2. read at 24 h\n\n| Material | Source | Moisture, % |\n| --- | --- | ---: |\n| Site soil | pit 1 | 6.4 |\n| Sharp sand | bought | 2.0 |\n",
    ),
    codeCell('const studyFolder = "data-examples/reading-room";', [], ["parameters"]),
    codeCell("show(gradingFigure(study));", [
      await figureOutput(GRADING, "Grading of the blend against the envelope"),
    ]),
    markdownCell("> A curve inside an envelope is a good sign, not a proof.\n\n### Checks\n"),
    codeCell("show(checks(study));", [blockOutput(wideTable)], ["hide-code"]),
    markdownCell("## Blend\n"),
    codeCell("show(blendFigure(study));", [
      await figureOutput(BARS, "Shares of the materials in the blend, by dry mass"),
      blockOutput({
        kind: "keyValues",
        caption: "Recipe for one batch",
        items: [
          { label: "Site soil, moist", value: "62 kg (31 buckets)" },
          { label: "Sharp sand", value: "23 kg" },
          { label: "Cement", value: "7.0 % of dry mass" },
        ],
      }),
    ]),
    markdownCell("## Strength\n\n### Specimens\n"),
    codeCell("show(specimens(study));\nconsole.log(fit);", [
      blockOutput(longTable),
      { output_type: "stream", name: "stdout", text: ["slope 0.48 MPa per %\n", "n = 48\n"] },
      { output_type: "stream", name: "stderr", text: "a careful word from the solver\n" },
    ]),
    markdownCell("## Findings and cautions\n"),
    codeCell("show(findings(study));", [
      blockOutput({
        kind: "findings",
        findings: [
          {
            severity: "warning",
            code: "sieve-loss",
            file: "sieve-pit-1.csv",
            row: 14,
            column: "Retained",
            value: "12.1",
            message: "The masses retained add up to 1.3 % less than the mass before sieving",
            expected: "a loss of at most 1 %",
            remedy: "weigh again or repeat the test",
          },
          {
            severity: "note",
            code: "trimmed",
            file: "strength.csv",
            message: "One empty row at the end was left out",
            expected: "a filled row",
            remedy: "nothing",
          },
        ],
      }),
      blockOutput({
        kind: "cautions",
        items: [
          {
            title: "Sulfates in the soil",
            text: "Soils that hold sulfates can swell when mixed with cement. Test before building.",
            source: "common practice, no source",
          },
        ],
      }),
      blockOutput({
        kind: "note",
        tone: "note",
        text: "Strengths are of cylinders, not of the wall.",
      }),
      blockOutput({ kind: "paragraph", text: "The numbers above hold for the materials sampled." }),
    ]),
    markdownCell("## Responsibility and sources\n"),
    codeCell("show(signature());", [
      blockOutput({
        kind: "signature",
        label: "Reviewed by the responsible licensed person",
        lines: ["Name and licence", "Signature", "Date"],
      }),
      blockOutput({
        kind: "references",
        items: [
          { text: "A standard for sieving, its year and clause.", mark: "from memory" },
          { text: "A paper on the grading curve, with its DOI.", mark: "read" },
        ],
      }),
    ]),
  ]);
}
