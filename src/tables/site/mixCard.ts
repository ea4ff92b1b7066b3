import type { KeyValuesBlock, TableBlock } from "../../blocks/block.js";
import { formatQuantity } from "../../quantities/format.js";
import { specifiedMix } from "../../study/specifiedMix.js";
import type { MixStudy, StudyResult } from "../../study/studyResult.js";
import { say } from "../../words/message.js";
import { BLANK, fixed, plain } from "../cell.js";
import { noMix } from "../noMix.js";
import { liquid } from "./crewMix.js";
import { type SiteSheet, siteCautions } from "./siteSheet.js";

/**
 * The specified mix on one page: what goes into a batch, by whole parts and by scale, water, lifts, cement,
 * who must check what, and cautions. For the wall beside the mixer and the file of the official.
 *
 * It shows the mix of the study; the bucket card shows the same mix as one crew's buckets hold it.
 * Who checks what is common practice, no source; the responsible person may set it otherwise.
 *
 * @returns one warning where the study gives no mix. Source: `recipe`, `volumeParts`, `specifiedMix`.
 */
export function mixCard(result: StudyResult): SiteSheet {
  const sheet = { name: "mix-card", title: say`Mix card` } as const;
  const { mix } = result;
  if (!mix) return { ...sheet, blocks: [noMix()] };
  return {
    ...sheet,
    blocks: [
      batchTable(result, mix),
      workTable(result, mix),
      checksTable(result),
      siteCautions(["cement-burns"]),
    ],
  };
}

function batchTable({ config }: StudyResult, { recipe, parts, water }: MixStudy): TableBlock {
  const { units } = config;
  const mass = (kilograms: number) => formatQuantity(1000 * kilograms, "mass", units, 3);
  const byId = new Map(
    [...parts.materials, ...(parts.cement ? [parts.cement] : [])].map((line) => [line.id, line]),
  );
  const partsOf = (id: string) => String(byId.get(id)?.parts ?? BLANK);
  const { toAddKg } = water.window;
  return {
    kind: "table",
    caption: say`One batch of ${mass(recipe.dryMassKg)} dry soil and aggregate`,
    columns: [
      { header: say`Put in` },
      { header: say`Share`, unit: "%", align: "right" },
      { header: say`Parts, loose`, align: "right" },
      { header: say`As shovelled`, align: "right" },
    ],
    rows: [
      ...recipe.materials
        .filter(({ dryMassKg }) => dryMassKg > 0)
        .map(({ id, name, sharePct, moistMassKg }) => [
          ...[name, fixed(sharePct, 1), partsOf(id), mass(moistMassKg)],
        ]),
      [
        ...[config.cement.name, say`${plain(recipe.cementPct, 3)} on top`],
        ...[partsOf(recipe.cement.id), mass(recipe.cement.dryMassKg)],
      ],
      [say`Water, aim for`, BLANK, BLANK, liquid(toAddKg.target, units)],
    ],
  };
}

function workTable(result: StudyResult, { water, quantities }: MixStudy): KeyValuesBlock {
  const { units } = result.config;
  const depth = (metres: number) => formatQuantity(1000 * metres, "depth", units, 2);
  const { moisturePct, targetMoisturePct, toAddKg } = water.window;
  const least = specifiedMix(result).find(({ kind }) => kind === "density")?.low;
  const { looseLiftM, compactedLiftM, lifts, batches } = quantities;
  return {
    kind: "keyValues",
    caption: result.config.element.name,
    items: [
      {
        label: say`Water`,
        value: say`${liquid(toAddKg.low, units)} to ${liquid(toAddKg.high, units)}; the mix at ${fixed(moisturePct.low, 1)} to ${fixed(moisturePct.high, 1)} %, best ${fixed(targetMoisturePct, 1)} %`,
      },
      {
        label: say`Lifts`,
        value:
          looseLiftM === null
            ? say`${lifts}, each rammed to ${depth(compactedLiftM)}`
            : say`${lifts}, each spread about ${depth(looseLiftM)}, rammed to ${depth(compactedLiftM)}`,
      },
      {
        label: say`Dry density, rammed`,
        value:
          least === undefined
            ? say`least value not stated`
            : say`at least ${formatQuantity(least, "density", units, 4)}`,
      },
      { label: say`Batches`, value: say`${Math.ceil(batches)} in all` },
    ],
  };
}

function checksTable({ config, quality }: StudyResult): TableBlock {
  const blocks = quality?.blocksALot;
  return {
    kind: "table",
    caption: say`Who checks what`,
    columns: [{ header: "" }, { header: "" }],
    rows: [
      [say`Whoever mixes`, say`every batch: parts struck level, cement weighed, one colour`],
      [say`Whoever rams`, say`every lift: ball and drop, depth, time since the water went in`],
      [
        say`Site leader`,
        blocks === undefined
          ? say`every day: bags against batches, a dried sample, blocks made`
          : say`every day: bags against batches, a dried sample; every lot: ${blocks} blocks`,
      ],
      [
        say`Responsible person`,
        say`trial wall; blocks at ${config.strength.requirement.ageDays} days; what follows from a failure`,
      ],
    ],
    notes: [say`Nothing here is an approval. Local rules and the responsible person govern.`],
  };
}
