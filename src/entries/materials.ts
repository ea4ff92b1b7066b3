import { sandBulking } from "../batch/bulkDensity.js";
import { say } from "../words/message.js";
import { byDefault, forms, group, list, optional, required } from "./groups.js";
import {
  BESIDE,
  isGroup,
  type Kind,
  looseDensity,
  oneOf,
  pattern,
  percent,
  positive,
  quantity,
  Refusal,
  shaped,
  text,
} from "./kinds.js";
import { sheet } from "./sheets.js";
import type { CementConfig, MaterialConfig } from "./studyConfig.js";
import { price, supplyRows } from "./supply.js";

const height = (example: string) => positive("m", example);

const flooding = shaped(
  group({
    damp: required("damp", height("200 mm"), "Height of the damp sand in a jar."),
    flooded: required("flooded", height("160 mm"), "Its height after it was flooded and settled."),
  }),
  "number",
  ({ damp, flooded }) => {
    const { bulkingPct, message } = sandBulking({ dampHeight: damp, floodedHeight: flooded });
    if (bulkingPct !== null) return bulkingPct;
    return new Refusal(message, say`a flooded height at most the damp one`);
  },
);

const bulking = forms(
  { percent: percent("20 %", 60), flooding },
  (written) => (isGroup(written) ? "flooding" : "percent"),
  { type: "number" },
);

const shareWindow = group(
  {
    min: byDefault("minSharePct", percent("40 %"), "0 %", "Least share."),
    max: byDefault("maxSharePct", percent("85 %"), "100 %", "Greatest share."),
  },
  {
    checks: [
      {
        holds: ({ minSharePct, maxSharePct }) => minSharePct <= maxSharePct,
        message: say`The smallest share is above the largest.`,
        expected: say`min at most max`,
      },
    ],
  },
);

const variability = group({
  fines: optional(
    "finesPlusMinusPct",
    percent("4 %", 50),
    "The fines of 19 of 20 loads lie within plus or minus this.",
  ),
  batching: optional(
    "batchingPlusMinusPct",
    percent("3 %", 50),
    "The mass of 19 of 20 batches lies within plus or minus this.",
  ),
});

/** A test that somebody made, or says was not made. */
const testValue = (example: string) =>
  forms(
    { value: percent(example, 60), untested: oneOf("not tested") },
    (written) => (written === "not tested" ? "untested" : "value"),
    { type: 'number | "not tested"' },
  );

const chemistry = group(
  {
    "organic-matter": optional(
      "organicPct",
      testValue("0.8 %"),
      "Organic matter, of the dry mass; or “not tested”.",
    ),
    sulphates: optional(
      "sulphatePct",
      testValue("0.05 %"),
      "Sulphates as SO₄, of the dry mass; or “not tested”.",
      { earlier: ["sulfates"] },
    ),
    "soluble-salts": optional(
      "saltsPct",
      testValue("0.3 %"),
      "Soluble salts, of the dry mass; or “not tested”.",
    ),
  },
  { name: "ChemistryConfig" },
);

const material: Kind<MaterialConfig> = group(
  {
    id: required(
      "id",
      pattern(
        /^[a-z][a-z0-9-]*$/,
        "site-soil",
        say`An id is lower-case letters, digits and hyphens.`,
      ),
      "Short name that other entries use.",
    ),
    name: required("name", text("Site soil, two pits mixed"), "Name as it is printed."),
    role: required("role", oneOf("soil", "sand", "gravel"), "What it is in the mix."),
    sieve: optional("sieve", sheet("sheets/site-soil-sieve.csv"), "Sheet of the sieve analysis."),
    hydrometer: optional(
      "hydrometer",
      sheet("sheets/site-soil-hydrometer.csv"),
      "Sheet of the hydrometer test.",
    ),
    pipette: optional(
      "pipette",
      sheet("sheets/site-soil-pipette.csv"),
      "Sheet of the pipette test, in place of a hydrometer.",
    ),
    jar: optional(
      "jar",
      sheet("sheets/site-soil-jar.csv"),
      "Sheet of a jar test: a first guide beside the laboratory, never part of the curve.",
    ),
    limits: optional(
      "limits",
      sheet("sheets/site-soil-limits.csv"),
      "Sheet of the consistency limits and the shrinkage bar.",
    ),
    chemistry: optional(
      "chemistry",
      chemistry,
      "What was tested of the soil beside its grains; what is left out counts as not tested.",
    ),
    "particle-density": optional(
      "particleDensityKgM3",
      quantity("density", { min: 2000, max: 3500, example: "2670 kg/m3" }),
      "Density of the grains.",
    ),
    "loose-bulk-density": optional(
      "looseBulkDensityKgM3",
      looseDensity("1250 kg/m3"),
      "Dry mass in a loose volume, at the moisture below; with bulking, of the dry material.",
    ),
    moisture: optional(
      "moisturePct",
      percent("6.5 %", 60),
      "Moisture on delivery, of the dry mass.",
    ),
    bulking: optional(
      "bulkingPct",
      bulking,
      "How much more room the damp material takes than the dry: percent, or the two heights of the flooding test.",
    ),
    price: optional(
      "price",
      price(["t", "m3"], "38 per t"),
      "Price as delivered, its water included.",
    ),
    ...supplyRows,
    share: byDefault(
      BESIDE,
      shareWindow,
      {},
      "Allowed share of the dry mass of all soil and aggregate.",
    ),
    variability: byDefault(BESIDE, variability, {}, "How the material changes from load to load.", {
      earlier: ["varies"],
    }),
  },
  {
    name: "MaterialConfig",
    checks: [
      {
        at: "pipette",
        holds: ({ hydrometer, pipette }) => hydrometer === undefined || pipette === undefined,
        message: say`This material has a hydrometer and a pipette sheet.`,
        expected: say`one of the two, so that the fine end of the curve has one source`,
      },
    ],
  },
);

/** `materials`: what the blend may be made of. */
export const materials: Kind<readonly MaterialConfig[]> = list(material, {
  min: 1,
  max: 12,
  unique: "id",
});

/** `cement`: what is bought, loose and in bags. */
export const cement: Kind<CementConfig> = group(
  {
    name: required("name", text("Portland cement CEM II"), "Name as it is printed."),
    "loose-bulk-density": required(
      "looseBulkDensityKgM3",
      looseDensity("1200 kg/m3"),
      "Mass in a loose volume.",
    ),
    bag: required("bagMassKg", positive("kg", "25 kg"), "Mass of a bag."),
    price: optional("price", price(["t", "m3", "bag"], "190 per t"), "Price as delivered."),
    ...supplyRows,
  },
  { name: "CementConfig" },
);
