import type { ElementAmounts } from "../../batch/element.js";
import { type MeasuredForm, type MixRecord, usableForm } from "../../batch/mixRecord.js";
import type { KeyValuesBlock, TableBlock } from "../../blocks/block.js";
import { formatQuantity } from "../../quantities/format.js";
import { specifiedMix } from "../../study/specifiedMix.js";
import { type FoundRecord, recordOf } from "../../study/studyRecord.js";
import type { StudyResult } from "../../study/studyResult.js";
import { say, type Text } from "../../words/message.js";
import {
  BLANK,
  depthText,
  fixed,
  LOOSE_UNIT,
  looseVolume,
  massText,
  numberColumn,
  plain,
} from "../cell.js";
import { elementNames, ofElement } from "../studyEntries.js";
import { type ListLine, listOf, tableOf, warning } from "../tableOf.js";
import { scaleWarnings } from "./crewCards.js";
import { liquid, measureText, weighed } from "./crewMix.js";
import {
  CAUTIONS_IN_SHORT,
  pairsTable,
  type SiteOptions,
  type SiteSheet,
  sheetOfMix,
  siteOptionsOf,
} from "./siteSheet.js";

/**
 * The specified mix on one page: what goes into a batch, by whole parts and by scale, water, lifts, cement,
 * who must check what, and cautions. For the wall beside the mixer and the file of the official.
 *
 * It shows the record of the mix; the bucket card shows the same batch as the crew's buckets hold it.
 * Who checks what is common practice, no source; the responsible person may set it otherwise.
 *
 * @returns one warning where the study gives no mix. Source: `mixRecord`, `specifiedMix`.
 */
export function mixCard(result: StudyResult, options: SiteOptions = {}): SiteSheet {
  const found = recordOf(result, siteOptionsOf(result, options));
  const blocks = found && [
    ...[...weighWarning(found.record), ...scaleWarnings(found.record)].map(warning),
    batchTable(found),
    workTable(result, found),
    // Before who checks what: a longer language may need a second page.
    CAUTIONS_IN_SHORT,
    checksTable(result, found.record),
  ];
  return sheetOfMix("mix-card", say`Mix card`, result, blocks);
}

/** Whole parts, for a crew whose buckets make this mix too; where they do not, the bucket card has it weigh. */
function countedParts({ buckets, parts }: MixRecord): MeasuredForm | null {
  return usableForm(buckets) && usableForm(parts);
}

/** That nothing is measured by volume, in the sense of the bucket card. */
function weighWarning({ buckets, parts }: MixRecord): Text[] {
  const [counted, whole] = [usableForm(buckets), usableForm(parts)];
  if (counted && whole) return [];
  if (counted) {
    return [
      say`No whole parts make this mix: weigh every material, or count buckets as the bucket card says.`,
    ];
  }
  return whole
    ? [say`The buckets of this site do not make this mix: weigh every material.`]
    : [say`No whole parts make this mix: weigh every material.`];
}

function batchTable({ config, record, water }: FoundRecord): TableBlock {
  const { batch: recipe } = record;
  const parts = countedParts(record);
  const { units } = config;
  return tableOf(
    say`One batch of ${massText(recipe.dryMassKg, units)} dry soil and aggregate`,
    [
      ...recipe.materials.map((line) => ({
        id: line.id,
        name: line.name,
        share: fixed(line.sharePct, 1),
        scale: weighed(record, line, units),
      })),
      {
        id: recipe.cement.id,
        name: config.cement.name,
        share: plain(recipe.cementPct, 3),
        scale: weighed(record, recipe.cement, units),
      },
      {
        id: "water",
        name: say`Water, aim for`,
        share: BLANK,
        scale: liquid(water.window.toAddKg.target, units),
      },
    ],
    [
      [say`Put in`, ({ name }) => name],
      [numberColumn(say`Share`, "%"), ({ share }) => share],
      parts && [
        numberColumn(say`Parts of ${looseVolume(parts.size, units)} ${LOOSE_UNIT[units]}`),
        ({ id }) => measureText(parts, id),
      ],
      [numberColumn(parts ? say`Or by scale, moist` : say`Moist mass`), ({ scale }) => scale],
    ],
    [say`Cement: percent of the dry soil and aggregate, in addition to their 100 %.`],
  );
}

function workTable(result: StudyResult, { config, record, water }: FoundRecord): KeyValuesBlock {
  const { units } = config;
  const depth = (metres: number) => depthText(metres, units, 2);
  const { moisturePct, targetMoisturePct, toAddKg } = water.window;
  const minDensity = specifiedMix(result).find(({ kind }) => kind === "density")?.low;
  const { elements, batches } = record;
  return listOf(elementNames(config.elements), [
    [
      say`Water`,
      say`${liquid(toAddKg.low, units)} to ${liquid(toAddKg.high, units)}; the mix at ${fixed(moisturePct.low, 1)} to ${fixed(moisturePct.high, 1)} %, best ${fixed(targetMoisturePct, 1)} %`,
    ],
    ...elements.map(
      ({ name, amounts }): ListLine => [
        ofElement(say`Lifts`, name, elements),
        liftText(amounts, depth),
      ],
    ),
    [
      say`Dry density, rammed`,
      minDensity === undefined
        ? say`minimum not stated`
        : say`at least ${formatQuantity(minDensity, "density", units, 4)}`,
    ],
    [say`Batches`, say`${batches ?? BLANK} in all`],
  ]);
}

function liftText(
  { looseLiftM, compactedLiftM, lifts }: ElementAmounts,
  depth: (metres: number) => Text,
): Text {
  return looseLiftM === null
    ? say`${lifts}, each rammed to ${depth(compactedLiftM)}`
    : say`${lifts}, each spread about ${depth(looseLiftM)}, rammed to ${depth(compactedLiftM)}`;
}

function checksTable({ config, quality }: StudyResult, record: MixRecord): TableBlock {
  const blocks = quality?.blocksALot;
  return pairsTable(say`Who checks what`, [
    [
      say`Whoever mixes`,
      countedParts(record)
        ? say`every batch: level parts, cement weighed, evenly mixed`
        : say`every batch: every material weighed, evenly mixed`,
    ],
    [say`Whoever rams`, say`every lift: ball and drop, depth, time since the water went in`],
    [
      say`Site leader`,
      blocks === undefined
        ? say`every day: bags against batches, a dried sample, blocks made`
        : say`every day: bags against batches, a dried sample; every lot: ${blocks} blocks`,
    ],
    [
      say`Responsible person`,
      config.strength.requirement
        ? say`trial wall; blocks at ${config.strength.requirement.ageDays} days; what follows from a failure`
        : say`trial wall; blocks; what follows from a failure`,
    ],
  ]);
}
