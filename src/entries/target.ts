import type { BlendLimit } from "../blend/target.js";
import { say } from "../words/message.js";
import { byDefault, forms, group, optional, required } from "./groups.js";
import {
  fixedOrRange,
  isGroup,
  type Kind,
  NOWHERE,
  oneOf,
  percent,
  quantity,
  shaped,
  size,
  text,
} from "./kinds.js";
import type { AddSandConfig, TargetConfig } from "./studyConfig.js";

const powerTarget = group(
  {
    exponent: required(
      "exponent",
      fixedOrRange(quantity("number", { min: 0.05, max: 1, example: "0.25" }), 0.25, "0.2 to 0.35"),
      "Exponent of the power curve: passing = 100 (size / top size) ^ exponent; of a range the best is sought.",
    ),
    "top-size": required(
      "topSizeMm",
      fixedOrRange(size("20 mm"), "20 mm", "16 mm to 20 mm"),
      "Size that all grains pass; of a range the best is sought.",
    ),
  },
  { constants: { kind: "power" } },
);

const bandTarget = group(
  {
    band: required(
      NOWHERE,
      oneOf("guidance"),
      "The band of the guidance, or of the study's own envelope.",
    ),
    objective: byDefault(
      "objective",
      oneOf("most-site-soil", "least-cost", "nearest-middle"),
      "nearest-middle",
      "What is sought inside the band.",
      { earlier: ["seek"] },
    ),
  },
  { constants: { kind: "band" } },
);

const BAND_KEYS = ["band", "objective", "seek"];

/** `target`: a power curve, or the band of the guidance and what to seek inside it. */
export const target: Kind<TargetConfig> = forms(
  { power: powerTarget, band: bandTarget },
  (written) => (isGroup(written) && BAND_KEYS.some((key) => key in written) ? "band" : "power"),
  { name: "TargetConfig" },
);

/** `add-sand`: the first mix of a soil that is known by a jar alone. */
export const addSand: Kind<AddSandConfig> = group(
  {
    sand: required("sand", text("river-sand"), "Id of the sand that is added."),
    fines: required("finesPct", percent("30 %"), "Fines that the mix is to have, of its dry mass."),
    soil: optional("soil", text("site-soil"), "Id of the soil; left out, the only one."),
    "sand-fines": optional(
      "sandFinesPct",
      percent("2 %"),
      "Fines of the sand where it has neither a sieve nor a jar sheet.",
    ),
    "dry-mass": byDefault(
      "batchDryMassKg",
      quantity("kg", { above: 0, max: 1000, example: "15 kg" }),
      "15 kg",
      "Dry mass of the batch to try.",
    ),
  },
  { name: "AddSandConfig" },
);

const window = group(
  {
    min: optional("minPct", percent("5 %"), "Least value."),
    max: optional("maxPct", percent("12 %"), "Greatest value."),
  },
  {
    checks: [
      {
        holds: ({ minPct, maxPct }) => minPct !== undefined || maxPct !== undefined,
        message: say`This limit limits nothing.`,
        expected: say`min, max or both`,
      },
      {
        holds: ({ minPct = 0, maxPct = 100 }) => minPct <= maxPct,
        message: say`The smallest value is above the largest.`,
        expected: say`min at most max`,
      },
    ],
  },
);

const windows = {
  clay: optional("clay", window, "Clay of the blend, below 0.002 mm."),
  silt: optional("silt", window, "Silt of the blend, from 0.002 to 0.063 mm."),
  fines: optional("fines", window, "Fines of the blend, below 0.063 mm."),
  "plasticity-index": optional("plasticity-index", window, "Plasticity index of the blend."),
  "linear-shrinkage": optional("linear-shrinkage", window, "Linear shrinkage of the blend."),
  "site-soil": optional("site-soil", window, "Share of all site soils together."),
} as const;

const WINDOWS = Object.keys(windows) as (keyof typeof windows)[];

/** `limits`: windows of the blend in percent, and the largest size. */
export const limits: Kind<readonly BlendLimit[]> = shaped(
  group({
    ...windows,
    "top-size": optional("top-size", size("20 mm", "3/4 in"), "Largest grain of the blend."),
  }),
  "readonly BlendLimit[]",
  (entry): readonly BlendLimit[] => {
    const found = WINDOWS.flatMap((kind): BlendLimit[] => {
      const limit = entry[kind];
      return limit === undefined ? [] : [{ kind, ...limit }];
    });
    const sizeMm = entry["top-size"];
    return sizeMm === undefined ? found : [...found, { kind: "top-size", sizeMm }];
  },
);
