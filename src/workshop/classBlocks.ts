import { robustness } from "../blend/robustness.js";
import type { CautionsBlock, FindingsBlock, NoteBlock, TableBlock } from "../blocks/block.js";
import type { Figure } from "../figures/figure.js";
import { guidanceBand } from "../figures/grading/band.js";
import { type ChartCurve, gradingChart } from "../figures/grading/gradingChart.js";
import { strengthChart } from "../figures/strength/strengthChart.js";
import type { Finding } from "../findings/finding.js";
import { JAR_READING_TIME } from "../grading/sedimentation/jar.js";
import { type CautionWork, cautionsFor } from "../guidance/cautions.js";
import type { GuidanceDisagreement } from "../guidance/comparison.js";
import { displayUnit, formatFixed, formatQuantity } from "../quantities/format.js";
import { blendPartsTable, blendSharesTable, bucketTable } from "../tables/blend.js";
import { BLANK, digits, fixed, numberColumn, pValueText, quantity } from "../tables/cell.js";
import { leastCementByStatisticTable } from "../tables/choices.js";
import { jarTable, sievingTable, sizesTable } from "../tables/grading.js";
import { cautionsBlock } from "../tables/guidance.js";
import { bandsTable, specimensTable } from "../tables/strength.js";
import { note, tableOf, warning } from "../tables/tableOf.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import { render } from "../words/render.js";
import { blendsTable } from "./classBlend.js";
import { JAR_TIMES_MIN } from "./classSheet.js";
import type { ClassSoil } from "./classSoil.js";
import { savingNote, savingTable, volumeMassTable, wallCarbonTable } from "./classWall.js";
import { fewerBlocks, fewerBlocksTable } from "./fewerBlocks.js";
import type { ClassDay } from "./openClass.js";
import { withFineLines } from "./readingChart.js";

/** What a cell shows where the part of the class that it speaks of is not there. */
function missing(what: Text): NoteBlock {
  return warning(what);
}

const NO_SOIL = say`There is no curve of this group yet: look at what the first cell says about its readings.`;
const NO_LESSON = say`This study does not have what the lesson needs: look at what the first cell says.`;

function withSoil<Shown>(day: ClassDay, show: (soil: ClassSoil, name: string) => Shown) {
  const { group } = day;
  return group?.soil ? show(group.soil, group.name) : missing(NO_SOIL);
}

// The jar and the sieves

/** The group's jar: for each height the least and the most mass that it can stand for. */
export function classJarTable(day: ClassDay): TableBlock | NoteBlock {
  return withSoil(day, ({ jar }, name) =>
    jar ? jarTable(name, jar) : missing(say`This group has no jar.`),
  );
}

/** The jars of all groups side by side, as shares of the settled height: one soil, several hands. */
export function classJarsTable({ groups }: ClassDay): TableBlock | NoteBlock {
  const jars = groups.flatMap(({ name, soil }) => (soil?.jar ? [{ name, jar: soil.jar }] : []));
  if (jars.length === 0) return missing(say`No group has a jar yet.`);
  const whole = (value: number) => formatFixed(value, 0);
  const shares = jars.map(({ jar }) => jar.shares.map(({ heightSharePct }) => heightSharePct));
  return {
    kind: "table",
    caption: say`The jars of all groups`,
    columns: [
      { header: say`Group` },
      numberColumn(say`Sand and gravel`, say`% of the height`),
      numberColumn(say`Silt`, say`% of the height`),
      numberColumn(say`Clay`, say`% of the height`),
    ],
    rows: [
      ...jars.map(({ name }, index) => [name, ...shares[index].map(whole)]),
      [
        say`lowest to highest`,
        ...[0, 1, 2].map((layer) => {
          const own = shares.map((share) => share[layer]);
          return say`${whole(Math.min(...own))} to ${whole(Math.max(...own))}`;
        }),
      ],
    ],
  };
}

/** The group's sieving with its balance of masses. */
export function classSievingTable(day: ClassDay): TableBlock | NoteBlock {
  return withSoil(day, ({ sieve }, name) => sievingTable(name, sieve));
}

