import type { DisplayKind } from "../quantities/displayUnits.js";
import { phrase } from "../words/say.js";
import type { StudyResult } from "./studyResult.js";

/** A number of a study that two versions are held against each other by. */
export interface ComparedNumber {
  /** Stable, for programs. */
  readonly key: string;
  /** A phrase to be said; of shares, the material's own name. */
  readonly label: string;
  /** `percent` and `money` are shown as they are, `whole` without decimals. */
  readonly kind: DisplayKind | "percent" | "money" | "whole";
  /** In base units; null where the study does not give it. */
  readonly value: number | null;
}

/** The results of a study that matter to whoever builds or reviews, in the order of the appendix. */
export function comparedResults(result: StudyResult): ComparedNumber[] {
  const { config, blend, compaction, strength, mix, findings } = result;
  const { leastCement, fit } = strength;
  const { peak } = compaction ?? {};
  const percent = (key: string, label: string, value: number | null | undefined) =>
    line(key, label, "percent", value);
  return [
    ...config.materials.map(({ id, name }, index) =>
      percent(`share.${id}`, name, blend.shares[index].sharePct),
    ),
    percent("clay", phrase`Clay of the blend`, blend.fractions.clayPct),
    percent("silt", phrase`Silt of the blend`, blend.fractions.siltPct),
    percent("fines", phrase`Fines of the blend`, blend.fractions.finesPct),
    percent("optimum", phrase`Optimum moisture`, peak?.optimumWaterPct),
    line("max-density", phrase`Maximum dry density`, "density", peak?.maximumDryDensityKgM3),
    line("density", phrase`Dry density, rammed`, "density", mix?.density.valueKgM3),
    percent("least-cement", phrase`Least cement, not rounded`, leastCement.cementPct),
    percent("cement", phrase`Cement, as specified`, strength.chosenCementPct),
    line("bound", phrase`Strength bound at that`, "stress", leastCement.boundAtBatchableMpa),
    line("line", phrase`Fitted strength at that`, "stress", leastCement.lineAtBatchableMpa),
    line(
      "scatter",
      phrase`Scatter about the curve`,
      "stress",
      // The power form's scatter stands on a logarithm.
      fit.form === "power" ? undefined : fit.residualSd,
    ),
    line("made", phrase`Rammed volume to make`, "volume", times(mix?.quantities.madeVolumeM3, 1e6)),
    line(
      "cement-mass",
      phrase`Cement for the element`,
      "mass",
      times(mix?.quantities.mix.cement.dryMassKg, 1000),
    ),
    line("bags", phrase`Bags of cement, at most`, "whole", mix?.quantities.cementBags.high),
    line("cost-low", phrase`Cost, low`, "money", mix?.cost?.total.low),
    line("cost-high", phrase`Cost, high`, "money", mix?.cost?.total.high),
    line("carbon-low", phrase`Carbon (CO₂e), low`, "mass", times(mix?.carbon.total.low, 1000)),
    line("carbon-high", phrase`Carbon (CO₂e), high`, "mass", times(mix?.carbon.total.high, 1000)),
    line("warnings", phrase`Warnings of the checks`, "whole", countOf("warning")),
  ];

  function countOf(severity: string): number {
    return findings.filter((finding) => finding.severity === severity).length;
  }
}

function line(
  key: string,
  label: string,
  kind: ComparedNumber["kind"],
  value: number | null | undefined,
): ComparedNumber {
  return { key, label, kind, value: value ?? null };
}

function times(value: number | undefined, factor: number): number | undefined {
  return value === undefined ? undefined : value * factor;
}
