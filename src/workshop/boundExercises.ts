import { tQuantile } from "../numerics/tQuantile.js";
import { formatFixed, formatNumber, formatPlain } from "../quantities/formatNumber.js";
import { strengthAt } from "../strength/strengthAt.js";
import { strengthBound } from "../strength/strengthBound.js";
import { say } from "../words/say.js";
import type { ClassStrength } from "./classStrength.js";
import type { Exercise } from "./exercise.js";

/** One-sided, of a standard normal variable, at 95 % (any table of it). */
const NORMAL_95 = 1.645;

/**
 * Exercises on the bound of one further block at the highest tested content, and on the least cement
 * rounded up to the step of the study; the second is left out where there is no least cement.
 *
 * Source: `strengthBound`, `leastCement`.
 */
export function boundExercises({ config, strength }: ClassStrength): Exercise[] {
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
