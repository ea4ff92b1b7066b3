import type { StrengthConfig } from "../entries/studyConfig.js";
import { tQuantile } from "../numerics/distributions.js";
import { formatFixed, formatNumber, formatPlain } from "../quantities/format.js";
import type { LeastCement, StrengthRequirement } from "../strength/leastCement.js";
import { strengthBound } from "../strength/regression/bounds.js";
import { strengthAt } from "../strength/regression/curve.js";
import type { StrengthStudy } from "../study/studyResult.js";
import { say } from "../words/message.js";
import type { Exercise } from "./exercise.js";
import { type FewerBlocksDraw, fewerBlocks } from "./fewerBlocks.js";

/** What the exercises on cement need of a computed study; any study has it. */
export interface ClassStrength {
  readonly config: { readonly strength: Pick<StrengthConfig, "requirement"> };
  readonly strength: Pick<StrengthStudy, "fit" | "specimens" | "leastCement">;
}

/**
 * The exercises on cement and strength: load to strength, the line, the bound, the least cement rounded
 * up, and what three blocks would have said.
 *
 * @param study a computed study whose curve is the linear form.
 * @throws RangeError where the curve is not linear, or fewer than three contents were tested.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const specimens = [block("A", 4, 1.5), block("B", 4, 1.7), block("C", 6, 2.4), block("D", 8, 2.9), block("E", 8, 3.1)];
 * const requirement = { strengthMpa: 2, ageDays: 28, statistic: "mean", confidence: 0.95, basis: "" };
 * const fit = fitStrength(specimens, { form: "linear", ageDays: 28 });
 * const study = { config: { strength: { requirement } }, strength: { specimens, fit, leastCement: leastCement(fit, requirement) } };
 * cementExercises(study).map(({ id }) => id) // => ["strength-on-the-line", "cement-by-the-line", "bound-of-one-block", "cement-to-weigh-out", "three-blocks"]
 */
export function cementExercises(study: ClassStrength): Exercise[] {
  const { config, strength } = study;
  const { requirement } = config.strength;
  return [
    ...blockExercises(study),
    ...boundExercises(study),
    fewerBlocksExercise(
      strength.leastCement,
      fewerBlocks(strength.specimens, requirement),
      requirement,
    ),
  ];
}

/**
 * Exercises on a block and the line: strength from the load and the loaded face, strength read off the
 * line, and the content at which the line alone meets the requirement. What the data do not hold is left
 * out.
 *
 * @throws RangeError where the curve is not the linear form. Source: `fitStrength`.
 */
