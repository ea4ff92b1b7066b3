import type { TableBlock } from "../blocks/block.js";
import type { QuantityInterval } from "../grading/uncertainty/intervals.js";
import { inUnits, measured, type UnitSystem } from "../quantities/format.js";
import type { ClassSystem } from "../soil/classification/classifyCurve.js";
import type { CurveUncertainty } from "../soil/curveUncertainty.js";
import { say, soilNamed, type Text } from "../words/message.js";
import { digits, numberColumn, plain } from "./cell.js";
import { tableOf } from "./tableOf.js";

const NAMES: Readonly<Record<QuantityInterval["quantity"], Text>> = {
  d10: "D10",
  d15: "D15",
  d30: "D30",
  d50: "D50",
  d60: "D60",
  d85: "D85",
  d90: "D90",
  cu: "Cu",
  cc: "Cc",
  clayPct: say`clay`,
  siltPct: say`silt`,
  finesPct: say`silt and clay`,
  sandPct: say`sand`,
  gravelPct: say`gravel`,
};

export const SYSTEMS: Readonly<Record<ClassSystem, Text>> = {
  uscs: say`ASTM D2487 (rules from memory; agree with the examples read)`,
  aashto: say`AASHTO M 145 (table read; rounding from memory)`,
  usda: say`USDA texture (five classes read, the others from memory)`,
  iso14688: say`ISO 14688-2 (from memory)`,
  bs5930: say`BS 5930 (letters from memory)`,
};

/**
 * What the stated reading errors leave open of the numbers read off a curve.
 *
 * @param units of the errors of thermometer and density; default SI.
 */
export function intervalsTable(
  name: string,
  { quantities, errors, resamples, seed }: CurveUncertainty,
  units: UnitSystem = "SI",
): TableBlock {
  // A difference of temperature: no zero point to be moved.
  const degrees =
    units === "US" ? say`${plain(1.8 * errors.temperatureC)} °F` : say`${errors.temperatureC} °C`;
  return tableOf(
    say`Intervals from the reading errors: ${name}`,
    quantities,
    [
      [say`Quantity`, ({ quantity }) => NAMES[quantity]],
      [numberColumn(say`Low`), ({ low }) => digits(low)],
      [numberColumn(say`Median`), ({ median }) => digits(median)],
      [numberColumn(say`High`), ({ high }) => digits(high)],
      [say`Unit`, ({ unit }) => unit],
    ],
    [
      say`95 % of ${resamples} resampled readings (seed ${seed}); standard deviations: balance ${errors.balanceG} g, sieving ${errors.sievingPct} % of each mass retained, hydrometer ${errors.hydrometerUnits} units, temperature ${degrees}, time ${errors.timeS} s, particle density ${inUnits(measured(errors.particleDensityKgM3, "density"), units)}.`,
      say`How well the sample represents the stockpile is not in them, and mostly matters more.`,
    ],
  );
}

/** The probability of each class, given the reading errors. */
export function classesTable(name: string, { classes }: CurveUncertainty): TableBlock {
  return {
    kind: "table",
    caption: say`Classes and their probability: ${name}`,
    columns: [{ header: say`System` }, { header: say`Class` }, numberColumn(say`Probability`, "%")],
    rows: classes.flatMap(({ system, likelihoods }) =>
      likelihoods.map(({ label, share }, index) => [
        index === 0 ? SYSTEMS[system] : "",
        soilNamed(label),
        share < 0.005 ? say`below 1` : String(Math.round(100 * share)),
      ]),
    ),
    notes: [say`Given the stated reading errors alone, as in the table of intervals.`],
  };
}
