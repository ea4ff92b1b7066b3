import { mean } from "simple-statistics";
import type { RequirementConfig } from "../entries/studyConfig.js";
import type { SpecimenRecord } from "../lab/specimens.js";
import { normalQuantile, tQuantile } from "../numerics/distributions.js";
import {
  type DisplayKind,
  displayUnit,
  displayValue,
  formatFixed,
  formatNumber,
  formatPlain,
  type UnitSystem,
} from "../quantities/format.js";
import type { LeastCement } from "../strength/leastCement.js";
import { strengthBound } from "../strength/regression/bounds.js";
import { type FittedStrength, strengthAt } from "../strength/regression/curve.js";
import type { LackOfFit } from "../strength/regression/lackOfFit.js";
import type { StudyResult } from "../study/studyResult.js";
import { joinTexts, say } from "../words/message.js";
import { answerable, type Exercise, type NoLesson, one, three } from "./exercise.js";
import { fewerBlocks } from "./fewerBlocks.js";

/** The tested blocks of a class and what is required of them. */
export interface ClassStrength {
  readonly requirement: RequirementConfig;
  readonly fit: FittedStrength;
  readonly specimens: readonly SpecimenRecord[];
  readonly lackOfFit: LackOfFit;
  readonly leastCement: LeastCement;
}

/** The blocks of a computed study, or why the lesson on cement cannot be given with them. */
export function classStrength({
  config,
  strength,
}: Pick<StudyResult, "config" | "strength">): ClassStrength | NoLesson {
  const requirement = config.strength?.requirement;
  if (!strength?.leastCement || !requirement) {
    return {
      status: "none",
      message: say`The study has no crushed blocks, or requires no strength.`,
    };
  }
  const { fit, specimens, lackOfFit, leastCement } = strength;
  if (fit.model !== "linear") {
    return { status: "none", message: say`The curve through the blocks is no straight line.` };
  }
  if (fit.contentsPct.length < 3) {
    return { status: "none", message: say`Fewer than three cement contents were tested.` };
  }
  return { requirement, fit, specimens, lackOfFit, leastCement };
}

/**
 * The exercises on cement and strength: load to strength, the line, the bound, the least cement rounded
 * up, and what three blocks would have said. What the data do not hold is left out.
 *
 * @param units of the questions and answers; default `SI`.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const specimens = [block("A", 4, 1.5), block("B", 4, 1.7), block("C", 6, 2.4), block("D", 8, 2.9), block("E", 8, 3.1)];
 * const requirement = { strengthMpa: 2, ageDays: 28, statistic: "mean", confidence: 0.95, basis: "" };
 * const fit = fitStrength(specimens, { model: "linear", ageDays: 28 });
 * const exercises = cementExercises({ requirement, fit, specimens, leastCement: leastCement(fit, requirement) });
 * exercises.map(({ id }) => id) // => ["strength-on-the-line", "cement-by-the-line", "bound-of-one-block", "cement-to-weigh-out", "three-blocks"]
 */
export function cementExercises(
  blocks: Omit<ClassStrength, "lackOfFit">,
  units: UnitSystem = "SI",
): Exercise[] {
  return answerable([
    blockRow(blocks, units),
    ...lineRows(blocks, units),
    boundRow(blocks, units),
    stepRow(blocks, units),
    threeBlocksRow(blocks),
  ]);
}

type Blocks = Omit<ClassStrength, "lackOfFit">;

const two = (value: number) => formatFixed(value, 2);
const four = (value: number) => formatNumber(value, 4);

/** A value as the question tells it, and works with. */
const told = (value: number, kind: DisplayKind, units: UnitSystem) =>
  Number(formatPlain(displayValue(value, kind, units)).number);

function blockRow({ specimens }: Blocks, units: UnitSystem): Exercise {
  const block = specimens.find(({ loadKn, lengthMm, widthMm }) => loadKn && lengthMm && widthMm);
  const { id = "", loadKn = Number.NaN, lengthMm = Number.NaN } = block ?? {};
  const { widthMm = Number.NaN, heightMm = Number.NaN } = block ?? {};
  const us = units === "US";
  // newtons on square millimetres, or pounds on square inches
  const load = us ? told(loadKn, "force", units) : 1000 * loadKn;
  const [length, width, height] = [lengthMm, widthMm, heightMm].map((mm) =>
    told(mm, "depth", units),
  );
  const unit = displayUnit("stress", units);
  const value = load / (length * width);
  const edge = us ? "in" : "mm";
  const force = joinTexts(us ? [formatPlain(load), "lbf"] : [formatPlain(loadKn), "kN"], " ");
  return {
    kind: "number",
    id: "strength-of-a-block",
    question: say`Block ${id} broke at ${force} on a face of ${formatPlain(length)} by ${formatPlain(width)} ${edge}. Its strength?`,
    unit,
    value,
    tolerance: { rel: 0.01 },
    mistakes: [
      {
        value: load / (length * width * height),
        text: say`The load was divided by the volume. Strength is load over the loaded face.`,
      },
      {
        value: load / length,
        text: say`The load was divided by one edge. A face has two.`,
      },
    ],
    hint: us
      ? say`One psi is one pound of force on one square inch.`
      : say`One megapascal is one newton on one square millimetre.`,
    worked: say`${formatPlain(load)} ÷ (${formatPlain(length)} × ${formatPlain(width)}) = ${three(value)} ${unit}.`,
    why: us
      ? say`Pounds of force over square inches are psi.`
      : say`Newtons over square millimetres are megapascals.`,
  };
}