/** What the checks say of the group's readings and of the sheet. */
export function classFindings({ findings, group }: ClassDay): FindingsBlock {
  const layers = group?.soil?.jarRecord?.layers ?? [];
  const [sand, silt, clay] = layers.map(({ timeMin }) => timeMin);
  const asOrdered =
    sand === JAR_TIMES_MIN.sand && silt === JAR_TIMES_MIN.silt && clay === JAR_TIMES_MIN.clay;
  return {
    kind: "findings",
    findings: findings.map((one) =>
      asOrdered && one.code === JAR_READING_TIME ? readAsOrdered(one) : one,
    ),
  };
}

/** A class reads its jars when its sheet says: that is a limit of the test, not a fault of the group. */
function readAsOrdered(found: Finding): Finding {
  return {
    ...found,
    severity: "note",
    remedy: say`No action needed: the class reads its jars at this time. Take the boundary at the size given here.`,
  };
}

// The curve

/** The group's curve, with lines fine enough to read a size off it within a few percent. */
export function classCurveChart(day: ClassDay): Figure | NoteBlock {
  return withSoil(day, ({ curve }, name) =>
    withFineLines(gradingChart(say`The soil of ${name}`, [{ name, curve }])),
  );
}

/** Sizes and fractions that the group's curve knows. */
export function classSizesTable(day: ClassDay): TableBlock | NoteBlock {
  return withSoil(day, ({ sizes, fractions }, name) =>
    sizesTable(render(say`What the curve says`, day.language), [{ name, sizes, fractions }]),
  );
}

// Recommendations

/** The group's curve with two recommendations as they were given. */
export function classRecommendationsChart(day: ClassDay): Figure | NoteBlock {
  const { guidance } = day;
  return withSoil(day, ({ curve }, name) => {
    const bands = SHOWN.flatMap((id) => {
      const entry = guidance?.checks.find((check) => check.entry.id === id)?.entry;
      return entry ? (guidanceBand(entry, curve) ?? []) : [];
    });
    return gradingChart(say`The soil of ${name} and two recommendations`, [{ name, curve }], bands);
  });
}

/** Two that disagree about many soils. */
const SHOWN = ["walker-2005", "keable-sazs-ars"];

/** The soil against each recommendation for rammed earth. */
export function classRecommendationsTable({ guidance }: ClassDay): TableBlock | NoteBlock {
  if (!guidance) return missing(NO_SOIL);
  return tableOf(
    say`The soil against each recommendation`,
    guidance.checks,
    [
      [say`Recommendation`, ({ entry }) => entry.title],
      [
        say`Known how`,
        ({ entry }) =>
          entry.basis === "memory"
            ? say`from memory, not read`
            : say`read, or cited in what was read`,
      ],
      [say`Verdict`, ({ verdict }) => wordFor(verdict)],
    ],
    [guidance.checks[0].caution],
  );
}

/** Where recommendations are not of one mind about this soil. */
export function classDisagreementsTable({ guidance }: ClassDay): TableBlock | NoteBlock {
  if (!guidance) return missing(NO_SOIL);
  const titleOf = (id: string) =>
    guidance.checks.find(({ entry }) => entry.id === id)?.entry.title ?? id;
  const named = ({ sides }: GuidanceDisagreement, verdict: string) =>
    joinTexts(
      sides.filter((side) => side.verdict === verdict).map(({ id }) => titleOf(id)),
      "; ",
    ) || BLANK;
  return tableOf(
    say`Where the recommendations disagree about this soil`,
    guidance.disagreements.filter(({ verdictsDiffer }) => verdictsDiffer),
    [
      [say`What`, ({ what }) => what],
      [numberColumn(say`Here`, "%"), ({ measuredPct }) => fixed(measuredPct, 1)],
      [say`Inside for`, (disagreement) => named(disagreement, "inside")],
      [say`Outside for`, (disagreement) => named(disagreement, "outside")],
    ],
  );
}

// Blending

/** The materials with the target, before anything is blended. */
export function classMaterialsChart(day: ClassDay): Figure | NoteBlock {
  const { blend, study } = day;
  if (!blend) return missing(NO_LESSON);
  return gradingChart(say`Materials and target`, [
    ...study.materials.map(({ name, curve }): ChartCurve => ({ name, curve })),
    { name: say`target`, curve: blend.targetCurve, smooth: true },
  ]);
}

