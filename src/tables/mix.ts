import { type MeasuredForm, usableForm } from "../batch/mixRecord.js";
import type { Recipe, RecipeLine } from "../batch/recipe.js";
import type { NoteBlock, TableBlock } from "../blocks/block.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { formatQuantity, type UnitSystem } from "../quantities/format.js";
import { type SpecifiedLine, specifiedMix, type ToleranceBasis } from "../study/specifiedMix.js";
import type { MixStudy, StudyResult } from "../study/studyResult.js";
import { joinTexts, say, type Text } from "../words/message.js";
import {
  BLANK,
  depthText,
  digits,
  fixed,
  LOOSE_UNIT,
  looseVolume,
  massText,
  numberColumn,
  plain,
  quantity,
  quantityColumn,
} from "./cell.js";
import { measureText } from "./site/crewMix.js";
import { present, tableOf } from "./tableOf.js";
import { noMix } from "./trials.js";

/** Water for the dry and the wet end of what may be rammed, and where the window comes from. */
function waterNote({ water }: MixStudy, mass: (kilograms: number) => Text): Text {
  const { window, basis, fromTest } = water;
  const { low: dry, high: wet } = window.moisturePct;
  const range = say`${fixed(dry, 1)} and ${fixed(wet, 1)} %`;
  const toAdd = say`${mass(window.toAddKg.low)} to ${mass(window.toAddKg.high)}`;
  if (fromTest) {
    return say`Ram between ${range}, where the compaction test keeps ${fromTest.relativePct} % of its maximum dry density: add ${toAdd}.`;
  }
  return basis === "entered"
    ? say`Ram between ${range}, a tolerance that was entered: add ${toAdd}.`
    : say`Ram between ${range}, one point to each side as is common practice without a source: add ${toAdd}.`;
}

/** Materials whose loose volume was corrected for bulking. */
function bulkingNotes({ materials }: StudyConfig, { recipe }: MixStudy): Text[] {
  const used = materials.filter(({ id }) => recipe.materials.some((line) => line.id === id));
  const bulked = used.flatMap(({ name, bulkingPct }) =>
    bulkingPct === undefined ? [] : [say`${name} ${fixed(bulkingPct, 0)} %`],
  );
  return bulked.length === 0
    ? []
    : [
        say`Loose volumes count the bulking of damp material over dry: ${joinTexts(bulked)}. It changes with moisture: repeat the flooding test when the heap is damper or drier.`,
      ];
}

/** One batch: by dry mass, by moist mass, by loose volume, and in whole parts with the size of a part. */
export function recipeTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return noMix();
  const { units } = config;
  const { batch: recipe, parts } = mix.record;
  const mass = (kilograms: number) => quantity(1000 * kilograms, "mass", units);
  const withUnit = (kilograms: number) => massText(kilograms, units);
  const row = (line: RecipeLine, share: Text) => [
    line.name,
    share,
    mass(line.dryMassKg),
    mass(line.moistMassKg),
    looseVolume(line.looseVolumeL, units),
    digits(line.partsToCement),
    measureText(usableForm(parts), line.id),
  ];
  const { water } = recipe;
  return {
    kind: "table",
    caption: say`One batch of ${massText(recipe.dryMassKg, units)} dry soil and aggregate`,
    columns: [
      { header: say`Material` },
      numberColumn(say`Share of dry mass`, "%"),
      quantityColumn(say`Dry mass`, "mass", units),
      quantityColumn(say`Moist mass`, "mass", units),
      numberColumn(say`Loose volume`, LOOSE_UNIT[units]),
      numberColumn(say`Volumes to one of cement`),
      numberColumn(say`Whole parts by volume`),
    ],
    rows: [
      ...recipe.materials.map((line) => row(line, fixed(line.sharePct, 1))),
      row(recipe.cement, say`${plain(recipe.cementPct)} (of dry mass)`),
      [
        say`Water to add`,
        BLANK,
        BLANK,
        mass(water.toAddKg),
        looseVolume(water.toAddKg, units),
        BLANK,
        BLANK,
      ],
    ],
    notes: present([
      say`Shares are percentages of the dry mass of soil and aggregate; cement is a percentage of that mass, in addition to the 100 %. Cement is ${fixed(recipe.cementOfAllPct, 1)} % of all dry mass and ${fixed(recipe.cementByVolumePct, 1)} % of the loose volumes.`,
      config.specified?.moisturePct === undefined
        ? say`Water for ${fixed(recipe.targetMoisturePct, 1)} % of the dry mass of all solids, the optimum of the compaction test; the damp materials bring ${withUnit(water.inMaterialsKg)} of it.`
        : say`Water for ${fixed(recipe.targetMoisturePct, 1)} % of the dry mass of all solids, as it was set by hand; the damp materials bring ${withUnit(water.inMaterialsKg)} of it.`,
      waterNote(mix, withUnit),
      ...bulkingNotes(config, mix),
      mix.record.askedDryMassKg - recipe.dryMassKg > 1e-9 * recipe.dryMassKg &&
        say`Of the ${withUnit(mix.record.askedDryMassKg)} asked for, the batch is what whole buckets of soil and aggregate hold; cards, log and order list are of this batch.`,
      ...(parts ? [partsNote(parts, recipe, units)] : mix.record.messages),
    ]),
  };
}

