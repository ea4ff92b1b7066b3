/** A soil or aggregate in the mix. */
export interface RecipeMaterial {
  readonly id: string;
  readonly name: string;
  /** Percent of the dry mass of all soil and aggregate, cement excluded. */
  readonly sharePct: number;
  /** Dry mass in a loose volume, as measured on dry material unless `bulkingPct` is left out. */
  readonly looseBulkDensityKgM3?: number;
  /** `default`: a general value, not measured on this material. Default `measured`. */
  readonly densityBasis?: "measured" | "default";
  /** Water in the material as it is shovelled, percent of its dry mass. */
  readonly moisturePct: number;
  /**
   * How much more room the damp material takes than the dry. Default 0: right where the density is
   * the dry mass in a loose volume of the damp material.
   */
  readonly bulkingPct?: number;
  /** Density of the grains. With it, a moisture that the loose heap could not hold is found. */
  readonly particleDensityKgM3?: number;
}

/** A layer of the element, to make in one batch. */
export interface LiftSize {
  /** Seen from above, openings left out. */
  readonly planAreaM2: number;
  /** Depth after ramming. */
  readonly compactedDepthM: number;
  /** Dry mass of all solids, cement included, in the rammed volume. */
  readonly compactedDryDensityKgM3: number;
}

export interface RecipeInput {
  readonly materials: readonly RecipeMaterial[];
  /** Percent of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  readonly cementBulkDensityKgM3?: number;
  readonly cementDensityBasis?: "measured" | "default";
  /** Moisture of the mix at ramming, percent of the dry mass named in `moistureOf`. */
  readonly targetMoisturePct: number;
  /** Default `all-solids`: a sample of the mix dried in an oven holds its cement. */
  readonly moistureOf?: "all-solids" | "soil-and-aggregate";
  /** Dry mass of soil and aggregate in a batch, cement excluded. Give this, `mixerVolumeL` or `lift`. */
  readonly batchDryMassKg?: number;
  /** Sum of the loose volumes that go in, cement included; water fills the gaps. */
  readonly mixerVolumeL?: number;
  /** The batch fills one lift. */
  readonly lift?: LiftSize;
  /** Named in findings; default `study.yaml`. */
  readonly file?: string;
}
