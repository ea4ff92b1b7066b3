import type { StudyConfig } from "../study/studyConfig.js";
import { say } from "../words/say.js";
import { BLANK } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

/** How each material was sampled, in the user's words; a material without a statement says so. */
export function samplingTable({
  materials,
  sampling = [],
}: Pick<StudyConfig, "materials" | "sampling">): TableBlock {
  return {
    kind: "table",
    caption: say`Sampling, as entered`,
    columns: [
      { header: say`Material` },
      { header: say`Where` },
      { header: say`How` },
      { header: say`Pits or heaps`, align: "right" },
      { header: say`Date` },
    ],
    rows: materials.flatMap(({ id, name }) => {
      const stated = sampling.filter(({ material }) => material === id);
      if (stated.length === 0) return [[name, say`not stated`, say`not stated`, BLANK, BLANK]];
      return stated.map(({ where, how, pits, date }) => [
        ...[name, where, how],
        ...[pits === undefined ? BLANK : String(pits), date ?? BLANK],
      ]);
    }),
    notes: [
      say`Grading, colour and moisture of a deposit can change within metres: the tests speak for the samples, and for the deposit as far as the sampling does.`,
    ],
  };
}
