import { z } from "zod";
import { phrase } from "../words/say.js";
import type { AcceptanceConfig, LotConfig, QualityConfig } from "./qualityConfig.js";
import { quantityField } from "./quantityField.js";
import { text } from "./schemaFields.js";
import { sheetField } from "./sheetField.js";

const strength = (example: string) => quantityField("stress", example, { positive: true });
const share = (example: string, max: number) =>
  quantityField("ratio", example, { min: 0.01, max }, 0.01);
const blocks = (least: number) => z.int().min(least).max(200);

const acceptance = z
  .discriminatedUnion("rule", [
    z.strictObject({
      rule: z.literal("mean-less-ks"),
      blocks: blocks(2),
      factor: z.number().min(0).max(10),
      strength: strength("2.0 MPa").optional(),
    }),
    z
      .strictObject({
        rule: z.literal("mean-and-least"),
        blocks: blocks(1),
        mean: strength("2.0 MPa"),
        least: strength("1.6 MPa"),
      })
      .refine(({ mean, least }) => least <= mean, {
        message: phrase`The weakest block is asked for more than the mean.`,
        params: { expected: phrase`least at most mean` },
      }),
    z
      .strictObject({
        rule: z.literal("designed"),
        strength: strength("2.0 MPa").optional(),
        "good-below": share("1 %", 50),
        "poor-below": share("20 %", 50),
        "builder-risk": share("5 %", 50),
        "owner-risk": share("10 %", 50),
      })
      .refine((entry) => entry["good-below"] < entry["poor-below"], {
        message: phrase`A good lot has no fewer blocks below the strength than a poor one.`,
        params: { expected: phrase`good-below less than poor-below` },
      }),
  ])
  .transform((entry): AcceptanceConfig => {
    if (entry.rule === "mean-and-least") {
      const { blocks: count, mean, least } = entry;
      return { kind: entry.rule, blocks: count, meanMpa: mean, leastMpa: least };
    }
    const own = entry.strength === undefined ? {} : { strengthMpa: entry.strength };
    if (entry.rule === "mean-less-ks") {
      return { kind: entry.rule, blocks: entry.blocks, factor: entry.factor, ...own };
    }
    return {
      ...{ kind: entry.rule, ...own },
      ...{ goodBelow: entry["good-below"], poorBelow: entry["poor-below"] },
      ...{ builderRisk: entry["builder-risk"], ownerRisk: entry["owner-risk"] },
    };
  });

const lot = z
  .union([
    z.strictObject({ volume: quantityField("volume", "3 m3", { positive: true }, 1e-6) }),
    z.strictObject({
      days: z.int().min(1).max(100),
      "batches-a-day": z.number().positive().max(1000).optional(),
    }),
  ])
  .transform((entry): LotConfig => {
    if ("volume" in entry) return { kind: "volume", volumeM3: entry.volume };
    const pace = entry["batches-a-day"];
    const lotOfDays = { kind: "days", days: entry.days } as const;
    return pace === undefined ? lotOfDays : { ...lotOfDays, batchesADay: pace };
  });

/** `quality`: how lots of the work are sampled and judged. */
export const qualitySchema = z
  .strictObject({
    lot,
    ages: z
      .array(quantityField("age", "28 d", { positive: true }))
      .min(1)
      .max(6)
      .optional(),
    scatter: strength("0.3 MPa").optional(),
    acceptance,
    basis: text,
    "spare-blocks": z.int().min(0).max(50).default(0),
    "density-checks": z.int().min(1).max(100).optional(),
    "moisture-checks": text.optional(),
    "trial-wall": text.optional(),
    "site-blocks": sheetField.optional(),
  })
  .transform(
    (entry): QualityConfig => ({
      lot: entry.lot,
      ...(entry.ages === undefined
        ? {}
        : { agesDays: [...new Set(entry.ages)].sort((a, b) => a - b) }),
      ...(entry.scatter === undefined ? {} : { scatterMpa: entry.scatter }),
      ...{ acceptance: entry.acceptance, basis: entry.basis, spareBlocks: entry["spare-blocks"] },
      ...(entry["density-checks"] === undefined ? {} : { densityChecks: entry["density-checks"] }),
      ...(entry["moisture-checks"] === undefined
        ? {}
        : { moistureChecks: entry["moisture-checks"] }),
      ...(entry["trial-wall"] === undefined ? {} : { trialWall: entry["trial-wall"] }),
      ...(entry["site-blocks"] === undefined ? {} : { siteBlocks: entry["site-blocks"] }),
    }),
  );