function blockExercises({ config, strength }: ClassStrength): Exercise[] {
  const { fit, specimens, leastCement } = strength;
  const { strengthMpa, ageDays } = config.strength.requirement;
  if (fit.form !== "linear") {
    throw new RangeError(`invalid \`strength.form\`: ${fit.form}; expected linear`);
  }
  const two = (value: number) => formatFixed(value, 2);
  const plain = (value: number) => formatPlain(value);
  const exercises: Exercise[] = [];
  const block = specimens.find(({ loadKn, lengthMm, widthMm }) => loadKn && lengthMm && widthMm);
  if (block) {
    const { id, loadKn = 0, lengthMm = 0, widthMm = 0, heightMm = 0 } = block;
    const value = (1000 * loadKn) / (lengthMm * widthMm);
    exercises.push({
      kind: "number",
      id: "strength-of-a-block",
      question: say`Block ${id} broke at ${plain(loadKn)} kN on a face of ${plain(lengthMm)} by ${plain(widthMm)} mm. Its strength?`,
      unit: "MPa",
      value,
      tolerance: { rel: 0.01 },
      wrongTurns: [
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
    });
  }
  const [a, b] = fit.coefficients.map((coefficient) => coefficient.value);
  const { contentsPct } = fit;
  const between = (contentsPct[contentsPct.length - 2] + contentsPct[contentsPct.length - 1]) / 2;
  const onLine = a + b * between;
  const group = fit.points.filter(
    ({ cementPct }) => cementPct === contentsPct[contentsPct.length - 1],
  );
  const mean = (values: readonly number[]) =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  const line = say`f = ${formatNumber(a, 3)} + ${formatNumber(b, 3)} c`;
  exercises.push({
    kind: "number",
    id: "strength-on-the-line",
    question: say`What does the line say of the mean strength at ${plain(between)} % cement?`,
    unit: "MPa",
    value: onLine,
    tolerance: { rel: 0.02 },
    wrongTurns: [
      {
        value: b * between,
        text: say`The line does not begin at zero: add its first coefficient.`,
      },
      {
        value: mean(fit.points.map((point) => point.strengthMpa)),
        text: say`This is the mean of all blocks, whatever their cement.`,
      },
      {
        value: mean(group.map((point) => point.strengthMpa)),
        text: say`This is the mean of the blocks with the most cement.`,
      },
    ],
    hint: say`The table of the regression gives both coefficients.`,
    worked: say`${line}: ${formatNumber(a, 3)} + ${formatNumber(b, 3)} × ${plain(between)} = ${two(onLine)} MPa.`,
    why: say`Half of all blocks of that content would lie below it.`,
  });
  const { lineContentPct } = leastCement;
  if (lineContentPct !== null) {
    exercises.push({
      kind: "number",
      id: "cement-by-the-line",
      question: say`At which cement content does the line reach ${plain(strengthMpa)} MPa at ${ageDays} days?`,
      unit: "%",
      value: lineContentPct,
      tolerance: { rel: 0.02 },
      wrongTurns: [
        {
          value: strengthMpa / b,
          text: say`The first coefficient was left out: take it off the strength before dividing.`,
        },
        {
          value: (strengthMpa + a) / b,
          text: say`The first coefficient was added. It is taken off.`,
        },
        {
          value: onLine === 0 ? Number.NaN : (strengthMpa * between) / onLine,
          text: say`This is a rule of three through zero. The line does not begin there.`,
        },
      ],
      hint: say`Turn f = a + b c round: c = (f − a) ÷ b.`,
      worked: say`(${plain(strengthMpa)} − ${formatNumber(a, 3)}) ÷ ${formatNumber(b, 3)} = ${two(lineContentPct)} %.`,
      why: say`Made with that much, about half of the blocks would fail. It is no content to build with.`,
    });
  }
  return exercises;
}

/** One-sided, of a standard normal variable, at 95 % (any table of it). */
const NORMAL_95 = 1.645;

/**
 * Exercises on the bound of one further block at the highest tested content, and on the least cement
 * rounded up to the step of the study; the second is left out where there is no least cement.
 *
 * Source: `strengthBound`, `leastCement`.
 */
function boundExercises({ config, strength }: ClassStrength): Exercise[] {
  const { fit, leastCement: least } = strength;
  const { requirement } = config.strength;
  const { confidence } = requirement;
  const content = fit.contentsPct[fit.contentsPct.length - 1];
  const { value: mean, leverage, sd } = strengthAt(fit, content);
  const df = fit.degreesOfFreedom;
  const t = tQuantile(confidence, df);
  const one = Math.sqrt(1 + leverage);
  const value = strengthBound(fit, content, { statistic: "prediction", confidence });
  const two = (number: number) => formatFixed(number, 2);
  const four = (number: number) => formatNumber(number, 4);
  const percent = formatPlain(100 * confidence);
  const exercises: Exercise[] = [
    {
      kind: "number",
      id: "bound-of-one-block",
      question: say`At ${formatPlain(content)} % cement: mean ${four(mean)} MPa, s = ${four(sd)} MPa, h = ${four(leverage)}, ${df} degrees of freedom, t = ${four(t)} (one-sided, ${percent} %). Which strength does one further block exceed with ${percent} % probability?`,
      unit: "MPa",
      value,
      // Room for rounded inputs, well below the steps between the right and the wrong bounds.
      tolerance: { abs: 0.01 },
      wrongTurns: [
        {
          value: mean - t * sd * Math.sqrt(leverage),
          text: say`This is the bound of the mean, with √h. One block scatters about the mean as well: √(1 + h).`,
        },
        {
          value: mean + t * sd * one,
          text: say`This is the upper bound: the margin was added.`,
        },
        {
          value: mean - NORMAL_95 * sd * one,
          text: say`This takes 1.645 of the normal table. With a scatter known from few blocks it must be the larger t.`,
        },
        {
          value: mean - t * sd,
          text: say`This forgets that the line itself is not sure: √(1 + h), not 1.`,
        },
        {
          value: mean - tQuantile((1 + confidence) / 2, df) * sd * one,
          text: say`This takes the t of a two-sided interval. Only too little strength is feared, so one side counts.`,
        },
        { value: mean - sd * one, text: say`The factor t is missing.` },
      ],
      hint: say`Mean less t × s × √(1 + h).`,
      worked: say`${four(mean)} − ${four(t)} × ${four(sd)} × √(1 + ${four(leverage)}) = ${two(value)} MPa.`,
      why: say`The margin has two parts: blocks scatter (1), and the line is not sure (h). More blocks shrink h and t, not the scatter.`,
    },
  ];
  const { cementPct, batchablePct, roundUpToPct, lineContentPct } = least;
  if (cementPct !== null && batchablePct !== null) {
    const step = (number: number, round: (steps: number) => number) =>
      roundUpToPct * round(number / roundUpToPct);
    exercises.push({
      kind: "number",
      id: "cement-to-weigh-out",
      question: say`The bound meets ${formatPlain(requirement.strengthMpa)} MPa from ${two(cementPct)} % on. Cement is set in steps of ${formatPlain(roundUpToPct)} %. How much is weighed out?`,
      unit: "%",
      value: batchablePct,
      tolerance: { abs: 0.001 },
      wrongTurns: [
        {
          value: step(cementPct, Math.floor),
          text: say`This is rounded down, or to the nearest step: the bound would miss the requirement. A least content is only ever rounded up.`,
        },
        { value: cementPct, text: say`This is not a step: nobody can set it.` },
        ...(lineContentPct === null
          ? []
          : [
              {
                value: step(lineContentPct, Math.ceil),
                text: say`This comes from the line without a margin.`,
              },
            ]),
      ],
      hint: say`The next step upwards.`,
      worked: say`${two(cementPct)} % up to the next step of ${formatPlain(roundUpToPct)} %: ${formatPlain(batchablePct)} %.`,
      why: say`Of the dry mass of soil and aggregate, not of the whole, and not by volume.`,
    });
  }
  return exercises;
}

/** Asks what becomes of the least cement by the requirement's own bound when only three blocks are at hand. */
function fewerBlocksExercise(
  least: Pick<LeastCement, "cementPct">,
  draws: readonly FewerBlocksDraw[],
  { statistic }: Pick<StrengthRequirement, "statistic">,
): Exercise {
  const [same, more, less] = ["about the same", "mostly more, or no answer", "mostly less"];
  const values = draws.map(({ leastPct }) => leastPct[statistic]);
  const all = least.cementPct ?? Infinity;
  const above = values.filter((value) => value === null || value > all + 0.25).length;
  const below = values.filter((value) => value !== null && value < all - 0.25).length;
  const value = above > values.length / 2 ? more : below > values.length / 2 ? less : same;
  const found = values.filter((number) => number !== null);
  const none = values.length - found.length;
  const one = (number: number) => formatFixed(number, 1);
  const span =
    found.length === 0
      ? say`None of the ${values.length} ways of having three blocks gives an answer.`
      : say`Of ${values.length} ways of having three blocks, ${none} give no answer; the others ask for ${one(Math.min(...found))} to ${one(Math.max(...found))} %.`;
  return {
    kind: "choice",
    id: "three-blocks",
    question: say`With three blocks in place of all, what happens to the least cement? Answer "${same}", "${more}" or "${less}".`,
    options: [same, more, less],
    value,
    wrongTurns: [
      {
        value: same,
        text: say`The line may stay where it was. The margin below it does not: look at t for one degree of freedom.`,
      },
      {
        value: less,
        text: say`By luck three blocks may lie so well on a line that little margin seems needed. Look at how many of the ways do that.`,
      },
      {
        value: more,
        text: say`Look at the table: most ways do not ask for more here.`,
      },
    ].filter((turn) => turn.value !== value),
    hint: say`Three blocks and two coefficients leave one degree of freedom; t is then 6.3 at 95 %.`,
    worked: say`${span} ${say`All blocks ask for ${least.cementPct === null ? "–" : one(least.cementPct)} %.`}`,
    why: span,
  };
}
