import { mean, median } from "simple-statistics";
import type { StudyConfig } from "../entries/studyConfig.js";
import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import { type GradingCurve, passingAtSize, sizeAtPassing } from "../grading/curve.js";
import type { SpecimenSheet } from "../lab/specimens.js";
import { formatFixed, formatQuantity, measured } from "../quantities/format.js";
import type { CompactionAnalysis, CompactionPeak } from "../soil/compaction/compactionTest.js";
import { moistureWindow } from "../soil/compaction/moistureWindow.js";
import { say, type Text } from "../words/message.js";
import { materialPlace } from "./materialIds.js";
import type { Study } from "./study.js";
import type { MaterialResult, TrialStudy } from "./studyResult.js";

/** Between the two lies sand in every system: finer than 4.75 mm, coarser than 0.063 mm. */
const SAND_MM = { min: 0.063, max: 4.75 };
/** Finer than that a grain is no gravel in any system. */
const GRAVEL_MM = 2;

/** Blocks lighter or heavier than the maximum of the compaction test by more than this, in parts of it; common practice, no source. */
const BLOCKS_TO_COMPACTION = { min: 0.9, max: 1.1 };

/**
 * What each sheet by itself may say and the sheets together may not: a material that is not what it is
 * called, one weighing under two names; lifts too deep to ram.
 */
export function plausibilityFindings(
  study: Pick<Study, "config" | "materials">,
  materials: readonly MaterialResult[],
): Finding[] {
  return [
    ...materials.flatMap((material) => roleFindings(study.config, material)),
    ...repeatedSheets(study),
    ...deepLifts(study.config),
  ];
}

/** What is found of a pair of trials is found twice, and told of the first. */
export function onceEach(findings: readonly Finding[]): Finding[] {
  const words = findings.map(({ message }) => JSON.stringify(message));
  return findings.filter((_, index) => words.indexOf(words[index]) === index);
}

/** What speaks against the blocks of a trial: another density, shape or moisture than the study tells of them. */
export function trialContradictions(
  trials: Study["trials"],
  { id, compaction, blended }: Pick<TrialStudy, "id" | "compaction" | "blended">,
): Finding[] {
  const own = trials.find(({ entry }) => entry.id === id);
  if (!own?.specimens) return [];
  const { entry, specimens } = own;
  const { file } = specimens;
  const counted = specimens.specimens.filter(({ excluded }) => !excluded);
  return [
    ...repeatedTests(trials, own),
    ...(compaction?.peak ? densitiesApart(counted, file, compaction.peak) : []),
    ...shapeFindings(entry, specimens),
    ...sizeFindings(counted, file),
    ...(blended ? stoneFindings(entry, counted, file, blended.curve) : []),
    ...strongFindings(counted, file),
    ...(compaction ? moistureFindings(entry, counted, file, compaction) : []),
  ];
}

type Blocks = SpecimenSheet["specimens"];
type Trial = Study["trials"][number];

/** Sheets of two trials under two names with the same readings: one was copied and never filled in. */
function repeatedTests(trials: readonly Trial[], own: Trial): Finding[] {
  return (["compaction", "blocks"] as const).flatMap((kind): Finding[] => {
    const [file, readings] = testReadings(own, kind);
    const other = trials.find((trial) => {
      const [name, theirs] = testReadings(trial, kind);
      return readings !== undefined && name !== file && theirs === readings;
    });
    if (!other) return [];
    const [first, second] = trials.filter((trial) => trial === own || trial === other);
    const place = { file: STUDY_FILE, column: own.entry.sheetKeys[kind], value: file };
    return [
      finding(place, "warning", "same-test-readings", {
        message: say`${testReadings(first, kind)[0]!} and ${testReadings(second, kind)[0]!} have the same readings to the last digit.`,
        expected: say`a sheet of its own for each tested blend`,
        remedy: say`Name the sheet that belongs to each trial.`,
      }),
    ];
  });
}

/** File and readings of a trial's sheet, without what names a row. */
function testReadings(
  { compaction, specimens }: Trial,
  kind: "compaction" | "blocks",
): readonly [file?: string, readings?: string] {
  if (kind === "blocks") {
    const rows = specimens?.specimens.map(({ cementPct, strengthMpa }) => [cementPct, strengthMpa]);
    return [specimens?.file, rows && JSON.stringify(rows)];
  }
  // A top that is reported alone is two rounded numbers, which two blends may share.
  if (!compaction || compaction.points.length === 0) return [];
  const points = compaction.points.map(({ row: _, ...point }) => point);
  return [compaction.file, JSON.stringify([compaction.mouldVolumeCm3, points])];
}