/** Strength read off the line, and the content at which the line alone meets the requirement. */
function lineRows({ requirement, fit, leastCement }: Blocks, units: UnitSystem): Exercise[] {
  const { ageDays } = requirement;
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const unit = displayUnit("stress", units);
  const [a, b] = fit.coefficients.map(({ value }) => stress(value));
  const required = told(requirement.strengthMpa, "stress", units);
  const [belowTop, top] = fit.contentsPct.slice(-2);
  const content = (belowTop + top) / 2;
  const onLine = a + b * content;
  const meanOf = (points: typeof fit.points) =>
    stress(mean(points.map((point) => point.strengthMpa)));
  const lineContentPct = leastCement.lineContentPct ?? Number.NaN;
  return [
    {
      kind: "number",
      id: "strength-on-the-line",
      question: say`The line is f = ${three(a)} + ${three(b)} c, f in ${unit} and c in percent. What does it say of the mean strength at ${formatPlain(content)} % cement?`,
      unit,
      value: onLine,
      tolerance: { rel: 0.02 },
      mistakes: [
        {
          value: b * content,
          text: say`The line does not begin at zero: add its first coefficient.`,
        },
        {
          value: meanOf(fit.points),
          text: say`This is the mean of all blocks, whatever their cement.`,
        },
        {
          value: meanOf(fit.points.filter(({ cementPct }) => cementPct === top)),
          text: say`This is the mean of the blocks with the most cement.`,
        },
      ],
      hint: say`Put the content in the place of c.`,
      worked: say`${three(a)} + ${three(b)} × ${formatPlain(content)} = ${three(onLine)} ${unit}.`,
      why: say`Half of all blocks of that content would lie below it.`,
    },
    {
      kind: "number",
      id: "cement-by-the-line",
      question: say`The line is f = ${three(a)} + ${three(b)} c, f in ${unit} and c in percent. At which cement content does it reach ${formatPlain(required)} ${unit} at ${ageDays} days?`,
      unit: "%",
      value: lineContentPct,
      tolerance: { rel: 0.02 },
      mistakes: [
        {
          value: required / b,
          text: say`The first coefficient was left out: take it off the strength before dividing.`,
        },
        {
          value: (required + a) / b,
          text: say`The first coefficient was added. It is taken off.`,
        },
        {
          value: (required * content) / onLine,
          text: say`This is a rule of three through zero. The line does not begin there.`,
        },
      ],
      hint: say`Turn f = a + b c round: c = (f − a) ÷ b.`,
      worked: say`(${formatPlain(required)} − ${three(a)}) ÷ ${three(b)} = ${two(lineContentPct)} %.`,
      why: say`Made with that much, about half of the blocks would fail. It is no content to build with.`,
    },
  ];
}

/** The bound of one further block at the highest tested content but one: a figure of the lesson tells the highest. */
function boundRow({ requirement, fit }: Blocks, units: UnitSystem): Exercise {
  const { confidence } = requirement;
  const unit = displayUnit("stress", units);
  const content = fit.contentsPct[fit.contentsPct.length - 2];
  const { leverage: h, ...at } = strengthAt(fit, content);
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const [onLine, s] = [stress(at.value), stress(at.sd)];
  const df = fit.degreesOfFreedom;
  const t = tQuantile(confidence, df);
  const z = normalQuantile(confidence);
  const value = stress(strengthBound(fit, content, { statistic: "prediction", confidence }));
  const percent = formatPlain(100 * confidence);
  return {
    kind: "number",
    id: "bound-of-one-block",
    question: say`At ${formatPlain(content)} % cement: mean ${four(onLine)} ${unit}, s = ${four(s)} ${unit}, h = ${four(h)}, ${df} degrees of freedom, t = ${four(t)} (one-sided, ${percent} %). Which strength does one further block exceed with ${percent} % probability?`,
    unit,
    value,
    // Room for rounded inputs, well below the steps between the right and the wrong bounds.
    tolerance: { abs: stress(0.01) },
    mistakes: [
      {
        value: onLine - t * s * Math.sqrt(h),
        text: say`This is the bound of the mean, with √h. One block scatters about the mean as well: √(1 + h).`,
      },
      {
        value: onLine + t * s * Math.sqrt(1 + h),
        text: say`This is the upper bound: the margin was added.`,
      },
      {
        value: onLine - z * s * Math.sqrt(1 + h),
        text: say`This takes ${formatFixed(z, 3)} of the normal table. With a scatter known from few blocks it must be the larger t.`,
      },
      {
        value: onLine - t * s,
        text: say`This forgets that the line itself is not sure: √(1 + h), not 1.`,
      },
      {
        value: onLine - tQuantile((1 + confidence) / 2, df) * s * Math.sqrt(1 + h),
        text: say`This takes the t of a two-sided interval. Only too little strength is feared, so one side counts.`,
      },
      { value: onLine - s * Math.sqrt(1 + h), text: say`The factor t is missing.` },
    ],
    hint: say`Mean less t × s × √(1 + h).`,
    worked: say`${four(onLine)} − ${four(t)} × ${four(s)} × √(1 + ${four(h)}) = ${four(value)} ${unit}.`,
    why: say`The margin has two parts: blocks scatter (1), and the line is not sure (h). More blocks shrink h and t, not the scatter.`,
  };
}

