import type { CharacteristicSizes } from "../grading/characteristicSizes.js";
import type { Fractions } from "../grading/fractions.js";
import type { HydrometerAnalysis } from "../grading/hydrometerAnalysis.js";
import type { SieveAnalysis } from "../grading/sieveAnalysis.js";
import { say } from "../words/say.js";
import { BLANK, digits, fixed, numberColumn, plain } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";
import { sedimentationNotes } from "./sedimentationNotes.js";

/** A sieve analysis, coarse to fine, with the balance of masses below it. */
export function sievingTable(name: string, analysis: SieveAnalysis): TableBlock {
  const split = analysis.rows.some(({ portion }) => portion > 0);
  // One division needs no number; several have to be told apart.
  const several = analysis.sets.length > 2;
  return {
    kind: "table",
    caption: say`Sieving: ${name}`,
    columns: [
      { header: say`Sieve`, align: "right" },
      numberColumn(say`Opening`, "mm"),
      ...(split ? [{ header: say`Sieved on` }] : []),
      numberColumn(say`Retained`, "g"),
      numberColumn(say`Retained, of the whole`, "%"),
      numberColumn(say`Passing`, "%"),
    ],
    rows: analysis.rows.map((row) => [
      row.label,
      plain(row.sizeMm),
      ...(split
        ? [
            row.portion === 0
              ? say`whole sample`
              : several
                ? say`subsample ${row.portion}`
                : say`subsample`,
          ]
        : []),
      fixed(row.retainedG, 1),
      fixed(row.retainedPct, 1),
      fixed(row.passingPct, 1),
    ]),
    notes: analysis.sets.map(({ portion, dryMassG, washedOutG, lossPct }) => {
      const what =
        portion === 0 ? say`Whole sample` : several ? say`Subsample ${portion}` : say`Subsample`;
      const loss = lossPct === undefined ? "" : say`, ${fixed(lossPct, 2)} % not recovered`;
      return say`${what}: ${fixed(dryMassG, 1)} g dry, ${fixed(washedOutG, 1)} g washed out${loss}.`;
    }),
  };
}

/** A hydrometer analysis in the order of time. */
export function sedimentationTable(name: string, analysis: HydrometerAnalysis): TableBlock {
  const computed = analysis.rows.some(({ computedControl }) => computedControl !== undefined);
  const bs = analysis.rows.some(({ bsSizeMm }) => bsSizeMm !== undefined);
  const notes = sedimentationNotes(analysis);
  // A BS scale counts thousandths of specific gravity.
  const units = (difference: number) => digits(bs ? 1000 * difference : difference, 3);
  return {
    kind: "table",
    caption: say`Sedimentation with the hydrometer: ${name}`,
    columns: [
      numberColumn(say`Time`, "min"),
      numberColumn(say`Temperature`, "°C"),
      ...(computed ? [numberColumn(say`Control, computed`)] : []),
      numberColumn(say`Corrected reading`),
      numberColumn(say`Effective depth`, "cm"),
      numberColumn(say`Size`, "mm"),
      ...(bs ? [numberColumn(say`Size, form of BS 1377-2`, "mm")] : []),
      numberColumn(say`Finer, of the dispersed mass`, "%"),
      numberColumn(say`Passing, of the whole`, "%"),
    ],
    rows: analysis.rows.map((row) => [
      plain(row.timeMin),
      fixed(row.temperatureC, 1),
      ...(computed ? [controlCell(row.computedControl, bs)] : []),
      units(row.correctedReading),
      fixed(row.effectiveDepthCm, 2),
      digits(row.sizeMm, 3),
      ...(bs ? [digits(row.bsSizeMm, 3)] : []),
      fixed(row.finerOfDispersedPct, 1),
      fixed(row.passingPct, 1),
    ]),
    ...(notes.length > 0 ? { notes } : {}),
  };
}

function controlCell(control: number | undefined, bs: boolean): string {
  if (control === undefined) return BLANK;
  // Near 1 the digits that count stand behind three zeros.
  return bs ? fixed(1000 * (control - 1), 2) : fixed(control, control < 2 ? 4 : 2);
}

export interface NamedSizes {
  readonly name: string;
  readonly sizes: CharacteristicSizes;
  readonly fractions: Fractions;
}

/** Characteristic sizes and fractions of several curves side by side. */
export function sizesTable(caption: string, entries: readonly NamedSizes[]): TableBlock {
  const { boundaries } = entries[0].fractions;
  return {
    kind: "table",
    caption,
    columns: [
      { header: say`Curve` },
      numberColumn("D10", "mm"),
      numberColumn("D30", "mm"),
      numberColumn("D60", "mm"),
      numberColumn("Cu"),
      numberColumn("Cc"),
      numberColumn(say`Clay`, "%"),
      numberColumn(say`Silt`, "%"),
      numberColumn(say`Fines`, "%"),
      numberColumn(say`Sand`, "%"),
      numberColumn(say`Gravel`, "%"),
    ],
    rows: entries.map(({ name, sizes, fractions }) => [
      name,
      digits(sizes.d10, 3),
      digits(sizes.d30, 3),
      digits(sizes.d60, 3),
      digits(sizes.cu, 3),
      digits(sizes.cc, 3),
      fixed(fractions.clayPct, 1),
      fixed(fractions.siltPct, 1),
      fixed(fractions.finesPct, 1),
      fixed(fractions.sandPct, 1),
      fixed(fractions.gravelPct, 1),
    ]),
    notes: [
      say`Boundaries: clay below ${boundaries.clayMm} mm, silt to ${boundaries.siltMm} mm, sand to ${boundaries.sandMm} mm, gravel to ${boundaries.gravelMm} mm. A dash: the size or fraction lies outside what was measured.`,
    ],
  };
}