/** Longest to shortest side of what is still a cube; common practice, no source. */
const CUBE_SIDES = 1.1;

/** Blocks whose sides are of another shape than the study says. */
function shapeFindings(
  { shape, key }: Trial["entry"],
  { specimens, file }: SpecimenSheet,
): Finding[] {
  if (shape === undefined) return [];
  const round = shape === "cylinder";
  const place = { file: STUDY_FILE, column: `${key}.shape`, value: shape };
  const refuse = (message: Text) => [
    finding(place, "warning", "blocks-of-another-shape", {
      message,
      expected: say`the shape of the blocks that were crushed`,
      remedy: say`Correct the shape or the sheet: a tall cylinder reads weaker than a cube of the same mix.`,
    }),
  ];
  const others = specimens.filter(
    ({ diameterMm, widthMm }) => (round ? widthMm : diameterMm) !== undefined,
  );
  if (others.length > 0) {
    return refuse(
      round
        ? say`The study speaks of cylinders, and ${others.length}{0, plural, one { block} other { blocks}} of ${file} {0, plural, one {has} other {have}} a width.`
        : say`The study speaks of blocks with sides, and ${others.length}{0, plural, one { block} other { blocks}} of ${file} {0, plural, one {has} other {have}} a diameter.`,
    );
  }
  const cubes = specimens.flatMap(({ lengthMm, widthMm, heightMm }) => {
    if (lengthMm === undefined || widthMm === undefined || heightMm === undefined) return [];
    const sides = [lengthMm, widthMm, heightMm];
    return [Math.max(...sides) <= CUBE_SIDES * Math.min(...sides)];
  });
  const uneven = cubes.filter((isCube) => !isCube).length;
  if (shape === "prism" && cubes.length > 0 && uneven === 0) {
    return refuse(say`The study speaks of prisms, and the blocks of ${file} are cubes.`);
  }
  if (shape !== "cube" || uneven === 0) return [];
  return refuse(
    say`The study speaks of cubes, and ${uneven}{0, plural, one { block} other { blocks}} of ${file} {0, plural, one {has} other {have}} sides of different length.`,
  );
}

/** Sides that differ by more from the middle of their sheet are of another mould; common practice, no source. */
const SIDE_APART = 0.2;

/** Blocks that count and have a side of another length than the others of the sheet. */
function sizeFindings(blocks: Blocks, file: string): Finding[] {
  const others = SIDES.flatMap((side) => {
    const measuredOn = blocks.filter((block) => block[side] !== undefined);
    if (measuredOn.length < 3) return [];
    const middle = median(measuredOn.map((block) => block[side]!));
    return measuredOn
      .filter((block) => Math.abs(block[side]! / middle - 1) > SIDE_APART)
      .map((block) => ({ block, side: block[side]!, middle }));
  });
  if (others.length === 0) return [];
  const [{ block, side, middle }] = others;
  const count = new Set(others.map((other) => other.block.id)).size;
  const value = measured(side, "depth", 0);
  return [
    finding({ file, row: block.row, value }, "warning", "blocks-of-another-size", {
      message: say`${count}{0, plural, one { block} other { blocks}} of ${file} {0, plural, one {has} other {have}} a side of another length than the others: block ${block.id} ${value}, the others about ${measured(middle, "depth", 0)}.`,
      expected: say`sides within ${100 * SIDE_APART} % of the middle of the sheet (common practice, no source)`,
      remedy: say`Check the sides and their units; blocks of another size or shape read another strength.`,
    }),
  ];
}

const SIDES = ["lengthMm", "widthMm", "diameterMm", "heightMm"] as const;

/** Least side of a block to its largest grain, as concrete cylinders must have it; ASTM C31, from memory. */
const SIDE_TO_STONE = 3;
/** So much passes the nominal largest grain: a few larger stones are usual; common practice, no source. */
const NOMINAL_PCT = 95;

