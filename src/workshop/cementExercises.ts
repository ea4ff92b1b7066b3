import { mean } from "simple-statistics";
import type { StrengthConfig } from "../entries/studyConfig.js";
import { normalQuantile, tQuantile } from "../numerics/distributions.js";
import { checkThat } from "../quantities/checkNumber.js";
import { formatFixed, formatNumber, formatPlain } from "../quantities/format.js";
import { strengthBound } from "../strength/regression/bounds.js";
import { strengthAt } from "../strength/regression/curve.js";
import type { StrengthStudy } from "../study/studyResult.js";
import { say } from "../words/message.js";
import { answerable, type Exercise } from "./exercise.js";
import { fewerBlocks } from "./fewerBlocks.js";

/** What the exercises on cement need of a computed study; any study has it. */
export interface ClassStrength {
  readonly config: { readonly strength: Pick<StrengthConfig, "requirement"> };
  readonly strength: Pick<StrengthStudy, "fit" | "specimens" | "leastCement">;
}

/**
 * The exercises on cement and strength: load to strength, the line, the bound, the least cement rounded
 * up, and what three blocks would have said. What the data do not hold is left out.
 *
 * @param study a computed study whose curve is the linear form.
 * @throws RangeError where the curve is not linear, or fewer than three contents were tested.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const specimens = [block("A", 4, 1.5), block("B", 4, 1.7), block("C", 6, 2.4), block("D", 8, 2.9), block("E", 8, 3.1)];
 * const requirement = { strengthMpa: 2, ageDays: 28, statistic: "mean", confidence: 0.95, basis: "" };
 * const fit = fitStrength(specimens, { model: "linear", ageDays: 28 });
 * const study = { config: { strength: { requirement } }, strength: { specimens, fit, leastCement: leastCement(fit, requirement) } };
 * cementExercises(study).map(({ id }) => id) // => ["strength-on-the-line", "cement-by-the-line", "bound-of-one-block", "cement-to-weigh-out", "three-blocks"]
 */
export function cementExercises(study: ClassStrength): Exercise[] {
  const { fit } = study.strength;
  checkThat(fit.model === "linear", { "strength.form": fit.model }, "linear");
  return answerable([
    blockRow(study),
    ...lineRows(study),
    boundRow(study),
    stepRow(study),
    threeBlocksRow(study),
  ]);
}

const one = (value: number) => formatFixed(value, 1);
const two = (value: number) => formatFixed(value, 2);
const three = (value: number) => formatNumber(value, 3);
const four = (value: number) => formatNumber(value, 4);
const plain = (value: number) => formatPlain(value);

function blockRow({ strength }: ClassStrength): Exercise {
  const block = strength.specimens.find(
    ({ loadKn, lengthMm, widthMm }) => loadKn && lengthMm && widthMm,
  );
  const { id = "", loadKn = Number.NaN, lengthMm = Number.NaN } = block ?? {};
  const { widthMm = Number.NaN, heightMm = Number.NaN } = block ?? {};
  const value = (1000 * loadKn) / (lengthMm * widthMm);
  return {
    kind: "number",
    id: "strength-of-a-block",
    question: say`Block ${id} broke at ${plain(loadKn)} kN on a face of ${plain(lengthMm)} by ${plain(widthMm)} mm. Its strength?`,
    unit: "MPa",
    value,
    tolerance: { rel: 0.01 },
    mistakes: [
      {
        value: (1000 * loadKn) / (lengthMm * widthMm * heightMm),
        text: say`The load was divided by the volume. Strength is load over the loaded face.`,
      },
      {
        value: (1000 * loadKn) / lengthMm,
        text: say`The load was divided by one edge. A face has two.`,
      },
    ],
    hint: say`One megapascal is one newton on one square millimetre.`,
    worked: say`1000 × ${plain(loadKn)} ÷ (${plain(lengthMm)} × ${plain(widthMm)}) = ${two(value)} MPa.`,
    why: say`Newtons over square millimetres are megapascals.`,
  };
}

