import type { FrontierPoint } from "../blend/blendFrontier.js";
import { formatFixed, formatNumber } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { baseLayout } from "./baseLayout.js";
import type { Figure } from "./figure.js";
import { PALETTE } from "./palette.js";

/**
 * What a better fit costs: difference from the target against cost per tonne or share of site soil.
 *
 * @param names of the materials in the order of the shares, for the text alternative.
 */
export function frontierChart(
  title: string,
  frontier: readonly FrontierPoint[],
  axis: string,
  names: readonly string[],
): Figure {
  const described = [frontier[0], frontier[frontier.length - 1]]
    .filter((point) => point !== undefined)
    .map(({ value, rmsDifferencePct, sharesPct }) => {
      const shares = sharesPct.map((share, j) => `${names[j]} ${formatFixed(share, 1)} %`);
      return say`at ${formatNumber(value, 3)} the difference is ${formatNumber(rmsDifferencePct, 3)} points (${shares.join(", ")})`;
    });
  return {
    kind: "figure",
    title,
    altText: say`${title}. ${axis} against the root mean square difference from the target: ${described.join("; ") || say`no blend keeps the limits`}.`,
    data: [
      {
        type: "scatter",
        mode: "lines+markers",
        name: say`best blend`,
        x: frontier.map(({ value }) => value),
        y: frontier.map(({ rmsDifferencePct }) => rmsDifferencePct),
        line: { color: PALETTE.umber, width: 2 },
        marker: { color: PALETTE.umber, symbol: "circle", size: 7 },
      },
    ],
    layout: baseLayout(
      { title: axis },
      { title: say`Difference from the target (points, rms)`, rangemode: "tozero" },
      { showlegend: false },
    ),
  };
}
