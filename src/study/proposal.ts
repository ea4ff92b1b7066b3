import type { StudyConfig } from "../entries/studyConfig.js";
import { displayUnit, displayValue, formatPlain, type UnitSystem } from "../quantities/format.js";
import { joinTexts, say, type Text } from "../words/message.js";
import type { BlendStudy, Proposal, TrialBatch, TrialStudy } from "./studyResult.js";

/** Blocks of six usual 100 mm cubes and a little over; common practice, no source. */
const FALLBACK_DRY_MASS_KG = 15;
/** Rammed dry density where nothing was compacted; common practice, no source. */
const FALLBACK_DENSITY_KG_M3 = 2000;
/** What is mixed beyond the blocks, for moisture samples and spilling; common practice, no source. */
const SPARE_PCT = 10;
/** Contents that span what is usual for walls; common practice, no source. */
const FALLBACK_CEMENT_PCT = [4, 6, 8, 10];

/**
 * The batches for test blocks of a proposed blend. How much water they take is not known before the blend
 * is compacted; none is given.
 *
 * Formula: dry mass of soil and aggregate M as entered, or volume of the form × blocks × rammed dry density
 * × 1.1 / (1 + c/100) with the density of the compaction test of `tested` as a guess of the size alone;
 * material M share/100, moist (1 + w/100) times that, cement M c/100.
 *
 * @param tested the trial whose blocks and compaction are at hand, of another blend. Source: own arithmetic;
 * spare mix and contents that were not entered are common practice, no source.
 */
export function proposal(
  { materials, site, units }: Pick<StudyConfig, "materials" | "site" | "units">,
  { shares }: Pick<BlendStudy, "shares">,
  tested: Pick<TrialStudy, "compaction" | "strength"> | undefined,
): Proposal {
  const { trial } = site;
  const used = materials.flatMap((material, index) =>
    shares[index].sharePct > 0 ? [{ ...material, sharePct: shares[index].sharePct }] : [],
  );
  const size = batchSize(trial, units, tested?.compaction?.peak?.maximumDryDensityKgM3);
  const crushed = tested?.strength?.fit.contentsPct ?? [];
  const [contents, cementBasis] = cementContents(trial?.cementPct, crushed);
  return {
    shares: used.map(({ id, name, sharePct }) => ({ id, name, sharePct })),
    batches: contents.map((cementPct): TrialBatch => {
      const dryMassKg = size.dryMassKg(cementPct);
      const lines = used.map(({ id, name, sharePct, moisturePct }) => {
        const dry = (dryMassKg * sharePct) / 100;
        const moistMassKg = moisturePct === undefined ? undefined : dry * (1 + moisturePct / 100);
        return { id, name, dryMassKg: dry, moistMassKg };
      });
      const waters = lines.flatMap(({ dryMassKg: dry, moistMassKg: moist }) =>
        moist === undefined ? [] : [moist - dry],
      );
      const isTold = waters.length === lines.length;
      return {
        cementPct,
        cementKg: (dryMassKg * cementPct) / 100,
        dryMassKg,
        materials: lines,
        waterInMaterialsKg: isTold ? waters.reduce((sum, water) => sum + water, 0) : undefined,
      };
    }),
    sizeBasis: size.basis,
    cementBasis,
  };
}

function batchSize(
  trial: StudyConfig["site"]["trial"],
  units: UnitSystem,
  testedDensityKgM3: number | undefined,
): { readonly dryMassKg: (cementPct: number) => number; readonly basis: Text } {
  if (trial?.form) {
    const { lengthM, widthM, heightM, blocks, lifts } = trial.form;
    const densityKgM3 = testedDensityKgM3 ?? FALLBACK_DENSITY_KG_M3;
    const side = (metres: number) =>
      say`${formatPlain(displayValue(1000 * metres, "depth", units), 3)} ${displayUnit("depth", units)}`;
    const solidsKg = lengthM * widthM * heightM * blocks * densityKgM3 * (1 + SPARE_PCT / 100);
    return {
      dryMassKg: (cementPct) => solidsKg / (1 + cementPct / 100),
      basis: say`${blocks}{0, plural, one { block} other { blocks}} of ${side(lengthM)} × ${side(widthM)} × ${side(heightM)}, each in ${lifts}{4, plural, one { lift} other { lifts}}, and ${SPARE_PCT} % more; their density is a guess for the size of the batch only.`,
    };
  }
  if (trial?.dryMassKg !== undefined) {
    const { dryMassKg } = trial;
    return {
      dryMassKg: () => dryMassKg,
      basis: say`The dry mass of soil and aggregate that the study asks for.`,
    };
  }
  return {
    dryMassKg: () => FALLBACK_DRY_MASS_KG,
    basis:
      units === "SI"
        ? say`Enough for six cubes of 100 mm; common practice, no source.`
        : say`Enough for four cylinders of 4 in by 8 in; common practice, no source.`,
  };
}

function cementContents(
  entered: readonly number[] | undefined,
  crushed: readonly number[],
): readonly [readonly number[], Text] {
  if (entered) return [entered, say`Cement contents as entered.`];
  if (crushed.length > 2) {
    const words = joinTexts(crushed.map((pct) => say`${formatPlain(pct, 3)} %`));
    return [crushed, say`Cement contents of the blocks made before (${words}).`];
  }
  return [FALLBACK_CEMENT_PCT, say`Four cement contents to try; common practice, no source.`];
}
