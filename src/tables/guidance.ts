import { type BandPart, type BandState, bandStates } from "../blend/band.js";
import type { CautionsBlock, TableBlock } from "../blocks/block.js";
import type { GradingCurve } from "../grading/curve.js";
import { CAUTIONS, type Caution } from "../guidance/cautions.js";
import { type GuidanceComparison, recommendedRange } from "../guidance/comparison.js";
import { type GuidanceEntry, shortSource, sourceMark } from "../guidance/entry.js";
import { envelopeRemarks, gradingEnvelope } from "../guidance/envelope.js";
import { probabilityPercent } from "../guidance/probability.js";
import { displayUnit, displayValue, type UnitSystem } from "../quantities/format.js";
import { testedChemistry } from "../study/guidance.js";
import type { GuidanceStudy, StudyResult } from "../study/studyResult.js";
import { testedAnotherBlend } from "../study/trials.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import { BLANK, fixed, numberColumn, plain } from "./cell.js";
import { entriesOf, entrySource } from "./references.js";
import { present, tableOf } from "./tableOf.js";

/**
 * A table for each entry that the study is held against.
 *
 * @param units of densities; default SI.
 */
export function guidanceTables(
  guidance: readonly GuidanceStudy[],
  units: UnitSystem = "SI",
): TableBlock[] {
  return entriesOf(guidance.map(({ check }) => check)).map(({ id }) =>
    guidanceTable(
      guidance.filter(({ check }) => check.entry.id === id),
      units,
    ),
  );
}

/** The soils and the blend against one recommendation, criterion by criterion, with the confidence of each verdict. */
function guidanceTable(guidance: readonly GuidanceStudy[], units: UnitSystem): TableBlock {
  const [{ check, probability }] = guidance;
  const { entry } = check;
  return {
    kind: "table",
    caption: say`Against guidance: ${entry.title}`,
    columns: [
      { header: say`Curve` },
      { header: say`Criterion` },
      numberColumn(say`Recommended`),
      numberColumn(say`Measured`),
      { header: say`Verdict` },
      { header: say`Confidence (reading errors only)` },
    ],
    rows: guidance.flatMap((each) => [...criteriaRows(each), ...otherRows(each, units)]),
    notes: present([
      say`${entrySource(entry)} (${sourceMark(entry)}).`,
      !entry.own && entry.notes,
      WRITTEN_FOR[entry.material],
      check.honesty,
      ...guidance.map(
        ({ name, check: { verdict }, probability: { text } }) =>
          say`${name}, all criteria together: ${wordFor(verdict)}. ${text}`,
      ),
      say`Confidence: the share of ${probability.draws} curves, drawn again within the stated reading errors, that get the same verdict; consistency limits are drawn within their 95 % intervals, a blend at its shares as designed. It does not cover how well the samples represent the deposit, errors of batching, or fines below the finest sieve of a material without a sedimentation test.`,
      check.caution,
    ]),
  };
}

function criteriaRows({ name, check: { entry, criteria }, probability }: GuidanceStudy): Text[][] {
  return criteria.flatMap(({ kind, what, lowPct, highPct, measuredPct, verdict, byPct }, index) => {
    // The points of passing are the fractions added up: shown in the figure, not twice here.
    if (entry.derived && kind === "passing") return [];
    const measured = measuredPct === undefined ? BLANK : say`${fixed(measuredPct, 1)} %`;
    return [
      [
        name,
        what,
        limitsText(lowPct, highPct, "%", 1),
        measured,
        verdict === "outside" && byPct !== undefined
          ? say`outside by ${fixed(byPct, 1)} points`
          : wordFor(verdict),
        verdict === "not measured" ? BLANK : percentOf(probability.criteria[index].probability),
      ],
    ];
  });
}

/** Organic matter, salts, top size and density: shown where they are limited, tested or not. */
function otherRows(
  { name, check: { others = [] }, probability }: GuidanceStudy,
  units: UnitSystem,
): Text[][] {
  return others.map(({ what, unit: own, min: low, max: high, measured: found, verdict }, index) => {
    const isDensity = own === "kg/m³";
    const unit = isDensity ? displayUnit("density", units) : own;
    const shown = (value: number | undefined) =>
      isDensity && value !== undefined ? displayValue(value, "density", units) : value;
    const [min, max, measured] = [low, high, found].map(shown);
    const likely = probability.others?.[index].probability;
    const decimals = isDensity && units === "SI" ? 0 : 1;
    return [
      name,
      what,
      limitsText(min, max, unit, decimals),
      measured === undefined ? BLANK : say`${fixed(measured, decimals)} ${unit}`,
      verdict === "not measured" ? say`not tested` : wordFor(verdict),
      verdict === "not measured" || likely === undefined ? BLANK : percentOf(likely),
    ];
  });
}

