import {
  displayUnit,
  displayValue,
  formatQuantity,
  type UnitSystem,
} from "../../quantities/format.js";
import type { StrengthByAge } from "../../strength/strengthByAge.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { type Figure, figureOf } from "../figure.js";
import { baseLayout, PALETTE } from "../style.js";

/**
 * Strength against age at one cement content, on the logarithm of the age: the curve at each tested age with
 * the two-sided band of its mean, and the mean of the blocks of just that content and age where there are any.
 *
 * @throws RangeError where no curve was fitted.
 *
 * @example
 * const band = { meanLowMpa: 1, meanHighMpa: 2, predictionLowMpa: 0.8, predictionHighMpa: 2.2 };
 * const ages = [{ ageDays: 7, meanMpa: 1.2, blocks: 0, blocksMeanMpa: null, ...band }, { ageDays: 28, meanMpa: 1.8, blocks: 3, blocksMeanMpa: 1.9, ...band }];
 * strengthByAgeChart("Strength and age", { status: "ok", message: "", cementPct: 6, ages }, "SI").data.length // => 2
 */
export function strengthByAgeChart(title: Text, found: StrengthByAge, units: UnitSystem): Figure {
  const { status, ages, cementPct } = found;
  if (status !== "ok") throw new RangeError(`invalid \`found.status\`: ${status}; expected ok`);
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const strength = (mpa: number) => formatQuantity(mpa, "stress", units);
  const crushed = ages.filter(({ blocksMeanMpa }) => blocksMeanMpa !== null);
  return figureOf(
    title,
    joinTexts(
      [
        say`${title}. At ${cementPct} % cement.`,
        ...ages.map(
          ({ ageDays, meanMpa, meanLowMpa, meanHighMpa }) =>
            say`${ageDays} days: ${strength(meanMpa)}, between ${strength(meanLowMpa)} and ${strength(meanHighMpa)}.`,
        ),
      ],
      " ",
    ),
    [
      {
        type: "scatter",
        mode: "lines+markers",
        name: say`curve at ${cementPct} % cement, with the band of its mean`,
        x: ages.map(({ ageDays }) => ageDays),
        y: ages.map(({ meanMpa }) => stress(meanMpa)),
        error_y: {
          type: "data",
          symmetric: false,
          array: ages.map(({ meanMpa, meanHighMpa }) => stress(meanHighMpa - meanMpa)),
          arrayminus: ages.map(({ meanMpa, meanLowMpa }) => stress(meanMpa - meanLowMpa)),
          color: PALETTE.azurite,
        },
        line: { color: PALETTE.azurite, width: 2, dash: "dot" },
        marker: { color: PALETTE.azurite, symbol: "circle", size: 7 },
      },
      {
        type: "scatter",
        mode: "markers",
        name: say`mean of the blocks of that content`,
        x: crushed.map(({ ageDays }) => ageDays),
        y: crushed.map(({ blocksMeanMpa }) => stress(blocksMeanMpa!)),
        marker: { color: PALETTE.redEarth, symbol: "diamond-open", size: 9 },
      },
    ],
    baseLayout(
      {
        title: say`Age (days)`,
        type: "log",
        tickvals: ages.map(({ ageDays }) => ageDays),
        ticktext: ages.map(({ ageDays }) => String(ageDays)),
      },
      { title: say`Compressive strength (${displayUnit("stress", units)})`, rangemode: "tozero" },
      {},
    ),
  );
}