/** The least cement rounded up to the step of the study. */
function stepRow({ requirement, leastCement }: Blocks, units: UnitSystem): Exercise {
  const required = told(requirement.strengthMpa, "stress", units);
  const { roundUpToPct: step } = leastCement;
  const minPct = leastCement.cementPct ?? Number.NaN;
  const batchablePct = leastCement.batchablePct ?? Number.NaN;
  return {
    kind: "number",
    id: "cement-to-weigh-out",
    question: say`The bound meets ${formatPlain(required)} ${displayUnit("stress", units)} from ${two(minPct)} % on. Cement is set in steps of ${formatPlain(step)} %. How much is weighed out?`,
    unit: "%",
    value: batchablePct,
    tolerance: { abs: 0.001 },
    mistakes: [
      {
        value: step * Math.floor(minPct / step),
        text: say`This is rounded down, or to the nearest step: the bound would miss the requirement. A least content is only ever rounded up.`,
      },
      { value: minPct, text: say`This is not a step: nobody can set it.` },
      {
        value: step * Math.ceil((leastCement.lineContentPct ?? Number.NaN) / step),
        text: say`This comes from the line without a margin.`,
      },
    ],
    hint: say`The next step upwards.`,
    worked: say`${two(minPct)} % up to the next step of ${formatPlain(step)} %: ${formatPlain(batchablePct)} %.`,
    why: say`Of the dry mass of soil and aggregate, not of the whole, and not by volume.`,
  };
}

/** Less than this is about the same cement, percentage points. */
const ABOUT_PCT = 0.25;

/** What becomes of the least cement by the requirement's own bound when only three blocks are at hand. */
function threeBlocksRow({ requirement, specimens, leastCement }: Blocks): Exercise {
  const { cementPct } = leastCement;
  const draws = fewerBlocks(specimens, requirement);
  const values = draws.map(({ minPct }) => minPct[requirement.statistic]);
  const found = values.filter((value) => value !== null);
  const none = values.length - found.length;
  const all = cementPct ?? Infinity;
  const above = none + found.filter((value) => value > all + ABOUT_PCT).length;
  const below = found.filter((value) => value < all - ABOUT_PCT).length;
  const span =
    found.length === 0
      ? say`None of the ${values.length} ways of having three blocks gives an answer.`
      : say`Of ${values.length} ways of having three blocks, ${none} give no answer; the others ask for ${one(Math.min(...found))} to ${one(Math.max(...found))} %.`;
  const byAll = cementPct === null ? "–" : one(cementPct);
  const percent = formatPlain(100 * requirement.confidence);
  return {
    kind: "choice",
    id: "three-blocks",
    question: say`With three blocks in place of all, what happens to the least cement?`,
    options: [
      { key: "same", text: say`about the same` },
      { key: "more", text: say`mostly more, or no answer` },
      { key: "less", text: say`mostly less` },
    ],
    value: majority(values.length, { more: above, less: below }),
    mistakes: [
      {
        value: "same",
        text: say`The line may stay where it was. The margin below it does not: look at t for one degree of freedom.`,
      },
      {
        value: "less",
        text: say`By luck three blocks may lie so well on a line that little margin seems needed. Look at how many of the ways do that.`,
      },
      {
        value: "more",
        text: say`Most ways do not ask for more here.`,
      },
    ],
    hint: say`Three blocks and two coefficients leave one degree of freedom; t is then ${one(tQuantile(requirement.confidence, 1))} at ${percent} %.`,
    worked: say`${span} All blocks ask for ${byAll} %.`,
    why: span,
  };
}

function majority(all: number, counts: { readonly more: number; readonly less: number }): string {
  if (counts.more > all / 2) return "more";
  return counts.less > all / 2 ? "less" : "same";
}
