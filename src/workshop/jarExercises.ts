import { formatFixed, formatPlain } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { ClassSoil } from "./classSoil.js";
import type { Exercise } from "./exercise.js";

/**
 * Two exercises on the jar: the sand's share of the height, and what the clay's height says of its mass.
 *
 * @throws RangeError where the soil's curve is of no use for it. Source: `analyseJar`.
 */
export function jarExercises({ jar, jarRecord }: ClassSoil): Exercise[] {
  const [sand, , clay] = jar.shares;
  const [sandMm, siltMm, wholeMm] = jarRecord.layers.map(({ topMm }) => topMm);
  const { waterDepthMm } = jarRecord;
  const mm = (value: number) => formatPlain(value);
  const whole = (value: number) => formatFixed(value, 0);
  const share = (part: number, of: number) => (100 * part) / of;
  const [less, same, more] = ["less", "the same", "more"];
  const byMass =
    clay.highPct < clay.heightSharePct ? less : clay.lowPct > clay.heightSharePct ? more : same;
  return [
    {
      kind: "number",
      id: "jar-sand-share",
      question: say`Which share of the settled height is sand and gravel?`,
      unit: "%",
      value: sand.heightSharePct,
      tolerance: { abs: 1 },
      wrongTurns: [
        {
          value: share(sandMm, waterDepthMm),
          text: say`This is the sand in percent of the depth of the water. Only what has settled counts.`,
        },
        {
          value: share(siltMm, wholeMm),
          text: say`This is sand and silt together: the silt's top stands on the sand.`,
        },
        {
          value: share(sandMm, siltMm),
          text: say`This leaves the clay out of the whole height.`,
        },
      ],
      hint: say`Height of the sand over the top of the clay, which is the whole of the settled height; times 100.`,
      worked: say`100 × ${mm(sandMm)} ÷ ${mm(wholeMm)} = ${formatFixed(sand.heightSharePct, 1)} %.`,
      why: say`By mass it may be anything from ${whole(sand.lowPct)} to ${whole(sand.highPct)} %: a height is no mass.`,
    },
    {
      kind: "choice",
      id: "jar-clay-by-mass",
      question: say`Is the clay's share of the mass less than its share of the height, the same, or more?`,
      options: [less, same, more],
      value: byMass,
      wrongTurns: [
        {
          value: same,
          text: say`That would be so if all layers were packed alike. They are not.`,
        },
        {
          value: more,
          text: say`Think of what stands between the grains of a fresh layer of clay.`,
        },
        {
          value: less,
          text: say`In this jar the heights do not decide it: look at the interval of the table.`,
        },
      ].filter(({ value }) => value !== byMass),
      hint: say`The table gives the share of the mass that each height allows.`,
      worked: say`The clay has ${whole(clay.heightSharePct)} % of the height; by mass that allows ${whole(clay.lowPct)} to ${whole(clay.highPct)} %.`,
      why: say`A fresh layer of clay is mostly water: ${whole(clay.heightSharePct)} % of the height allows ${whole(clay.lowPct)} to ${whole(clay.highPct)} % of the mass.`,
    },
  ];
}
