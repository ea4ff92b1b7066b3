import { type Finding, finding, findingIf, STUDY_FILE } from "../findings/finding.js";
import { checkNotNegative, checkPositive, checkThat } from "../quantities/checkNumber.js";
import { formatFixed, measured } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";

/** A soil or aggregate in the mix. */
export interface RecipeMaterial {
  readonly id: string;
  readonly name: Text;
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

export interface RecipeInput {
  readonly materials: readonly RecipeMaterial[];
  /** Percent of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  readonly cementBulkDensityKgM3?: number;
  readonly cementDensityBasis?: "measured" | "default";
  /** Moisture of the mix at ramming, percent of the dry mass named in `moistureOf`. */
  readonly targetMoisturePct: number;
  /** The wettest that the mix may be rammed, on the same base; default the target. Heaps above it are too wet. */
  readonly wettestMoisturePct?: number;
  /** Default `all-solids`: a sample of the mix dried in an oven holds its cement. */
  readonly moistureOf?: "all-solids" | "soil-and-aggregate";
  /** Dry mass of soil and aggregate in a batch, cement excluded. Give this or `mixerVolumeL`. */
  readonly batchDryMassKg?: number;
  /** Sum of the loose volumes that go in, cement included; water fills the gaps. */
  readonly mixerVolumeL?: number;
}

export interface RecipeLine {
  readonly id: string;
  readonly name: Text;
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
  /** More than the target wants, already in the materials; within `wettestMoisturePct` the mix may be rammed so. */
  readonly surplusKg: number;
}

export interface Recipe {
  /** `incomplete`: a bulk density is missing, so there are no volumes; `too-wet`: dry the soil first. */
  readonly status: "ok" | "incomplete" | "too-wet";
  readonly message: Text;
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

/** What is weighed out where the batch size cannot be found for want of a density. */
const FALLBACK_DRY_MASS_KG = 100;

/**
 * Turns shares and a cement content into a batch: dry and moist masses, loose volumes, parts, water.
 *
 * Formulas, for dry mass M of soil and aggregate: material M share/100; cement M c/100 (cement is not
 * part of M); moist mass = dry mass (1 + w/100); loose volume = dry mass / bulk density × (1 + bulking/100);
 * water to add = target moisture of the solids − water in the materials. Cement is taken as dry. A
 * material whose share is zero is not in the recipe.
 *
 * Missing densities leave volumes null with a finding, never a silent value. With `mixerVolumeL` and a
 * missing density the recipe is for 100 kg, status `incomplete`.
 *
 * @throws RangeError for a share, density, moisture or size out of range, or shares that do not sum to
 * 100 ± 0.05 (they are scaled to 100 within it); TypeError where not just one batch size (dry mass or
 * mixer volume) is given.
 * Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 70, looseBulkDensityKgM3: 1200, moisturePct: 6 }, { id: "sand", name: "Sand", sharePct: 30, looseBulkDensityKgM3: 1500, moisturePct: 4 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 100 });
 * batch.materials.map(({ moistMassKg }) => moistMassKg) // => [74.2, 31.2]
 * [batch.cement.dryMassKg, batch.water.toAddKg] // => [8, 5.4]
 * batch.materials.map(({ partsToCement }) => partsToCement) // => [8.75, 3]
 */
export function recipe(input: RecipeInput): Recipe {
  checkRecipeInput(input);
  const { cementPct, cementBulkDensityKgM3, targetMoisturePct, moistureOf = "all-solids" } = input;
  const used = input.materials.filter(({ sharePct }) => sharePct > 0);
  const total = used.reduce((sum, { sharePct }) => sum + sharePct, 0);
  // Shares of the dry soil and aggregate, and litres in a batch with 1 kg of it; the cement last.
  const parts = [
    ...used.map((material) => ({ ...material, share: material.sharePct / total })),
    {
      id: "cement",
      name: say`Cement`,
      share: cementPct / 100,
      moisturePct: 0,
      looseBulkDensityKgM3: cementBulkDensityKgM3,
      bulkingPct: 0,
    },
  ].map((part) => ({ ...part, litres: litresOf(part.share, part) }));
  const unitVolumeL = parts.some(({ litres }) => litres === null)
    ? null
    : parts.reduce((sum, { litres }) => sum + litres!, 0);
  const fullMixerKg =
    unitVolumeL === null ? FALLBACK_DRY_MASS_KG : input.mixerVolumeL! / unitVolumeL;
  const dryMassKg = input.batchDryMassKg ?? fullMixerKg;
  const allSolids = 1 + cementPct / 100;
  const cementLitres = parts[used.length].litres;
  const lines = parts.map(
    ({ id, name, share, moisturePct, litres }): RecipeLine => ({
      id,
      name,
      sharePct: 100 * share,
      shareOfAllPct: (100 * share) / allSolids,
      dryMassKg: dryMassKg * share,
      moistMassKg: dryMassKg * share * (1 + moisturePct / 100),
      looseVolumeL: litres === null ? null : dryMassKg * litres,
      partsToCement: unitVolumeL !== null && cementLitres ? litres! / cementLitres : null,
      partsOfTen: unitVolumeL === null ? null : (10 * litres!) / unitVolumeL,
    }),
  );
  const [materials, [cement]] = [lines.slice(0, used.length), lines.slice(used.length)];
  const inMaterialsKg = materials.reduce((sum, part) => sum + part.moistMassKg - part.dryMassKg, 0);
  const solidsKg = dryMassKg * (moistureOf === "all-solids" ? allSolids : 1);
  const targetKg = (solidsKg * targetMoisturePct) / 100;
  const surplusKg = Math.max(0, inMaterialsKg - targetKg);
  const { wettestMoisturePct: wettestPct = targetMoisturePct } = input;
  const tooMuchKg = inMaterialsKg - (solidsKg * Math.max(wettestPct, targetMoisturePct)) / 100;
  // A surplus below a gram in a tonne is rounding, not wet soil.
  const wet = tooMuchKg > 1e-6 * dryMassKg;
  const status = statusOf(unitVolumeL !== null, wet);
  const toAddKg = Math.max(0, targetKg - inMaterialsKg);
  return {
    status,
    message: messageOf(status, input),
    materials,
    cement,
    water: { targetKg, inMaterialsKg, toAddKg, surplusKg },
    dryMassKg,
    dryMassWithCementKg: dryMassKg * allSolids,
    rammedMassKg: dryMassKg * allSolids + Math.max(targetKg, inMaterialsKg),
    looseVolumeL: unitVolumeL === null ? null : dryMassKg * unitVolumeL,
    cementPct,
    cementOfAllPct: cementPct / allSolids,
    cementByVolumePct: unitVolumeL === null ? null : (100 * cementLitres!) / unitVolumeL,
    targetMoisturePct,
    moistureOf,
    findings: [
      ...densityFindings(input),
      ...moistureFindings(input),
      ...(wet ? [tooWetFinding(input, tooMuchKg, (100 * inMaterialsKg) / solidsKg)] : []),
    ],
  };
}

/** Everything that goes into the mixer but water: the materials, then the cement where there is any. */
export function usedLines({ materials, cement }: Recipe): RecipeLine[] {
  return [...materials, cement].filter(({ dryMassKg }) => dryMassKg > 0);
}

/** Loose volume of a dry mass; null without a density. */
function litresOf(
  dryMassKg: number,
  { looseBulkDensityKgM3, bulkingPct = 0 }: Partial<RecipeMaterial>,
): number | null {
  if (dryMassKg === 0) return 0;
  if (looseBulkDensityKgM3 === undefined) return null;
  return dryMassKg * ((1000 / looseBulkDensityKgM3) * (1 + bulkingPct / 100));
}

function statusOf(volumesKnown: boolean, wet: boolean): Recipe["status"] {
  if (!volumesKnown) return "incomplete";
  return wet ? "too-wet" : "ok";
}

function messageOf(status: Recipe["status"], { cementPct, mixerVolumeL }: RecipeInput): Text {
  if (status === "too-wet") return say`The materials are wetter than the mix may be: dry the soil.`;
  if (status === "ok") {
    return say`Cement ${cementPct} % of the dry mass of soil and aggregate, cement not counted in that mass.`;
  }
  return mixerVolumeL === undefined
    ? say`A loose bulk density is missing, so volumes are not given.`
    : say`A loose bulk density is missing, so volumes are not given. The mixer's volume cannot be used; masses are for ${FALLBACK_DRY_MASS_KG} kg of dry soil and aggregate.`;
}

function tooWetFinding(input: RecipeInput, tooMuchKg: number, presentPct: number): Finding {
  const { targetMoisturePct, wettestMoisturePct = targetMoisturePct } = input;
  const value = say`${formatFixed(presentPct, 1)} %`;
  return finding({ file: STUDY_FILE, column: "materials", value }, "error", "materials-too-wet", {
    message: say`The materials bring more water than the mix may have: ${formatFixed(tooMuchKg, 1)} kg too much in this batch.`,
    expected: say`at most ${formatFixed(wettestMoisturePct, 1)} % moisture`,
    remedy: say`Dry the soil before mixing, cover the heaps, and measure the moisture again.`,
  });
}

/** Shares written with two decimals still count as adding up. */
const SHARE_TOLERANCE = 0.05;

/** Refuses a recipe that no batch could have, naming the entry. */
function checkRecipeInput(input: RecipeInput): void {
  const { materials, cementPct, targetMoisturePct, batchDryMassKg, mixerVolumeL } = input;
  checkThat(materials.length > 0, { materials: "[]" }, "at least one");
  const ids = new Set(["cement"]);
  materials.forEach((material, index) => {
    const { id, sharePct, moisturePct, bulkingPct = 0 } = material;
    const name = `materials[${index}]`;
    checkThat(!ids.has(id), { [`${name}.id`]: id }, 'a name of its own, not "cement"');
    ids.add(id);
    checkNotNegative(`${name}.sharePct`, sharePct);
    checkNotNegative(`${name}.moisturePct`, moisturePct);
    checkNotNegative(`${name}.bulkingPct`, bulkingPct);
    checkIfGiven(`${name}.looseBulkDensityKgM3`, material.looseBulkDensityKgM3);
    checkIfGiven(`${name}.particleDensityKgM3`, material.particleDensityKgM3);
  });
  const total = materials.reduce((sum, { sharePct }) => sum + sharePct, 0);
  if (Math.abs(total - 100) > SHARE_TOLERANCE) {
    throw new RangeError(`invalid \`materials\` shares: sum ${total}; expected 100`);
  }
  checkNotNegative("cementPct", cementPct);
  checkNotNegative("targetMoisturePct", targetMoisturePct);
  checkIfGiven("cementBulkDensityKgM3", input.cementBulkDensityKgM3);
  if ((batchDryMassKg === undefined) === (mixerVolumeL === undefined)) {
    throw new TypeError(
      `invalid batch size: batchDryMassKg ${batchDryMassKg}, mixerVolumeL ${mixerVolumeL}; expected one of the two`,
    );
  }
  checkIfGiven("batchDryMassKg", batchDryMassKg);
  checkIfGiven("mixerVolumeL", mixerVolumeL);
}

function checkIfGiven(name: string, value: number | undefined): void {
  if (value !== undefined) checkPositive(name, value);
}

/** Names each bulk density that is missing, or is a general value and not a measured one. */
function densityFindings(input: RecipeInput): Finding[] {
  const { cementPct, cementBulkDensityKgM3, cementDensityBasis } = input;
  const used = input.materials.filter(({ sharePct }) => sharePct > 0);
  return [
    ...used.flatMap(({ id, name, looseBulkDensityKgM3, densityBasis }) =>
      densityFinding(`materials.${id}`, name, looseBulkDensityKgM3, densityBasis),
    ),
    ...(cementPct > 0
      ? densityFinding("cement", say`The cement`, cementBulkDensityKgM3, cementDensityBasis)
      : []),
  ];
}

function densityFinding(
  entry: string,
  name: Text,
  densityKgM3: number | undefined,
  basis: RecipeMaterial["densityBasis"],
): Finding[] {
  const place = { file: STUDY_FILE, column: `${entry}.loose-bulk-density` };
  const expected = say`a loose bulk density measured on this material`;
  const remedy = say`Fill a bucket of known volume loosely, weigh it, and take off the water.`;
  if (densityKgM3 === undefined) {
    const message = say`${name} has no loose bulk density, so its volume is not known.`;
    return [finding(place, "error", "bulk-density-missing", { message, expected, remedy })];
  }
  const general = { ...place, value: `${densityKgM3} kg/m³` };
  return findingIf(basis === "default", general, "warning", "bulk-density-default", {
    message: say`${name}: the loose bulk density is a general value; volumes may be off by a fifth or more.`,
    expected,
    remedy,
  });
}

/** Names each material said to hold more water than its pores have room for. */
function moistureFindings({ materials }: RecipeInput): Finding[] {
  return materials.flatMap((material): Finding[] => {
    const { id, name, looseBulkDensityKgM3, particleDensityKgM3, moisturePct } = material;
    if (looseBulkDensityKgM3 === undefined || particleDensityKgM3 === undefined) return [];
    if (looseBulkDensityKgM3 >= particleDensityKgM3) {
      const column = `materials.${id}.loose-bulk-density`;
      const place = { file: STUDY_FILE, column, value: `${looseBulkDensityKgM3} kg/m³` };
      return [
        finding(place, "error", "bulk-density-over-particle", {
          message: say`${name}: the loose heap is as dense as its grains or denser.`,
          expected: say`below ${measured(particleDensityKgM3, "density")}, the density of the grains`,
          remedy: say`Check both densities and their units.`,
        }),
      ];
    }
    const fullPct = saturationMoisturePct(looseBulkDensityKgM3, particleDensityKgM3);
    const column = `materials.${id}.moisture`;
    const place = { file: STUDY_FILE, column, value: `${moisturePct} %` };
    return findingIf(moisturePct > fullPct, place, "error", "moisture-over-saturation", {
      message: say`${name}: all pores of the loose heap are full at ${formatFixed(fullPct, 1)} % of the dry mass, so it cannot hold ${moisturePct} %.`,
      expected: say`at most ${formatFixed(fullPct, 1)} %`,
      remedy: say`Check that the moisture is a percentage of the dry mass, and measure it again on a drained sample.`,
    });
  });
}

const WATER_KG_M3 = 1000;

/**
 * The moisture at which all pores of a material are full of water, percent of its dry mass.
 *
 * Formula: w = 100 ρw (1/ρd − 1/ρs), with water at 1000 kg/m³.
 *
 * @param dryDensityKgM3 dry mass in the volume, loose or rammed, below the particle density.
 * @throws RangeError for a density not above 0, or a dry density above the particle density. Source:
 * phase relation, own arithmetic.
 *
 * @example
 * saturationMoisturePct(1900, 2650) // => 14.90
 */
export function saturationMoisturePct(dryDensityKgM3: number, particleDensityKgM3: number): number {
  checkPositive("dryDensityKgM3", dryDensityKgM3);
  checkPositive("particleDensityKgM3", particleDensityKgM3);
  const expected = `at most the particle density ${particleDensityKgM3}`;
  checkThat(dryDensityKgM3 <= particleDensityKgM3, { dryDensityKgM3 }, expected);
  return 100 * WATER_KG_M3 * (1 / dryDensityKgM3 - 1 / particleDensityKgM3);
}
