import type { FixedOrRange } from "../blend/target.js";
import type { ChecklistBlock, KeyValuesBlock, NoteBlock, TableBlock } from "../blocks/block.js";
import type { ElementConfig } from "../entries/element.js";
import type { StudyConfig, TargetConfig } from "../entries/studyConfig.js";
import { formatQuantity, type UnitSystem } from "../quantities/format.js";
import { APPENDIX_SECTIONS } from "../study/review.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import { OBJECTIVE_WORDS } from "./blend.js";
import { BLANK, depthText, fixed, numberColumn, plain, priceText } from "./cell.js";
import { statisticName } from "./strength.js";
import { listOf, note, quantityCells, tableOf } from "./tableOf.js";

/** What the study is about and what it has to meet, as the user entered it. */
export function projectTable(config: StudyConfig): KeyValuesBlock {
  const { units, elements, strength, target, cement } = config;
  const { requirement } = strength;
  const open = say`not entered yet`;
  return listOf(say`The study`, [
    [say`Place`, config.place ?? open],
    [say`Element`, elements.length > 0 ? elementsText(elements, units) : open],
    [
      say`Required strength`,
      requirement
        ? say`${formatQuantity(requirement.strengthMpa, "stress", units)} at ${requirement.ageDays} days, to be met by ${statisticName(requirement.statistic, requirement.confidence)}`
        : open,
    ],
    [say`Basis of the requirement (as entered)`, requirement?.basis ?? open],
    [say`Target grading (as entered)`, target ? targetWords(target) : open],
    [say`Cement`, cement?.name ?? open],
    [say`Date of the study`, config.date ?? open],
    [
      say`Data`,
      config.invented
        ? say`Invented for demonstration. Not to be built from.`
        : say`As given by the user.`,
    ],
  ]);
}

function targetWords(target: TargetConfig): Text {
  if (target.kind === "band") {
    return say`inside the band of the guidance; among such blends, ${OBJECTIVE_WORDS[target.objective]}`;
  }
  const words = (value: FixedOrRange) =>
    typeof value === "number"
      ? plain(value)
      : say`the best from ${plain(value.min)} to ${plain(value.max)}`;
  return say`power curve, exponent ${words(target.exponent)}, top size ${words(target.topSizeMm)} mm`;
}

/** The names of all elements. */
export function elementNames(elements: readonly ElementConfig[]): Text {
  return joinTexts(elements.map(({ name }) => name));
}

/** A label of one element, which names it where there are several. */
export function ofElement(label: Text, name: string, elements: readonly unknown[]): Text {
  return elements.length > 1 ? say`${label}, ${name}` : label;
}

/** All elements, each with its kind and measures. */
export function elementsText(elements: readonly ElementConfig[], units: UnitSystem): Text {
  return joinTexts(
    elements.map((element) => say`${element.name}: ${elementText(element, units)}`),
    "; ",
  );
}

/** The element's kind and measures in words, without its name. */
export function elementText(element: ElementConfig, units: UnitSystem): Text {
  const length = (metres: number) => formatQuantity(metres * 1000, "length", units);
  const depth = (metres: number) => depthText(metres, units);
  const high = length(element.heightM);
  if (element.kind === "pier") {
    const { section, count = 1 } = element;
    return section.shape === "round"
      ? say`${count} round piers, diameter ${depth(section.diameterM)}, ${high} high`
      : say`${count} piers of ${depth(section.widthM)} by ${depth(section.depthM)}, ${high} high`;
  }
  const thick = depth(element.thicknessM);
  const openings = openingsText(element.openings ?? [], units);
  if (element.kind === "ring") {
    const { plan } = element;
    return plan.shape === "round"
      ? say`round ring, outside diameter ${length(plan.diameterM)}, ${high} high, ${thick} thick, ${openings}`
      : say`closed ring, outside ${length(plan.lengthM)} by ${length(plan.widthM)}, ${high} high, ${thick} thick, ${openings}`;
  }
  const long = length(element.lengthM);
  return element.kind === "bench"
    ? say`bench ${long} long, ${high} high, ${thick} deep, ${openings}`
    : say`${long} long, ${high} high, ${thick} thick, ${openings}`;
}