/** Strength read off the line, and the content at which the line alone meets the requirement. */
function lineRows({ config, strength }: ClassStrength): Exercise[] {
  const { fit, leastCement } = strength;
  const { strengthMpa, ageDays } = config.strength.requirement;
  const [a, b] = fit.coefficients.map(({ value }) => value);
  const [belowTop, top] = fit.contentsPct.slice(-2);
  const content = (belowTop + top) / 2;
  const onLine = a + b * content;
  const meanOf = (points: typeof fit.points) => mean(points.map((point) => point.strengthMpa));
  const lineContentPct = leastCement.lineContentPct ?? Number.NaN;
  return [
    {
      kind: "number",
      id: "strength-on-the-line",
      question: say`What does the line say of the mean strength at ${plain(content)} % cement?`,
      unit: "MPa",
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
      hint: say`The table of the regression gives both coefficients.`,
      worked: say`f = ${three(a)} + ${three(b)} c: ${three(a)} + ${three(b)} × ${plain(content)} = ${two(onLine)} MPa.`,
      why: say`Half of all blocks of that content would lie below it.`,
    },
    {
      kind: "number",
      id: "cement-by-the-line",
      question: say`At which cement content does the line reach ${plain(strengthMpa)} MPa at ${ageDays} days?`,
      unit: "%",
      value: lineContentPct,
      tolerance: { rel: 0.02 },
      mistakes: [
        {
          value: strengthMpa / b,
          text: say`The first coefficient was left out: take it off the strength before dividing.`,
        },
        {
          value: (strengthMpa + a) / b,
          text: say`The first coefficient was added. It is taken off.`,
        },
        {
          value: (strengthMpa * content) / onLine,
          text: say`This is a rule of three through zero. The line does not begin there.`,
        },
      ],
      hint: say`Turn f = a + b c round: c = (f − a) ÷ b.`,
      worked: say`(${plain(strengthMpa)} − ${three(a)}) ÷ ${three(b)} = ${two(lineContentPct)} %.`,
      why: say`Made with that much, about half of the blocks would fail. It is no content to build with.`,
    },
  ];
}

/** The bound of one further block at the highest tested content. */
function boundRow({ config, strength: { fit } }: ClassStrength): Exercise {
  const { confidence } = config.strength.requirement;
  const content = fit.contentsPct[fit.contentsPct.length - 1];
  const { value: onLine, leverage: h, sd: s } = strengthAt(fit, content);
  const df = fit.degreesOfFreedom;
  const t = tQuantile(confidence, df);
  const z = normalQuantile(confidence);
  const value = strengthBound(fit, content, { statistic: "prediction", confidence });
  const percent = formatPlain(100 * confidence);
  return {
    kind: "number",
    id: "bound-of-one-block",
    question: say`At ${plain(content)} % cement: mean ${four(onLine)} MPa, s = ${four(s)} MPa, h = ${four(h)}, ${df} degrees of freedom, t = ${four(t)} (one-sided, ${percent} %). Which strength does one further block exceed with ${percent} % probability?`,
    unit: "MPa",
    value,
    // Room for rounded inputs, well below the steps between the right and the wrong bounds.
    tolerance: { abs: 0.01 },
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
    worked: say`${four(onLine)} − ${four(t)} × ${four(s)} × √(1 + ${four(h)}) = ${two(value)} MPa.`,
    why: say`The margin has two parts: blocks scatter (1), and the line is not sure (h). More blocks shrink h and t, not the scatter.`,
  };
}

/** The least cement rounded up to the step of the study. */
function stepRow({ config, strength: { leastCement } }: ClassStrength): Exercise {
  const { strengthMpa } = config.strength.requirement;
  const { roundUpToPct: step } = leastCement;
  const minPct = leastCement.cementPct ?? Number.NaN;
  const batchablePct = leastCement.batchablePct ?? Number.NaN;
  return {
    kind: "number",
    id: "cement-to-weigh-out",
    question: say`The bound meets ${plain(strengthMpa)} MPa from ${two(minPct)} % on. Cement is set in steps of ${plain(step)} %. How much is weighed out?`,
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
    worked: say`${two(minPct)} % up to the next step of ${plain(step)} %: ${plain(batchablePct)} %.`,
    why: say`Of the dry mass of soil and aggregate, not of the whole, and not by volume.`,
  };
}

/** Less than this is about the same cement, percentage points. */
const ABOUT_PCT = 0.25;

/** What becomes of the least cement by the requirement's own bound when only three blocks are at hand. */
function threeBlocksRow({ config, strength }: ClassStrength): Exercise {
  const { requirement } = config.strength;
  const { cementPct } = strength.leastCement;
  const draws = fewerBlocks(strength.specimens, requirement);
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
    question: say`With three blocks in place of all, what happens to the least cement? Answer "about the same", "mostly more, or no answer" or "mostly less".`,
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
        text: say`Look at the table: most ways do not ask for more here.`,
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