/** The blend by hand step by step. */
export function classHandSteps({ blend }: ClassDay) {
  if (!blend) return missing(NO_LESSON);
  return {
    kind: "keyValues" as const,
    caption: say`By hand`,
    items: blend.byHand.steps.map((value, index) => ({ label: say`Step ${index + 1}`, value })),
  };
}

/** The blend by hand, the one by least squares, and what both aim at. */
export function classBlendsChart({ blend }: ClassDay): Figure | NoteBlock {
  if (!blend) return missing(NO_LESSON);
  return gradingChart(say`By hand, by least squares, and the target`, [
    { name: say`by hand`, curve: blend.handCurve },
    { name: say`least squares`, curve: blend.designCurve },
    { name: say`target`, curve: blend.targetCurve, smooth: true },
  ]);
}

/** Both blends size by size. */
export function classBlendsTable({ blend }: ClassDay): TableBlock | NoteBlock {
  return blend ? blendsTable(blend) : missing(NO_LESSON);
}

/** The shares that least squares found. */
export function classSharesTable({ blend, study }: ClassDay): TableBlock | NoteBlock {
  return blend ? blendSharesTable(blend.design, study.config.materials) : missing(NO_LESSON);
}

/** The shares in whole buckets. */
export function classBucketsTable({ blend }: ClassDay): TableBlock | NoteBlock {
  return blend ? blendPartsTable(blend.parts, nameIn(blend)) : missing(NO_LESSON);
}

/** What a miscount of one bucket does. */
export function classMiscountTable({ blend }: ClassDay): TableBlock | NoteBlock {
  return blend ? bucketTable(blend.changes, nameIn(blend)) : missing(NO_LESSON);
}

function nameIn({ materials, names }: NonNullable<ClassDay["blend"]>) {
  return (id: string) => names[materials.findIndex((material) => material.id === id)] ?? id;
}

/** How far a load may be off the target at any size, percentage points. */
const LOADS_BAND_PCT = 3;
const DRAWS = 4000;

/** What may vary, plus or minus, 19 times in 20: fines of the soil in points, buckets in percent. */
const LOADS = [
  { finesPct: 2, bucketsPct: 2 },
  { finesPct: 5, bucketsPct: 5 },
  { finesPct: 5, bucketsPct: 10 },
  { finesPct: 10, bucketsPct: 5 },
];

/**
 * How many loads of the blend keep within 3 points of the target at every size, when soil and buckets vary
 * as stated: no choice of shares mends loads that vary, even loads do.
 */
export function classLoadsTable({ blend, study }: ClassDay): TableBlock | NoteBlock {
  if (!blend) return missing(NO_LESSON);
  const { materials, design } = blend;
  const band = design.points.map(({ sizeMm, targetPct }) => ({
    sizeMm,
    lowPct: Math.max(0, targetPct - LOADS_BAND_PCT),
    highPct: Math.min(100, targetPct + LOADS_BAND_PCT),
  }));
  const sharesPct = design.shares.map(({ sharePct }) => sharePct);
  return {
    kind: "table",
    caption: say`The same blend when loads vary more or less`,
    columns: [
      numberColumn(say`Fines of the soil, plus or minus`, say`points`),
      numberColumn(say`Filling of the buckets, plus or minus`, "%"),
      numberColumn(say`Loads inside, of 100`),
    ],
    rows: LOADS.map(({ finesPct, bucketsPct }) => {
      const variation = materials.map(({ id }, index) => ({
        id,
        finesPlusMinusPct: index === 0 ? finesPct : 0,
        batchingPlusMinusPct: bucketsPct,
      }));
      const { seed = 1 } = study.config;
      const held = robustness({ materials, sharesPct, band, variation, draws: DRAWS, seed });
      return [String(finesPct), String(bucketsPct), fixed(100 * held.insideProbability, 0)];
    }),
    notes: [
      say`Inside: within ${LOADS_BAND_PCT} points of the target at every size. What varies, and how much, is our statement and no measurement: the numbers are no better than that.`,
    ],
  };
}

// Cement and strength

/** What is required of the blocks, in words. */
export function classRequirement({ blocks, units }: ClassDay): NoteBlock {
  if (!blocks) return missing(NO_LESSON);
  const { strengthMpa, ageDays, basis } = blocks.requirement;
  const asked = say`Required: ${formatQuantity(strengthMpa, "stress", units)} at ${ageDays} days.`;
  return note(joinTexts([asked, basis], " "));
}