/** Blocks in which a stone of the blend would reach through a third of the side. */
function stoneFindings(
  { screenedAtMm = Infinity }: Pick<Trial["entry"], "screenedAtMm">,
  blocks: Blocks,
  file: string,
  curve: GradingCurve,
): Finding[] {
  const topMm = Math.min(sizeAtPassing(curve, NOMINAL_PCT) ?? 0, screenedAtMm);
  const small = blocks.flatMap((block) => {
    const leastMm = Math.min(...SIDES.flatMap((side) => block[side] ?? []));
    return leastMm < SIDE_TO_STONE * topMm ? [{ block, leastMm }] : [];
  });
  if (small.length === 0) return [];
  const [{ block, leastMm }] = small;
  const value = measured(leastMm, "depth", 0);
  return [
    finding({ file, row: block.row, value }, "warning", "blocks-smaller-than-stones", {
      message: say`${small.length}{0, plural, one { block} other { blocks}} of ${file} {0, plural, one {has} other {have}} a side of less than ${SIDE_TO_STONE} times the largest grain of the blend: block ${block.id} ${value}, the grain ${measured(topMm, "depth", 0)}.`,
      expected: say`at least ${SIDE_TO_STONE} times the largest grain (the rule for concrete cylinders, ASTM C31, from memory), here the size that ${NOMINAL_PCT} % of the blend passes (common practice, no source)`,
      remedy: say`Check the sides and their unit; small blocks with large stones do not show the strength of the wall.`,
    }),
  ];
}

/** Strength that even the best earth with cement does not have in its weakest block, MPa; common practice, no source. */
const VERY_STRONG_MPA = 10;

/** Blocks of which even the weakest is stronger than earth is: the unit of the strengths may be another. */
function strongFindings(blocks: Blocks, file: string): Finding[] {
  const weakestMpa = Math.min(...blocks.map(({ strengthMpa }) => strengthMpa));
  if (blocks.length === 0 || weakestMpa <= VERY_STRONG_MPA) return [];
  const value = measured(weakestMpa, "stress", 1);
  return [
    finding({ file, value }, "warning", "blocks-very-strong", {
      message: say`Even the weakest block of ${file} has ${value}: rammed earth with cement seldom has more than ${measured(VERY_STRONG_MPA, "stress")}.`,
      expected: say`${measured(1, "stress")} to ${measured(VERY_STRONG_MPA, "stress")} for earth with cement (common practice, no source)`,
      remedy: say`Check the unit of the strengths or loads in the header: 1 MPa is 10.2 kgf/cm² and 145 psi.`,
    }),
  ];
}

/** A soaked block holds more water than this part of the optimum; common practice, no source. */
const SOAKED_OF_OPTIMUM = 0.5;

/** Blocks rammed outside the range of the compaction test, or too dry at the test to have been soaked. */
function moistureFindings(
  { crushed }: Trial["entry"],
  blocks: Blocks,
  file: string,
  compaction: CompactionAnalysis,
): Finding[] {
  const { peak } = compaction;
  if (!peak) return [];
  const percent = (value: number) => say`${formatFixed(value, 1)} %`;
  const { driestPct = 0, wettestPct = Infinity } = moistureWindow(compaction) ?? {};
  const made = blocks.flatMap(({ makingMoisturePct }) => makingMoisturePct ?? []);
  const off = made.filter((pct) => pct < driestPct || pct > wettestPct);
  const minPct = SOAKED_OF_OPTIMUM * peak.optimumWaterPct;
  const tested = blocks.flatMap(({ testMoisturePct }) => testMoisturePct ?? []);
  const dry = crushed === "soaked" ? tested.filter((pct) => pct < minPct) : [];
  return [
    ...off.slice(0, 1).map((pct) =>
      finding({ file, value: percent(pct) }, "warning", "blocks-made-outside-window", {
        message: say`${off.length}{0, plural, one { block was} other { blocks were}} rammed outside the moisture range of the compaction test, ${percent(driestPct)} to ${percent(wettestPct)}.`,
        expected: say`blocks rammed as wet as the wall will be`,
        remedy: say`Check the moistures at making, or make blocks inside the range: strength depends on it.`,
      }),
    ),
    ...dry.slice(0, 1).map((pct) =>
      finding({ file, value: percent(pct) }, "warning", "blocks-too-dry-for-soaked", {
        message: say`${dry.length}{0, plural, one { block} other { blocks}} called soaked held less than ${percent(minPct)} of water when crushed.`,
        expected: say`at least ${100 * SOAKED_OF_OPTIMUM} % of the optimum of the compaction test (common practice, no source)`,
        remedy: say`Ask the laboratory in which state the blocks were crushed: dry blocks read far stronger.`,
      }),
    ),
  ];
}