function openingsText(
  openings: readonly {
    readonly widthM: number;
    readonly heightM: number;
    readonly count?: number;
  }[],
  units: UnitSystem,
): Text {
  if (openings.length === 0) return say`without openings`;
  const length = (metres: number) => formatQuantity(metres * 1000, "length", units);
  const list = openings.map(
    ({ count = 1, widthM, heightM }) =>
      say`${count}{0, plural, one { opening} other { openings}} of ${length(widthM)} by ${length(heightM)}`,
  );
  return joinTexts(list);
}

/** The materials as the user entered them. */
export function materialsTable({ materials, units, currency }: StudyConfig): TableBlock {
  const priced = materials.some(({ price }) => price);
  return tableOf(
    say`Materials, as entered`,
    materials,
    [
      [say`Material`, (material) => material.name],
      [say`Role`, (material) => wordFor(material.role)],
      quantityCells(say`Particle density`, "density", units, (one) => one.particleDensityKgM3, 4),
      quantityCells(
        say`Loose bulk density, dry`,
        "density",
        units,
        (one) => one.looseBulkDensityKgM3,
        4,
      ),
      [numberColumn(say`Moisture`, "%"), (material) => fixed(material.moisturePct, 1)],
      [
        numberColumn(say`Share allowed`, "%"),
        (material) => say`${plain(material.minSharePct)} to ${plain(material.maxSharePct)}`,
      ],
      priced && [
        numberColumn(say`Price`, currency),
        (material) => (material.price ? priceText(material.price.written) : BLANK),
      ],
    ],
    [say`Shares are percentages of the dry mass of all soil and aggregate, cement excluded.`],
  );
}

/** Test methods with standard and edition, as the user entered them. */
export function methodsTable({ methods }: StudyConfig): TableBlock {
  return tableOf(say`Test methods, as entered`, methods, [
    [say`Test`, ({ test }) => test],
    [say`Standard`, ({ standard }) => standard],
    [say`Edition`, ({ edition }) => edition ?? say`not stated`],
  ]);
}

/** How each material was sampled, in the user's words; a material without a statement says so. */
export function samplingTable({
  materials,
  sampling = [],
}: Pick<StudyConfig, "materials" | "sampling">): TableBlock {
  return {
    kind: "table",
    caption: say`Sampling, as entered`,
    columns: [
      { header: say`Material` },
      { header: say`Where` },
      { header: say`How` },
      numberColumn(say`Pits or heaps`),
      { header: say`Date` },
    ],
    rows: materials.flatMap(({ id, name }) => {
      const stated = sampling.filter(({ material }) => material === id);
      if (stated.length === 0) return [[name, say`not stated`, say`not stated`, BLANK, BLANK]];
      return stated.map(({ where, how, pits, date }) => [
        name,
        where,
        how,
        pits === undefined ? BLANK : String(pits),
        date ?? BLANK,
      ]);
    }),
  };
}

/** The decision log, in the order of its dates; entries of one day stay in the order of the study. */
export function decisionsTable({
  decisions = [],
}: Pick<StudyConfig, "decisions">): TableBlock | NoteBlock {
  if (decisions.length === 0) {
    return note(say`No decisions were entered.`);
  }
  // Dates as written sort as text.
  const inOrder = [...decisions].sort((a, b) => a.date.localeCompare(b.date, "en"));
  return tableOf(say`Decisions, as entered`, inOrder, [
    [say`Date`, ({ date }) => date],
    [say`Decided`, ({ what }) => what],
    [say`Because`, ({ why }) => why],
    [say`Instead of`, ({ insteadOf }) => insteadOf ?? BLANK],
  ]);
}

/** The clauses that the study lists, each with the section of the report that answers it. */
export function checklistBlock({
  checklist = [],
}: Pick<StudyConfig, "checklist">): ChecklistBlock | NoteBlock {
  if (checklist.length === 0) {
    return note(say`No clauses were entered.`);
  }
  return {
    kind: "checklist",
    caption: say`Clauses and where this report answers them`,
    items: checklist.map(({ clause, requirement, answeredBy, remark = "" }) => {
      const section = APPENDIX_SECTIONS.find(({ key }) => key === answeredBy);
      return {
        clause,
        requirement,
        remark,
        ...(answeredBy === undefined ? {} : { sectionKey: answeredBy }),
        ...(section ? { sectionTitle: section.title } : {}),
      };
    }),
  };
}
