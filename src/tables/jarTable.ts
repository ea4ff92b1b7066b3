import type { JarAnalysis } from "../grading/jarAnalysis.js";
import type { JarComparison } from "../grading/jarComparison.js";
import { say, sayOf } from "../words/say.js";
import { BLANK, digits, fixed, numberColumn, plain } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

/**
 * A jar test beside the laboratory's fractions: a first guide with the interval that its heights allow.
 *
 * @param jar `MaterialResult.jar`: the analysis with the laboratory's shares.
 *
 * @example
 * const layers = [["sand and gravel", 1, 60], ["silt", 930, 80], ["clay", 2880, 100]].map(([name, timeMin, topMm], index) => ({ name, timeMin, topMm, row: index + 4 }));
 * const analysis = analyseJar({ file: "j.csv", waterDepthMm: 200, layers });
 * jarTable("Pit 1", { ...analysis, laboratory: analysis.shares.map(({ name }) => ({ name })) }).rows[2] // => ["clay", "20", "20", "4 to 14", "–", "–", "0.00114"]
 */
export function jarTable(
  name: string,
  { shares, laboratory }: JarAnalysis & { readonly laboratory: JarComparison["rows"] },
): TableBlock {
  return {
    kind: "table",
    caption: say`Jar test, a first guide: ${name}`,
    columns: [
      { header: say`Layer` },
      numberColumn(say`Height`, "mm"),
      numberColumn(say`Share of the height`, "%"),
      numberColumn(say`Share of the mass that it allows`, "%"),
      numberColumn(say`Laboratory, of the mass`, "%"),
      { header: say`Agrees` },
      numberColumn(say`Settled down to`, "mm"),
    ],
    rows: shares.map((share, index) => {
      const { laboratoryPct, agrees } = laboratory[index];
      return [
        sayOf(share.name),
        plain(share.heightMm),
        fixed(share.heightSharePct, 0),
        say`${fixed(share.lowPct, 0)} to ${fixed(share.highPct, 0)}`,
        fixed(laboratoryPct, 1),
        agrees === undefined ? BLANK : agrees ? say`yes` : say`no`,
        digits(share.finestMm, 3),
      ];
    }),
    notes: [
      say`Heights are not masses: a layer of clay is mostly water. The interval takes each layer with the least and the most solids that such layers have (sand 0.55 to 0.65, silt 0.40 to 0.55, clay 0.10 to 0.30 of the volume; common practice, no source) and heights within 1 mm.`,
      say`The jar test is no part of the grading curve, the blend or any number that follows from them.`,
    ],
  };
}