/** A gravel of sand, or a sand of gravel or clay: its sheet may be another material's, or in another unit. */
function roleFindings(config: StudyConfig, { id, name, role, curve }: MaterialResult): Finding[] {
  if (role === "soil") return [];
  const finer = (sizeMm: number) => passingAtSize(curve, sizeMm);
  const under = (role === "gravel" ? finer(GRAVEL_MM) : finer(SAND_MM.min)) ?? 0;
  const over = role === "gravel" ? 100 : (finer(SAND_MM.max) ?? 100);
  if (over - under >= 50) return [];
  const place = { ...materialPlace(config, id, "role"), value: role };
  return [
    finding(place, "warning", "role-against-curve", {
      message:
        role === "gravel"
          ? say`${name} is called a gravel, and more than half of it (${formatFixed(under, 0)} %) is finer than ${GRAVEL_MM} mm.`
          : say`${name} is called a sand, and less than half of it lies between ${SAND_MM.min} and ${SAND_MM.max} mm.`,
      expected: say`the sheet of this material, its sieves in the unit of the header`,
      remedy: say`Check that the right sheet is named and its sieves are in millimetres, or correct the role.`,
    }),
  ];
}

/** Rammed depth beyond which a rammer no longer reaches the bottom of a lift; common practice, no source. */
const DEEPEST_LIFT_M = 0.2;

/** Lifts whose lower part would stay loose. */
function deepLifts({ elements, units }: StudyConfig): Finding[] {
  const depth = (metres: number) => formatQuantity(1000 * metres, "depth", units);
  return elements.flatMap(({ name, compactedLiftM }): Finding[] => {
    if (compactedLiftM <= DEEPEST_LIFT_M + 1e-9) return [];
    const place = { file: STUDY_FILE, column: "element", value: depth(compactedLiftM) };
    return [
      finding(place, "warning", "lift-too-deep", {
        message: say`${name} has lifts of ${depth(compactedLiftM)} rammed: below, earth stays loose and weaker than the blocks.`,
        expected: say`at most ${depth(DEEPEST_LIFT_M)} (common practice, no source)`,
        remedy: say`Ram thinner lifts, or show on a trial wall that the rammer reaches the bottom of each.`,
      }),
    ];
  });
}

/** The same weighings under two names. */
function repeatedSheets({ materials, config }: Pick<Study, "materials" | "config">): Finding[] {
  const readings = materials.map(({ sieve: { dryMassG, rows, panG } }) =>
    JSON.stringify([dryMassG, panG, rows.map(({ sizeMm, retainedG }) => [sizeMm, retainedG])]),
  );
  return materials.flatMap(({ config: { id, name }, sieve }, index) => {
    const earlier = readings.indexOf(readings[index]);
    if (earlier === index || sieve.massesUnknown) return [];
    const place = { ...materialPlace(config, id, "sieve"), value: sieve.file };
    return [
      finding(place, "warning", "same-readings", {
        message: say`${name} and ${materials[earlier].config.name} have the same weighings to the last digit.`,
        expected: say`a sheet of its own for each material`,
        remedy: say`Name the sheet that belongs to each.`,
      }),
    ];
  });
}

/** Blocks with a density which the compaction test could not give. */
function densitiesApart(
  blocks: Blocks,
  file: string,
  { maximumDryDensityKgM3: maxKgM3 }: CompactionPeak,
): Finding[] {
  const densities = blocks.flatMap(({ dryDensityKgM3 }) => dryDensityKgM3 ?? []);
  if (densities.length === 0) return [];
  const { min, max } = BLOCKS_TO_COMPACTION;
  const meanKgM3 = mean(densities);
  if (meanKgM3 >= min * maxKgM3 && meanKgM3 <= max * maxKgM3) return [];
  const value = measured(meanKgM3, "density", 0);
  return [
    finding({ file, value }, "warning", "blocks-against-compaction", {
      message: say`The blocks have a mean dry density of ${value}, the compaction test a maximum of ${measured(maxKgM3, "density", 0)}: one of the two sheets is wrong, or they are not of the same earth.`,
      expected: say`${100 * min} to ${formatFixed(100 * max, 0)} % of the maximum (common practice, no source)`,
      remedy: say`Check the mould's volume, the sides and masses of the blocks and the units of both sheets.`,
    }),
  ];
}
