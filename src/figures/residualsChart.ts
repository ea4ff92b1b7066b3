import {
  displayUnit,
  displayValue,
  formatQuantity,
  type UnitSystem,
} from "../quantities/displayUnits.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { FittedStrength } from "../strength/strengthFit.js";
import { say } from "../words/say.js";
import { baseLayout } from "./baseLayout.js";
import type { Figure } from "./figure.js";
import { PALETTE } from "./palette.js";

/** Beyond this a studentised residual is worth a look: common practice, no source. */
const LOOK = 2;

/**
 * Studentised residuals against the fitted strength: a funnel shows scatter that grows, a bow the wrong
 * shape, a lone point a block to look at.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { form: "linear", ageDays: 28 });
 * residualsChart("Residuals", fit, "SI").data.length // => 1
 */
export function residualsChart(title: string, fit: FittedStrength, units: UnitSystem): Figure {
  const shown = fit.points.filter(({ studentised }) => studentised !== null);
  const far = shown.filter(({ studentised }) => Math.abs(studentised!) > LOOK);
  const largest = [...shown].sort((a, b) => Math.abs(b.studentised!) - Math.abs(a.studentised!))[0];
  const level = (y: number, dash: string) => ({
    ...{ type: "line", xref: "paper", x0: 0, x1: 1, y0: y, y1: y },
    line: { color: PALETTE.manganese, width: 1, dash },
  });
  const altText = largest
    ? say`Studentised residuals of ${shown.length} blocks of ${fit.ageDays} days against fitted strength. ${far.length} lie beyond plus or minus ${LOOK}${far.length > 0 ? `: ${far.map(({ id }) => id).join(", ")}` : ""}. The largest is ${formatFixed(largest.studentised!, 1)}, of block ${largest.id} at a fitted ${formatQuantity(largest.fittedMpa, "stress", units)}.`
    : say`No studentised residuals: the blocks are too few, or lie exactly on the curve.`;
  return {
    kind: "figure",
    title,
    altText,
    data: [
      {
        ...{ type: "scatter", mode: "markers+text", name: say`blocks`, showlegend: false },
        x: shown.map(({ fittedMpa }) => displayValue(fittedMpa, "stress", units)),
        y: shown.map(({ studentised }) => studentised),
        text: shown.map((point) => (far.includes(point) ? point.id : "")),
        textposition: "top center",
        marker: { color: PALETTE.azurite, symbol: "circle", size: 7 },
      },
    ],
    layout: baseLayout(
      { title: say`Fitted strength (${displayUnit("stress", units)})` },
      { title: say`Studentised residual` },
      { shapes: [level(0, "solid"), level(LOOK, "dot"), level(-LOOK, "dot")] },
    ),
  };
}
