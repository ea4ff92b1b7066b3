import { formatFixed, formatNumber } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { ClassSoil } from "./classSoil.js";
import type { Exercise } from "./exercise.js";
import { readOffWrongly } from "./readOffWrongly.js";

/**
 * Exercises on the curve: D60, where it lies between two measured points, and whether D10 is known.
 *
 * Source: `characteristicSizes`.
 */
export function curveExercises({ curve, sizes }: Pick<ClassSoil, "curve" | "sizes">): Exercise[] {
  const [{ passingPct: finestPct }] = curve.points;
  const { d10, d60 } = sizes;
  return [
    ...(d60 === undefined || finestPct >= 60 ? [] : [d60Exercise(curve, d60)]),
    knownD10(finestPct, d10),
  ];
}

function d60Exercise(curve: ClassSoil["curve"], d60Mm: number): Exercise {
  const { turns, low, high } = readOffWrongly(curve, 60);
  const three = (value: number) => formatNumber(value, 3);
  return {
    kind: "number",
    id: "d60-of-the-soil",
    question: say`Read D60 off the curve: the size that 60 % of the mass passes.`,
    unit: "mm",
    value: d60Mm,
    tolerance: { rel: 0.08 },
    wrongTurns: turns,
    hint: say`Go across from 60 % to the curve and down to the axis. The axis counts in tenfold steps: half-way between 1 and 10 lies 3.2, not 5.5.`,
    worked: say`Between ${three(low.sizeMm)} mm (${formatFixed(low.passingPct, 1)} %) and ${three(high.sizeMm)} mm (${formatFixed(high.passingPct, 1)} %): ${three(low.sizeMm)} × (${three(high.sizeMm)} ÷ ${three(low.sizeMm)}) ^ ((60 − ${formatFixed(low.passingPct, 1)}) ÷ (${formatFixed(high.passingPct, 1)} − ${formatFixed(low.passingPct, 1)})) = ${three(d60Mm)} mm.`,
    why: say`The line between two points is straight on the logarithm of size: ${three(low.sizeMm)} × (${three(high.sizeMm)} ÷ ${three(low.sizeMm)}) ^ part.`,
  };
}

function knownD10(finestPct: number, d10Mm: number | undefined): Exercise {
  const value = d10Mm === undefined ? "no" : "yes";
  const percent = formatFixed(finestPct, 1);
  return {
    kind: "choice",
    id: "is-d10-known",
    question: say`Do these measurements give D10? Answer "yes" or "no".`,
    options: ["yes", "no"],
    value,
    wrongTurns:
      value === "no"
        ? [
            {
              value: "yes",
              text: say`Follow the curve to its finest measured point and read how much still passes there.`,
            },
          ]
        : [
            {
              value: "no",
              text: say`Look at the finest measured point: less than 10 % passes it.`,
            },
          ],
    hint: say`D10 is measured only where the curve comes down to 10 %.`,
    worked: say`At the finest measured size ${percent} % still pass; the answer is ${value}.`,
    why:
      value === "no"
        ? say`At the finest measured size ${percent} % still pass. To draw the curve on by hand would be to invent D10, and Cu with it.`
        : say`The curve comes down to ${percent} %, below 10 %.`,
  };
}
