import {
  displayUnit,
  displayValue,
  formatQuantity,
  type UnitSystem,
} from "../quantities/displayUnits.js";
import type { AcceptanceRisks } from "../strength/acceptanceRisks.js";
import type { AcceptanceRule } from "../strength/acceptanceRule.js";
import { operatingCharacteristic } from "../strength/operatingCharacteristic.js";
import { say } from "../words/say.js";
import { baseLayout } from "./baseLayout.js";
import type { Figure } from "./figure.js";
import { PALETTE } from "./palette.js";

const STEPS = 60;

/**
 * How likely a lot is accepted, by its true mean, with the good and the poor lot marked.
 *
 * @param of.sdMpa standard deviation of blocks of a lot, as for the risks.
 *
 * @example
 * const rule = { kind: "mean-less-ks", blocks: 5, requiredMpa: 2, factor: 1 };
 * const risks = acceptanceRisks(rule, { sdMpa: 0.3 });
 * operatingCharacteristicChart("Acceptance", rule, risks, { sdMpa: 0.3, units: "SI" }).data.length // => 2
 */
export function operatingCharacteristicChart(
  title: string,
  rule: AcceptanceRule,
  risks: AcceptanceRisks,
  of: { readonly sdMpa: number; readonly units: UnitSystem; readonly seed?: number },
): Figure {
  const { sdMpa, units, seed } = of;
  const low = Math.max(0.05 * sdMpa, risks.poorMeanMpa - 2.5 * sdMpa);
  const high = risks.goodMeanMpa + 1.5 * sdMpa;
  const meansMpa = Array.from({ length: STEPS + 1 }, (_, i) => low + ((high - low) * i) / STEPS);
  const curve = operatingCharacteristic(rule, { sdMpa, seed, meansMpa });
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const half = curve.find(({ acceptance }) => acceptance >= 0.5);
  return {
    kind: "figure",
    title,
    altText: say`Chance of acceptance against the true mean of a lot whose blocks scatter by ${formatQuantity(sdMpa, "stress", units)}. ${risks.message}${half ? say` Half of the lots pass at about ${formatQuantity(half.meanMpa, "stress", units)}.` : ""}`,
    data: [
      {
        ...{ type: "scatter", mode: "lines", name: say`chance of acceptance` },
        x: curve.map(({ meanMpa }) => stress(meanMpa)),
        y: curve.map(({ acceptance }) => 100 * acceptance),
        line: { color: PALETTE.azurite, width: 2.5 },
      },
      {
        ...{ type: "scatter", mode: "markers+text", name: say`poor lot and good lot` },
        x: [stress(risks.poorMeanMpa), stress(risks.goodMeanMpa)],
        y: [100 * risks.ownerRisk, 100 * (1 - risks.builderRisk)],
        text: [say`poor`, say`good`],
        textposition: ["top left", "bottom right"],
        marker: { color: PALETTE.redEarth, symbol: "diamond", size: 9 },
      },
    ],
    layout: baseLayout(
      { title: say`True mean of the lot (${displayUnit("stress", units)})` },
      { title: say`Accepted (% of lots)`, range: [0, 102] },
    ),
  };
}
