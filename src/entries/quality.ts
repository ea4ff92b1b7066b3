import { say } from "../words/message.js";
import { byDefault, forms, group, list, optional, required } from "./groups.js";
import {
  BESIDE,
  isGroup,
  type Kind,
  number,
  oneOf,
  percent,
  positive,
  quantity,
  shaped,
  text,
} from "./kinds.js";
import { sheet } from "./sheets.js";
import type { AcceptanceConfig, LotConfig, QualityConfig, ToleranceConfig } from "./studyConfig.js";

const moistureTolerance = group({
  below: required("moistureBelowPct", percent("1 %", 20), "Points below."),
  above: required("moistureAbovePct", percent("1 %", 20), "Points above."),
});

/** `tolerances`: how far the work may stand from the specified mix; what is left out gets a marked default. */
export const tolerances: Kind<ToleranceConfig> = group(
  {
    cement: optional("cementPct", percent("5 %", 50), "Of the cement's mass in a batch, each way."),
    moisture: optional(BESIDE, moistureTolerance, "Points of moisture from the optimum."),
    shares: optional(
      "sharesPct",
      percent("5 %", 50),
      "Of a material's dry mass in a batch, each way.",
    ),
    density: optional(
      "densityPct",
      percent("96 %", 105),
      "Least rammed dry density, of the maximum of the compaction test.",
    ),
    lift: optional("liftM", positive("m", "20 mm"), "Of the rammed depth of a lift, each way."),
    basis: optional(
      "basis",
      text("Specification of the engineer, clause 4"),
      "Where the entered values come from, in your words.",
    ),
  },
  { name: "ToleranceConfig" },
);

const stress = (example: string) => positive("stress", example);
/** A share or risk, 0 to 1 in the result. */
const share = (example: string) =>
  shaped(quantity("ratio", { min: 0.01, max: 50, example }), "number", (pct) => pct * 0.01);
const blocks = (min: number) =>
  required(
    "blocks",
    number({ whole: true, min, max: 200, example: 5 }),
    "Blocks that speak for a lot.",
  );
const ownStrength = optional(
  "strengthMpa",
  stress("2.0 MPa"),
  "Strength that lots are held against; left out, that of the requirement.",
);
const RULE = "How a lot is judged.";

const meanLessKs = group({
  rule: required("kind", oneOf("mean-less-ks"), RULE),
  blocks: blocks(2),
  factor: required(
    "factor",
    number({ min: 0, max: 10, example: 1.3 }),
    "Factor k: the mean less k standard deviations must reach the strength.",
  ),
  strength: ownStrength,
});

const meanAndMin = group(
  {
    rule: required("kind", oneOf("mean-and-least"), RULE),
    blocks: blocks(1),
    mean: required("meanMpa", stress("2.0 MPa"), "What the mean must reach."),
    least: required("minMpa", stress("1.6 MPa"), "What each block must reach."),
  },
  {
    checks: [
      {
        holds: ({ meanMpa, minMpa }) => minMpa <= meanMpa,
        message: say`The weakest block is asked for more than the mean.`,
        expected: say`least at most mean`,
      },
    ],
  },
);

const designed = group(
  {
    rule: required("kind", oneOf("designed"), RULE),
    strength: ownStrength,
    "acceptable-quality": required(
      "acceptableQuality",
      share("1 %"),
      "Share of blocks below the strength in a lot that should be accepted.",
      { earlier: ["good-below"] },
    ),
    "rejectable-quality": required(
      "rejectableQuality",
      share("20 %"),
      "Share of blocks below the strength in a lot that should be rejected.",
      { earlier: ["poor-below"] },
    ),
    "producer-risk": required(
      "producerRisk",
      share("5 %"),
      "Probability that a lot of acceptable quality is rejected.",
      { earlier: ["builder-risk"] },
    ),
    "consumer-risk": required(
      "consumerRisk",
      share("10 %"),
      "Probability that a lot of rejectable quality is accepted.",
      { earlier: ["owner-risk"] },
    ),
  },
  {
    checks: [
      {
        holds: ({ acceptableQuality, rejectableQuality }) => acceptableQuality < rejectableQuality,
        message: say`A good lot has no fewer blocks below the strength than a poor one.`,
        expected: say`acceptable-quality less than rejectable-quality`,
      },
    ],
  },
);

const RULES = { "mean-less-ks": meanLessKs, "mean-and-least": meanAndMin, designed };

const acceptance: Kind<AcceptanceConfig> = forms(
  RULES,
  (written) => {
    const rule = isGroup(written) ? written.rule : undefined;
    if (rule === "mean-less-ks" || rule === "mean-and-least" || rule === "designed") return rule;
    return {
      at: "rule",
      choices: Object.keys(RULES),
      message: say`This acceptance rule is not known.`,
    };
  },
  { name: "AcceptanceConfig", misplaced: say`This key does not belong to this acceptance rule.` },
);

const lot: Kind<LotConfig> = forms(
  {
    volume: group(
      {
        volume: required("volumeM3", positive("m3", "3 m3"), "Rammed volume of a lot."),
      },
      { constants: { kind: "volume" } },
    ),
    days: group(
      {
        days: required(
          "days",
          number({ whole: true, min: 1, max: 100, example: 2 }),
          "Working days of a lot.",
        ),
        "batches-a-day": optional(
          "batchesADay",
          number({ above: 0, max: 1000, example: 30 }),
          "Pace of the work; without it lots are not counted.",
        ),
      },
      { constants: { kind: "days" } },
    ),
  },
  (written) => (isGroup(written) && "volume" in written ? "volume" : "days"),
  { name: "LotConfig" },
);

const ages: Kind<readonly number[]> = shaped(
  list(positive("age", "28 d"), { min: 1, max: 6 }),
  "readonly number[]",
  (days): readonly number[] => [...new Set(days)].sort((a, b) => a - b),
);

/** `quality`: how lots of the work are sampled and judged. */
export const quality: Kind<QualityConfig> = group(
  {
    lot: required("lot", lot, "What one set of blocks speaks for."),
    ages: optional(
      "agesDays",
      ages,
      "Ages at which blocks of a lot are crushed; left out, that of the requirement.",
    ),
    scatter: optional(
      "scatterMpa",
      stress("0.3 MPa"),
      "Expected standard deviation of site blocks; left out, that of the regression.",
    ),
    acceptance: required("acceptance", acceptance, "The rule that lots are judged by."),
    basis: required(
      "basis",
      text("Specification of the engineer, clause 7"),
      "Code, clause or engineer's value, in your words.",
    ),
    "spare-blocks": byDefault(
      "spareBlocks",
      number({ whole: true, min: 0, max: 50, example: 1 }),
      0,
      "Blocks of a lot that are kept, to be crushed where one is spoilt.",
    ),
    "density-checks": optional(
      "densityChecks",
      number({ whole: true, min: 1, max: 100, example: 2 }),
      "Density checks of a lot.",
    ),
    "moisture-checks": optional(
      "moistureChecks",
      text("ball and drop before each lift"),
      "How moisture is checked, in your words.",
    ),
    "trial-wall": optional(
      "trialWall",
      text("1 m long, 0.6 m high, before the work begins"),
      "The trial wall, in your words.",
    ),
    "site-blocks": optional(
      "siteBlocks",
      sheet("sheets/site-blocks.csv"),
      "Sheet of the blocks made on site, as far as crushed.",
    ),
  },
  { name: "QualityConfig" },
);
