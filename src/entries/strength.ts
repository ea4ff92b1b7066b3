import { ASPECT_RATIO_TABLES } from "../strength/aspectRatio.js";
import { say } from "../words/message.js";
import { byDefault, forms, group, optional, required } from "./groups.js";
import {
  earthDensity,
  type Kind,
  oneOf,
  percent,
  positive,
  quantity,
  shaped,
  text,
} from "./kinds.js";
import { sheet } from "./sheets.js";
import type { CovariateConfig, RequirementConfig, StrengthConfig } from "./studyConfig.js";
import { crushed } from "./trials.js";

const requirement: Kind<RequirementConfig> = group(
  {
    strength: required(
      "strengthMpa",
      positive("stress", "2.0 MPa"),
      "Compressive strength that the mix must reach.",
    ),
    age: required("ageDays", positive("age", "28 d"), "Age at which it must."),
    statistic: required(
      "statistic",
      { ...oneOf("mean", "prediction", "tolerance"), name: "RequirementStatistic" },
      "Bound of the regression that is held against it: of the mean, of one further block, or of 95 % of blocks.",
    ),
    confidence: required(
      "confidence",
      shaped(
        quantity("ratio", { min: 50, max: 99.9, example: "95 %" }),
        "number",
        (pct) => pct / 100,
      ),
      "Confidence of that bound; in the result 0 to 1.",
    ),
    crushed: optional(
      "crushed",
      crushed,
      "How the blocks are that the requirement speaks of; moist is at the moisture of curing.",
    ),
    basis: required(
      "basis",
      text("Letter of the engineer, 2026-03-02"),
      "Code, clause or engineer's letter that asks for it; printed as it stands.",
    ),
  },
  { name: "RequirementConfig" },
);

/** `true` asks for the mean of the blocks, a number for that value. */
const meanOr = (kind: Kind<number>) =>
  forms({ mean: oneOf(true), value: kind }, (written) => (written === true ? "mean" : "value"));

const covariates: Kind<readonly CovariateConfig[]> = shaped(
  group({
    age: optional(
      "age",
      oneOf(true),
      "The blocks' age, by its logarithm; the curve is asked at the age required.",
    ),
    "dry-density": optional(
      "density",
      meanOr(earthDensity("1900 kg/m3")),
      "The blocks' dry density; true asks the curve at the mean of the blocks, a value at that.",
    ),
    moisture: optional(
      "moisture",
      meanOr(percent("6 %", 60)),
      "The blocks' moisture at the test; true asks the curve at the mean of the blocks, a value at that.",
    ),
  }),
  "readonly CovariateConfig[]",
  ({ age, density, moisture }): readonly CovariateConfig[] => [
    ...(age === undefined ? [] : [{ kind: "ln age" as const }]),
    ...covariate("dry density", density),
    ...covariate("moisture at test", moisture),
  ],
);

function covariate(
  kind: CovariateConfig["kind"],
  value: number | true | undefined,
): CovariateConfig[] {
  if (value === undefined) return [];
  return [value === true ? { kind } : { kind, at: value }];
}

/** `strength`: the blocks, the curve and the requirement. */
export const strength: Kind<StrengthConfig> = group(
  {
    sheet: optional("sheet", sheet("sheets/blocks.csv"), "Sheet of the crushed blocks."),
    model: byDefault(
      "model",
      oneOf("linear", "quadratic", "logarithmic", "power"),
      "linear",
      "Curve of strength on cement content.",
      { earlier: ["form"] },
    ),
    "round-up-to": byDefault(
      "roundUpToPct",
      quantity("ratio", { above: 0, max: 5, example: "0.5 %" }),
      "0.5 %",
      "The least cement content is rounded up to a multiple of this.",
    ),
    batches: byDefault(
      "batches",
      oneOf("ignore", "block", "means"),
      "ignore",
      "How batches of blocks stand in the regression: not told apart (ignore), each with a level of its own (block), or each as the mean of its blocks (means).",
    ),
    covariates: byDefault(
      "covariates",
      covariates,
      {},
      "Readings that stand in the regression beside the cement content.",
    ),
    "aspect-table": optional(
      "aspectTable",
      shaped(oneOf(...ASPECT_RATIO_TABLES.map(({ id }) => id)), "string", (id) => id),
      "Table that corrects strengths for the blocks' proportions, shown beside the measured ones.",
    ),
    variance: byDefault(
      "variance",
      oneOf("even", "proportional"),
      "even",
      "Whether the scatter of blocks is the same at all contents, or grows with the strength.",
      { earlier: ["spread"] },
    ),
    requirement: optional(
      "requirement",
      requirement,
      "What the mix must reach; without it no least cement follows.",
    ),
  },
  {
    name: "StrengthConfig",
    checks: [
      {
        at: "variance",
        holds: ({ model, variance }) => !(model === "power" && variance === "proportional"),
        message: say`The power model has a proportional scatter already.`,
        expected: say`variance: even, or another model`,
      },
    ],
  },
);
