import { formatQuantity, type UnitSystem } from "../quantities/displayUnits.js";
import { type SpecifiedLine, specifiedMix, type ToleranceBasis } from "../study/specifiedMix.js";
import type { StudyResult } from "../study/studyResult.js";
import { phrase, say, sayOf } from "../words/say.js";
import { BLANK, fixed } from "./cell.js";
import { noMix } from "./noMix.js";
import type { NoteBlock, TableBlock } from "./reportBlock.js";

const BASIS: Readonly<Record<ToleranceBasis, string>> = {
  entered: phrase`as entered`,
  "batching variation": phrase`the batching variation entered for the material`,
  "compaction test": phrase`window of the compaction test`,
  "lightest block": phrase`the lightest block that the strengths rest on`,
  "least cement": phrase`never below the least content that meets the requirement; above, common practice, no source`,
  "common practice": phrase`default; common practice, no source`,
  "not stated": phrase`not stated`,
};

/** How each line is checked on site; common practice, no source. */
const CHECK: Readonly<Record<SpecifiedLine["kind"], string>> = {
  share: phrase`count buckets struck level, or weigh; correct the heap's moisture`,
  cement: phrase`weigh each batch; at the day's end, bags used against batches made`,
  moisture: phrase`ball and drop before each lift; dry a sample each day`,
  density: phrase`core or ring cut from a rammed lift, or a block rammed the same way, weighed dry`,
  lift: phrase`marks on the form, read after ramming`,
};

/** The specified mix: each value with its tolerance, how it is checked on site, and its basis. */
export function toleranceTable(
  result: Pick<StudyResult, "config" | "mix" | "compaction" | "strength">,
): TableBlock | NoteBlock {
  const lines = specifiedMix(result);
  if (lines.length === 0) return noMix();
  const { units, tolerances } = result.config;
  return {
    kind: "table",
    caption: say`Specified mix and tolerances`,
    columns: [
      { header: say`Line` },
      { header: say`Value`, align: "right" },
      { header: say`From`, align: "right" },
      { header: say`To`, align: "right" },
      { header: say`Checked on site by` },
      { header: say`Basis` },
    ],
    rows: lines.map((line) => [
      lineName(line),
      amount(line, line.value, units),
      amount(line, lowEnd(line), units),
      amount(line, line.high, units),
      sayOf(CHECK[line.kind]),
      sayOf(BASIS[line.basis]),
    ]),
    notes: [
      say`Shares and cement are percent of the dry mass of soil and aggregate, moisture is percent of the dry mass of all solids. Ways of checking are common practice, no source.`,
      ...(tolerances?.basis ? [say`Basis of what was entered: ${tolerances.basis}`] : []),
      ...(lines.some(({ basis }) => basis === "lightest block")
        ? [
            say`No wall lighter than the lightest block was tested for strength; a least density from a code or from the engineer stands before this one.`,
          ]
        : []),
    ],
  };
}

function lineName({ kind, name = "" }: SpecifiedLine): string {
  switch (kind) {
    case "share":
    case "cement":
      return name;
    case "moisture":
      return say`Moisture at ramming`;
    case "density":
      return say`Dry density, rammed`;
    case "lift":
      return say`Depth of a rammed lift`;
  }
}

/** The least cement is rounded up: a printed figure below it would let too little in. */
function lowEnd({ kind, low }: SpecifiedLine): number | undefined {
  return kind === "cement" && low !== undefined ? Math.ceil(100 * low - 1e-9) / 100 : low;
}

/** Text of one end, or a dash where nothing bounds it. */
function amount({ kind }: SpecifiedLine, value: number | undefined, units: UnitSystem): string {
  if (value === undefined) return BLANK;
  if (kind === "density") return formatQuantity(value, "density", units, 4);
  if (kind === "lift") return formatQuantity(1000 * value, "depth", units);
  return `${fixed(value, kind === "cement" ? 2 : 1)} %`;
}
