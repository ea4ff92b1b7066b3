import type { Finding } from "../lab/finding.js";

export interface RecipeLine {
  readonly id: string;
  readonly name: string;
  /** Of the dry mass of soil and aggregate; for cement, the cement content. */
  readonly sharePct: number;
  /** Of the dry mass of soil, aggregate and cement. */
  readonly shareOfAllPct: number;
  readonly dryMassKg: number;
  /** What the scale shows: dry mass and the water in it. */
  readonly moistMassKg: number;
  /** As shovelled. Null without a bulk density. */
  readonly looseVolumeL: number | null;
  /** Volumes for one volume of cement. Null without all densities, or without cement. */
  readonly partsToCement: number | null;
  /** Volumes of ten in all, cement among them. Null without all densities. */
  readonly partsOfTen: number | null;
}

export interface RecipeWater {
  /** For the moisture of the mix. */
  readonly targetKg: number;
  /** Brought by the damp materials. */
  readonly inMaterialsKg: number;
  /** To pour in; a kilogram is a litre. Never below zero. */
  readonly toAddKg: number;
  /** More than wanted, already in the materials. */
  readonly surplusKg: number;
}

export interface Recipe {
  /** `incomplete`: a bulk density is missing, so there are no volumes; `too-wet`: dry the soil first. */
  readonly status: "ok" | "incomplete" | "too-wet";
  readonly message: string;
  /** Those that have a share. */
  readonly materials: readonly RecipeLine[];
  readonly cement: RecipeLine;
  readonly water: RecipeWater;
  /** Soil and aggregate, cement excluded. */
  readonly dryMassKg: number;
  /** Soil, aggregate and cement. */
  readonly dryMassWithCementKg: number;
  /** Everything with its water, as rammed. */
  readonly rammedMassKg: number;
  /** Sum of the loose volumes, cement included. */
  readonly looseVolumeL: number | null;
  /** Percent of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  /** Percent of the dry mass of soil, aggregate and cement: the same cement, another base. */
  readonly cementOfAllPct: number;
  /** Percent of the sum of loose volumes, cement included. */
  readonly cementByVolumePct: number | null;
  readonly targetMoisturePct: number;
  readonly moistureOf: "all-solids" | "soil-and-aggregate";
  readonly findings: readonly Finding[];
}
