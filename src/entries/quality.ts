import { z } from "zod";
import type { SheetSource } from "../lab/sheet/grid.js";
import { say } from "../words/message.js";
import { render } from "../words/render.js";
import { sheetField } from "./sheets.js";
import { metres, percent, quantityField, text } from "./writtenValue.js";

/** How far the work may stand from the specified mix; what is left out gets a marked default or none. */
export interface ToleranceConfig {
  /** Of the cement's mass in a batch, each way. */
  readonly cementPct?: number;
  /** Points of moisture from the optimum. */
  readonly moistureBelowPct?: number;
  readonly moistureAbovePct?: number;
  /** Of a material's dry mass in a batch, each way. */
  readonly sharesPct?: number;
  /** Least rammed dry density, percent of the maximum of the compaction test. */
  readonly densityPct?: number;
  /** Of the rammed depth of a lift, each way. */
  readonly liftM?: number;
  /** Where the entered values come from: the user's own words. */
  readonly basis?: string;
}

/** `tolerances`: every key may be left out. */
export const toleranceSchema = z
  .strictObject({
    cement: percent("5 %", 50).optional(),
    moisture: z.strictObject({ below: percent("1 %", 20), above: percent("1 %", 20) }).optional(),
    shares: percent("5 %", 50).optional(),
    density: percent("96 %", 105).optional(),
    lift: metres("20 mm").optional(),
    basis: text.optional(),
  })
  .transform((entry): ToleranceConfig => {
    const config: ToleranceConfig = {
      cementPct: entry.cement,
      moistureBelowPct: entry.moisture?.below,
      moistureAbovePct: entry.moisture?.above,
      sharesPct: entry.shares,
      densityPct: entry.density,
      liftM: entry.lift,
      basis: entry.basis,
    };
    // Only what was said: an entry that is there but empty would hide a default.
    return Object.fromEntries(
      Object.entries(config).filter(([, value]) => value !== undefined),
    ) as ToleranceConfig;
  });

/** The rule that lots are judged by: entered, or designed from the risks of both sides. */
export type AcceptanceConfig =
  | {
      readonly kind: "mean-less-ks";
      readonly blocks: number;
      readonly factor: number;
      /** Default the strength of the requirement. */
      readonly strengthMpa?: number;
    }
  | {
      readonly kind: "mean-and-least";
      readonly blocks: number;
      readonly meanMpa: number;
      readonly leastMpa: number;
    }
  | {
      readonly kind: "designed";
      /** Default the strength of the requirement. */
      readonly strengthMpa?: number;
      /** Shares and risks, 0 to 1. */
      readonly goodBelow: number;
      readonly poorBelow: number;
      readonly builderRisk: number;
      readonly ownerRisk: number;
    };

/** A lot is what one set of blocks speaks for. */
export type LotConfig =
  | { readonly kind: "volume"; readonly volumeM3: number }
  | { readonly kind: "days"; readonly days: number; readonly batchesADay?: number };

/** How the work is to be watched. */
export interface QualityConfig {
  readonly lot: LotConfig;
  /** Ages at which blocks of a lot are crushed; absent: that of the requirement alone. */
  readonly agesDays?: readonly number[];
  /** Expected standard deviation of site blocks; absent: that of the regression. */
  readonly scatterMpa?: number;
  readonly acceptance: AcceptanceConfig;
  /** Code, clause or engineer's value: the user's own words. */
  readonly basis: string;
  /** Blocks of a lot that are kept, to be crushed where one is spoilt. */
  readonly spareBlocks: number;
  /** Density checks a lot. */
  readonly densityChecks?: number;
  /** In the user's words; absent where not stated. */
  readonly moistureChecks?: string;
  readonly trialWall?: string;
  /** Sheet of the blocks made on site, as far as crushed. */
  readonly siteBlocks?: SheetSource;
}

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
        message: render(say`The weakest block is asked for more than the mean.`),
        params: { expected: say`least at most mean` },
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
        message: render(say`A good lot has no fewer blocks below the strength than a poor one.`),
        params: { expected: say`good-below less than poor-below` },
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
