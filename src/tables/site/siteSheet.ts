import type { CautionsBlock, ReportBlock, TableBlock } from "../../blocks/block.js";
import type { SiteConfig } from "../../entries/studyConfig.js";
import { CAUTIONS } from "../../guidance/cautions.js";
import type { StudyResult } from "../../study/studyResult.js";
import { say, type Text } from "../../words/message.js";
import { cautionsBlock } from "../guidance.js";
import { type Optional, warning } from "../tableOf.js";
import { doubtNotes, noMix } from "../trials.js";

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

/** A page about the mix, headed by what speaks against building from it; one warning where there is none. */
export function sheetOfMix(
  name: SiteSheet["name"],
  title: Text,
  result: StudyResult,
  blocks: Optional<readonly ReportBlock[]>,
): SiteSheet {
  return { name, title, blocks: blocks ? [...doubtNotes(result), ...blocks] : [noMix()] };
}

/** Lines without a head: what to do, or who does what. */
export function pairsTable(
  caption: Text,
  rows: readonly (readonly [Text, Text])[],
  notes?: readonly Text[],
): TableBlock {
  return { kind: "table", caption, columns: [{ header: "" }, { header: "" }], rows, notes };
}

/** Lines to be filled in by hand: the first cell of each is written, the others are empty. */
export function blankLines(
  caption: Text,
  headers: readonly Text[],
  firstCells: readonly Text[],
  notes?: readonly Text[],
): TableBlock {
  return {
    kind: "table",
    caption,
    // Numbers of lifts and days too: beside them one writes to the right.
    columns: headers.map((header, column) =>
      column === 0 ? { header, align: "left" } : { header },
    ),
    rows: firstCells.map((first) => headers.map((_, column) => (column === 0 ? first : ""))),
    notes,
  };
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
