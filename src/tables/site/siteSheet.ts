import type { CautionsBlock, ReportBlock } from "../../blocks/block.js";
import type { SiteConfig } from "../../entries/studyConfig.js";
import { CAUTIONS } from "../../guidance/cautions.js";
import type { StudyResult } from "../../study/studyResult.js";
import { say, type Text } from "../../words/message.js";
import { cautionsBlock } from "../guidance.js";
import { warning } from "../tableOf.js";

/** A page for the crew: what it is called, and what stands on it. */
export interface SiteSheet {
  /** Name of the files, without ending. */
  readonly name:
    | "bucket-card"
    | "order-list"
    | "making-and-curing-log"
    | "block-labels"
    | "moisture-check"
    | "field-tests"
    | "mix-card"
    | "trial-card"
    | "trial-blocks";
  readonly title: Text;
  readonly blocks: readonly ReportBlock[];
}

/** For cards where the hand meets wet mix only in passing. */
export const GLOVES: ReportBlock = warning(
  say`Waterproof gloves and goggles wherever a hand touches wet mix: cement burns.`,
);

/** Two cautions in short, for cards that have one page for everything in every language. */
export const CAUTIONS_IN_SHORT: ReportBlock = warning(
  say`Wet cement burns: waterproof gloves, long sleeves, goggles; rinse at once, and see a doctor for eyes. Silica dust damages lungs for good: mix damp or outdoors, with a fitted respirator. From memory: general practice.`,
);

/**
 * What the crew works with, where it is to be other than the study's `site` says. Each has a default, and
 * the sheet says where a default was used.
 */
export interface SiteOptions extends SiteConfig {}

/** What the study says of the site, with what was asked for here before it. */
export function siteOptionsOf(
  { config }: Pick<StudyResult, "config">,
  options: SiteOptions,
): SiteConfig {
  const given = Object.entries(options).filter(([, value]) => value !== undefined);
  // A mixer asked for here stands before a study that fills lifts.
  const { batchFills, ...rest } = config.site;
  const study = options.mixerVolumeL === undefined ? config.site : rest;
  return { ...study, ...Object.fromEntries(given) };
}

/**
 * The cautions that matter at one place of the work, in the order asked for.
 *
 * @throws RangeError for an id that no caution has. Source: with each caution.
 *
 * @example
 * siteCautions(["cement-burns"]).items.map(({ title }) => render(title)) // => ["Wet cement burns"]
 */
export function siteCautions(ids: readonly string[]): CautionsBlock {
  return cautionsBlock(
    ids.map((id) => {
      const caution = CAUTIONS.find((one) => one.id === id);
      if (caution) return caution;
      const known = CAUTIONS.map((one) => one.id).join(", ");
      throw new RangeError(`invalid caution: ${id}; expected one of ${known}`);
    }),
  );
}