function percentOf(probability: number): Text {
  return say`${probabilityPercent(probability)} %`;
}

/** What an entry was written for, where that is not a wall with cement. */
const WRITTEN_FOR: { readonly [material in GuidanceEntry["material"]]?: Text } = {
  "rammed-earth": say`Written for rammed earth without cement; where cement is added, its limits are a guide to the soil only.`,
  "road-base": say`Written for road bases, not for walls.`,
  "compressed-block": say`Written for compressed blocks, not for rammed walls.`,
  "soil-cement": say`Written for soil-cement in pavements and dams, not for walls.`,
};

function limitsText(
  low: number | undefined,
  high: number | undefined,
  unit: string,
  decimals: number,
): Text {
  if (low === undefined) {
    return high === undefined ? BLANK : say`at most ${fixed(high, decimals)} ${unit}`;
  }
  return high === undefined
    ? say`at least ${fixed(low, decimals)} ${unit}`
    : say`${fixed(low, decimals)} to ${fixed(high, decimals)} ${unit}`;
}

/**
 * At which sizes the blend leaves each envelope that the study is held against, by how many points, and
 * which material causes it; without a blend the same of each soil. An entry that limits no passing, or the
 * passing of sizes that the curve does not reach, has no table.
 *
 * @param entries default those of the study's guidance.
 */
export function envelopeTables(
  result: Pick<StudyResult, "materials" | "blend" | "guidance">,
  entries: readonly GuidanceEntry[] = entriesOf((result.guidance ?? []).map(({ check }) => check)),
): TableBlock[] {
  const { materials, blend } = result;
  const curves: PartedCurve[] = blend
    ? [
        {
          name: say`Blend`,
          curve: blend.curve,
          parts: materials.map(({ name, curve }, index) => ({
            name,
            curve,
            sharePct: blend.shares[index].sharePct,
          })),
        },
      ]
    : materials
        .filter(({ role }) => role === "soil")
        .map(({ name, curve }) => ({ name, curve, parts: [{ name, curve, sharePct: 100 }] }));
  return entries.flatMap((entry): TableBlock[] => {
    const states = curves.flatMap(({ name, parts, curve }) => {
      const points = gradingEnvelope(entry, curve)?.points ?? [];
      const measured = points.filter(
        ({ sizeMm }) => sizeMm >= curve.points[0].sizeMm && sizeMm !== entry.ofPassingMm,
      );
      return bandStates(parts, measured).map((state) => ({ name, state }));
    });
    return states.length > 0 ? [envelopeTable(entry, states, blend !== undefined)] : [];
  });
}

interface PartedCurve {
  readonly name: Text;
  readonly curve: GradingCurve;
  readonly parts: readonly BandPart[];
}

function envelopeTable(
  entry: GuidanceEntry,
  states: readonly { readonly name: Text; readonly state: BandState }[],
  isBlend: boolean,
): TableBlock {
  // Of an envelope sheet the mark says all.
  const remarks = entry.own && !entry.power ? [] : envelopeRemarks(entry);
  return tableOf(
    isBlend
      ? say`The blend against the envelope of ${shortSource(entry)}`
      : say`The soil against the envelope of ${shortSource(entry)}`,
    states,
    [
      [say`Curve`, ({ name }) => name],
      [numberColumn(say`Size`, "mm"), ({ state: { sizeMm } }) => plain(sizeMm)],
      [
        numberColumn(say`Envelope`, "%"),
        ({ state: { lowPct, highPct } }) => say`${fixed(lowPct, 1)} to ${fixed(highPct, 1)}`,
      ],
      [numberColumn(say`Passing`, "%"), ({ state: { passingPct } }) => fixed(passingPct, 1)],
      [say`Verdict`, ({ state: { outsidePct } }) => outsideWords(outsidePct)],
      isBlend && [say`Caused most by`, ({ state: { cause } }) => cause ?? BLANK],
    ],
    [
      say`${entry.own ? entrySource(entry) : shortSource(entry)} (${joinTexts([sourceMark(entry), ...remarks], "; ")}).`,
      entry.ofPassingMm !== undefined &&
        say`The source limits what passes ${entry.ofPassingMm} mm; its limits are drawn here in percent of the whole.`,
    ],
  );
}