/** What whole parts hold, how large one is, and whether they may be used. */
function partsNote(parts: MeasuredForm, { cementPct }: Recipe, units: UnitSystem): Text {
  const { cement, size, message, withinTolerance } = parts;
  const held =
    cement === null || cement.measure === null
      ? undefined
      : say`These parts hold ${fixed(cement.sharePct, 1)} % cement by dry mass of soil and aggregate; the recipe asks for ${cementPct} %.`;
  return joinTexts(
    [
      say`Whole parts: ${message}`,
      held,
      withinTolerance
        ? say`One part of this batch is about ${looseVolume(size, units)} ${LOOSE_UNIT[units]}.`
        : undefined,
    ],
    " ",
  );
}

const BASIS: Readonly<Record<ToleranceBasis, Text>> = {
  entered: say`as entered`,
  "batching variation": say`the batching variation entered for the material`,
  "compaction test": say`window of the compaction test`,
  "lightest block": say`the lightest block that the strengths rest on`,
  "least cement": say`never below the least content that meets the requirement; above, common practice, no source`,
  "common practice": say`default; common practice, no source`,
};

/** How each line is checked on site; common practice, no source. */
const CHECK: Readonly<Record<SpecifiedLine["kind"], Text>> = {
  share: say`count buckets struck level, or weigh; correct the heap's moisture`,
  cement: say`weigh each batch; at the day's end, bags used against batches made`,
  moisture: say`ball and drop before each lift; dry a sample each day`,
  density: say`core or ring cut from a rammed lift, or a block rammed the same way, weighed dry`,
  lift: say`marks on the form, read after ramming`,
};

/** The mix: each value with its tolerance, how it is checked on site, and its basis. */
export function toleranceTable(
  result: Pick<StudyResult, "config" | "mix" | "compaction" | "strength">,
): TableBlock | NoteBlock {
  const lines = specifiedMix(result);
  if (lines.length === 0) return noMix();
  const { units, tolerances } = result.config;
  return tableOf(
    say`Mix and tolerances`,
    lines,
    [
      [say`Item`, (line) => lineName(line)],
      [numberColumn(say`Value`), (line) => amount(line, line.value, units)],
      [numberColumn(say`From`), (line) => amount(line, lowEnd(line), units)],
      [numberColumn(say`To`), (line) => amount(line, line.high, units)],
      [say`Checked on site by`, (line) => CHECK[line.kind]],
      [say`Basis`, (line) => basisText(line)],
    ],
    [
      say`Shares and cement are percentages of the dry mass of soil and aggregate, moisture of the dry mass of all solids. Ways of checking are common practice, no source.`,
      tolerances?.basis ? say`Basis of what was entered: ${tolerances.basis}` : undefined,
      lines.some(({ basis }) => basis === "lightest block") &&
        say`No wall lighter than the lightest block was tested for strength; a minimum density from a code or from the engineer stands before this one.`,
    ],
  );
}

/** Where a line comes from; of the density both the value and its least, which have two origins. */
function basisText(line: SpecifiedLine): Text {
  return line.valueBasis === undefined
    ? BASIS[line.basis]
    : say`value: ${line.valueBasis}; least: ${leastDensityBasis(line)}`;
}

function leastDensityBasis({ basis, lowOfMaximumPct }: SpecifiedLine): Text {
  return lowOfMaximumPct === undefined
    ? BASIS[basis]
    : say`${plain(lowOfMaximumPct)} % of the maximum of the compaction test, ${BASIS[basis]}`;
}

/** The rammed density in one sentence: the value and the least of it, each with where it comes from. */
export function rammedDensityText(line: SpecifiedLine, units: UnitSystem): Text {
  const value = amount(line, line.value, units);
  const known = line.valueBasis === undefined ? value : say`${value}: ${line.valueBasis}`;
  if (line.low === undefined) return known;
  return say`${known}; at least ${amount(line, line.low, units)}: ${leastDensityBasis(line)}`;
}

function lineName({ kind, name = "" }: SpecifiedLine): Text {
  switch (kind) {
    case "share":
    case "cement":
      return name;
    case "moisture":
      return say`Moisture at compaction`;
    case "density":
      return say`Dry density, rammed`;
    case "lift":
      return name === "" ? say`Compacted lift thickness` : say`Compacted lift thickness, ${name}`;
  }
}

/** The least cement is rounded up: a printed figure below it would let too little in. */
function lowEnd({ kind, low }: SpecifiedLine): number | undefined {
  return kind === "cement" && low !== undefined ? Math.ceil(100 * low - 1e-9) / 100 : low;
}

/** Text of one end, or a dash where nothing bounds it. */
function amount({ kind }: SpecifiedLine, value: number | undefined, units: UnitSystem): Text {
  if (value === undefined) return BLANK;
  if (kind === "density") return formatQuantity(value, "density", units, 4);
  if (kind === "lift") return depthText(value, units);
  return say`${fixed(value, kind === "cement" ? 2 : 1)} %`;
}