/** The crushed blocks. */
export function classBlocksTable({ blocks, units }: ClassDay): TableBlock | NoteBlock {
  return blocks ? specimensTable(blocks.specimens, blocks.fit, units) : missing(NO_LESSON);
}

/** The line through the blocks, each number with what it says. */
export function classLineTable({ blocks, units }: ClassDay): TableBlock | NoteBlock {
  if (!blocks) return missing(NO_LESSON);
  const { fit, lackOfFit } = blocks;
  const unit = displayUnit("stress", units);
  const [a, b] = fit.coefficients;
  const stress = (mpa: number) => quantity(mpa, "stress", units, 3);
  return {
    kind: "table",
    caption: say`The line f = a + b c, f in ${unit} and c in percent`,
    columns: [{ header: say`Number` }, numberColumn(say`Value`), { header: say`What it says` }],
    rows: [
      [
        joinTexts(["a", unit]),
        stress(a.value),
        say`where the line would start; no block without cement was made`,
      ],
      [
        say`b, ${unit} for each percent`,
        stress(b.value),
        say`what one percent more of cement brings`,
      ],
      [
        say`p of b`,
        pValueText(b.pValue),
        say`how often blocks would lie so by chance, if cement brought nothing: small is good`,
      ],
      [
        joinTexts(["s", unit]),
        stress(fit.residualSd),
        say`how far blocks scatter about the line: two in three lie nearer than this`,
      ],
      [
        "R²",
        fixed(fit.rSquared, 2),
        say`part of the differences between blocks that goes with cement; 1 is all`,
      ],
      [
        say`p of lack of fit`,
        pValueText(lackOfFit.pValue),
        say`whether the blocks bend away from a straight line by more than like blocks differ: below 0.05 they do`,
      ],
      [
        say`blocks less coefficients`,
        digits(fit.degreesOfFreedom, 2),
        say`degrees of freedom: what is left to know the scatter from`,
      ],
    ],
  };
}

/** Blocks, line and bounds as a figure. */
export function classStrengthChart(day: ClassDay): Figure | NoteBlock {
  if (!day.blocks) return missing(NO_LESSON);
  return strengthChart(say`Strength against cement content`, day.study);
}

/** The line and its three lower bounds at each content. */
export function classBoundsTable({ blocks, study, units }: ClassDay): TableBlock | NoteBlock {
  if (!blocks || !study.strength) return missing(NO_LESSON);
  return bandsTable(study.strength.bandsAtContents, units);
}

/** The least cement by each of the three bounds. */
export function classLeastCementTable({ blocks, units }: ClassDay): TableBlock | NoteBlock {
  return blocks
    ? leastCementByStatisticTable(blocks.fit, blocks.requirement, units)
    : missing(NO_LESSON);
}

/** All ways of having only three of the blocks. */
export function classFewerBlocksTable({ blocks, units }: ClassDay): TableBlock | NoteBlock {
  if (!blocks) return missing(NO_LESSON);
  const { fit, requirement, specimens } = blocks;
  return fewerBlocksTable(fit, fewerBlocks(specimens, requirement), requirement, units);
}

// The wall

/** The wall's cement beside the concrete's. */
export function classSavingTable({ wall, units }: ClassDay): TableBlock | NoteBlock {
  return wall ? savingTable(wall, units) : missing(NO_LESSON);
}

/** What the saving would seem to be, and what it is. */
export function classSavingNote({ wall, units }: ClassDay): NoteBlock {
  if (!wall) return missing(NO_LESSON);
  return warning(savingNote(wall, units));
}

/** Carbon of both walls' cement. */
export function classCarbonTable({ wall, units }: ClassDay): TableBlock | NoteBlock {
  return wall ? wallCarbonTable(wall, units) : missing(NO_LESSON);
}

/** The recipe in buckets, by mass, with light and with heavy materials. */
export function classVolumeTable({ wall, units }: ClassDay): TableBlock | NoteBlock {
  return wall ? volumeMassTable(wall, units) : missing(NO_LESSON);
}

/** The cautions that hold for some work. */
export function classCautions(...work: readonly CautionWork[]): CautionsBlock {
  return cautionsBlock(cautionsFor(...work));
}