function outsideWords(outsidePct: number): Text {
  if (outsidePct === 0) return say`inside`;
  const points = fixed(Math.abs(outsidePct), 1);
  return outsidePct > 0 ? say`above by ${points} points` : say`below by ${points} points`;
}

/** Cautions, each with where it comes from; default all that are usual. */
export function cautionsBlock(cautions: readonly Caution[] = CAUTIONS): CautionsBlock {
  return {
    kind: "cautions",
    items: cautions.map(({ title, text, source }) => ({ title, text, source })),
  };
}

/** Where published recommendations disagree, side by side, none of them chosen. */
export function guidanceComparisonTable(
  name: Text,
  { disagreements, checks }: GuidanceComparison,
): TableBlock {
  return {
    kind: "table",
    caption: say`Where the guidance disagrees: ${name}`,
    columns: [
      { header: say`What` },
      numberColumn(say`Measured`, "%"),
      { header: say`Source` },
      { header: say`Recommended` },
      { header: say`Verdict` },
      { header: say`Confidence (reading errors only)` },
    ],
    rows: disagreements.flatMap(({ what, measuredPct, sides, irreconcilable }) =>
      sides.map(({ source, lowPct, highPct, verdict, probability }, index) => {
        const named = irreconcilable ? say`${what}: no soil meets all` : what;
        return [
          index === 0 ? named : "",
          index === 0 ? fixed(measuredPct, 1) : "",
          source,
          recommendedRange(lowPct, highPct),
          wordFor(verdict),
          probability === undefined ? BLANK : percentOf(probability),
        ];
      }),
    ),
    notes: present([
      ...checks.map(
        ({ entry, honesty }) =>
          say`${shortSource(entry)}: ${entrySource(entry)} (${sourceMark(entry)}). ${honesty} ${entry.notes}`,
      ),
      checks[0]?.caution,
    ]),
  };
}

/** What a soil may hold that only a test of its own shows, and why it matters. */
const CHEMISTRY = [
  {
    key: "organicPct",
    what: say`organic matter`,
    why: say`it hinders the setting of cement and decays; topsoil is not for walls`,
  },
  {
    key: "saltsPct",
    what: say`soluble salts`,
    why: say`they crystallise at the face of the wall and flake it off`,
  },
  {
    key: "sulphatePct",
    what: say`sulphates`,
    why: say`with cement and clay they swell, and can break the wall apart`,
  },
] as const;

/**
 * What nobody tested, of each soil and of the blend that is to be built. Tests of a blend that is neither
 * this one nor close to it do not count.
 */
export function notTestedTable(
  result: Pick<
    StudyResult,
    | "config"
    | "materials"
    | "ungraded"
    | "compaction"
    | "strength"
    | "blocks"
    | "trials"
    | "testing"
  >,
): TableBlock {
  const { config, materials, ungraded = [], compaction, strength, blocks } = result;
  const known = !testedAnotherBlend(result);
  const ofMaterials = config.materials.flatMap((material) => {
    const { id, name, role } = material;
    const graded = materials.find((one) => one.id === id);
    const limits = graded?.limits ?? ungraded.find((one) => one.id === id)?.limits;
    const tested = testedChemistry(material);
    const isSoil = role === "soil";
    return present([
      ...CHEMISTRY.filter(({ key }) => isSoil && tested[key] === undefined),
      !graded && { what: say`sieve analysis`, why: say`its grading is not known` },
      isSoil &&
        !limits && {
          what: say`consistency limits`,
          why: say`plasticity and shrinkage are not known`,
        },
      isSoil &&
        !graded?.sedimentation &&
        !graded?.pipette && {
          what: say`sedimentation`,
          why: say`clay and silt are not told apart`,
        },
    ]).map((missing) => ({ ...missing, material: name }));
  });
  const ofBlend = present([
    !(compaction && known) && {
      what: say`compaction`,
      why: say`density and moisture at compaction are not known`,
    },
    !((strength || blocks) && known) && {
      what: say`strength`,
      why: say`no blocks of it were crushed; the cement is not known`,
    },
    {
      what: say`erosion, frost, shrinkage of the wall`,
      why: say`block strength says nothing about them`,
    },
  ]).map((missing) => ({ ...missing, material: say`Blend` }));
  return tableOf(
    say`What was not tested`,
    [...ofMaterials, ...ofBlend],
    [
      [say`Material`, ({ material }) => material],
      [say`Not tested`, ({ what }) => what],
      [say`Why it matters`, ({ why }) => why],
    ],
    [
      say`A test that is not entered counts as not made. The responsible person says which of them are needed.`,
    ],
  );
}
