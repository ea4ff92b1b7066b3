import { formatFixed, formatNumber, formatPlain } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { ClassStrength } from "./classStrength.js";
import type { Exercise } from "./exercise.js";

/**
 * Exercises on a block and the line: strength from the load and the loaded face, strength read off the
 * line, and the content at which the line alone meets the requirement. What the data do not hold is left
 * out.
 *
 * @throws RangeError where the curve is not the linear form. Source: `fitStrength`.
 */
export function blockExercises({ config, strength }: ClassStrength): Exercise[] {
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
