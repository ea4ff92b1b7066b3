import { formatFixed } from "../quantities/format.js";
import { plasticityGroup } from "../soil/classification/uscs.js";
import { aLine, uLine } from "../soil/consistency/plasticityChart.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { type Figure, figureOf } from "./figure.js";
import { baseLayout, intervalBar, PALETTE, QUIET, seriesStyle } from "./style.js";

export interface PlasticitySample {
  readonly name: string;
  readonly liquidLimitPct: number;
  readonly plasticityIndexPct: number;
  /** 95 % limits, drawn as bars where they are known. */
  readonly liquidLimitInterval95?: readonly [number, number];
  readonly plasticityIndexInterval95?: readonly [number, number];
}

/** Where the two lines leave the horizontal parts at PI 4 and 7. */
const A_FROM = 20 + 4 / 0.73;
const U_FROM = 16;

/**
 * A plasticity chart: plasticity index on liquid limit, with the A-line, the U-line and the groups of
 * ASTM D2487 (A-line read; the rest of the chart from memory).
 *
 * @throws RangeError without a sample.
 *
 * @example
 * render(plasticityChart("Plasticity", [{ name: "Site soil", liquidLimitPct: 40, plasticityIndexPct: 21 }]).altText) // => "Plasticity. Plasticity index against liquid limit, with the A-line. Site soil: liquid limit 40.0 %, plasticity index 21.0 %, group CL, 6.4 points above the A-line."
 */
export function plasticityChart(title: Text, samples: readonly PlasticitySample[]): Figure {
  if (samples.length === 0) throw new RangeError("invalid `samples`: none; expected at least one");
  const right = Math.max(
    80,
    ...samples.map(({ liquidLimitPct }) => 10 * Math.ceil(liquidLimitPct / 10 + 0.5)),
  );
  const top = Math.max(
    50,
    ...samples.map(({ plasticityIndexPct }) => 10 * Math.ceil(plasticityIndexPct / 10 + 0.5)),
  );
  const line = (name: Text, at: (liquid: number) => number, from: number, style: object) => {
    const end = Math.min(right, from + (top - at(from)) / ((at(100) - at(50)) / 50));
    return {
      type: "scatter",
      mode: "lines",
      name,
      x: [from, end],
      y: [at(from), at(end)],
      line: { width: 2, ...style },
      hoverinfo: "skip",
    };
  };
  const border = (x: readonly number[], y: readonly number[]) => ({
    type: "scatter",
    mode: "lines",
    x,
    y,
    showlegend: false,
    hoverinfo: "skip",
    line: { color: QUIET.border, width: 1 },
  });
  return figureOf(
    title,
    say`${title}. Plasticity index against liquid limit, with the A-line. ${joinTexts(samples.map(describe), " ")}`,
    [
      line(say`A-line`, aLine, A_FROM, { color: PALETTE.umber }),
      line(say`U-line (from memory)`, uLine, U_FROM, {
        color: PALETTE.manganese,
        dash: "dash",
        width: 1.5,
      }),
      border([50, 50], [0, uLine(50)]),
      // The strip of CL-ML, between PI 4 and 7 and the two lines.
      border([4 / 0.9 + 8, A_FROM], [4, 4]),
      border([7 / 0.9 + 8, 20 + 7 / 0.73], [7, 7]),
      ...samples.map((sample, index) => {
        const { color, symbol } = seriesStyle(index);
        const bar = (interval?: readonly [number, number]) =>
          interval && intervalBar(interval, color);
        return {
          type: "scatter",
          mode: "markers",
          name: sample.name,
          x: [sample.liquidLimitPct],
          y: [sample.plasticityIndexPct],
          error_x: bar(sample.liquidLimitInterval95),
          error_y: bar(sample.plasticityIndexInterval95),
          marker: { color, symbol, size: 10 },
        };
      }),
    ],
    baseLayout(
      { title: say`Liquid limit (%)`, range: [0, right], dtick: 10 },
      { title: say`Plasticity index (%)`, range: [0, top], dtick: 10 },
      {
        annotations: [
          ["CL", 38, 20],
          ["CH", 72, 44],
          ["ML", 43, 7],
          ["MH", 66, 14],
          ["CL-ML", 21.5, 5.5],
        ].map(([text, x, y]) => ({
          text,
          x,
          y,
          showarrow: false,
          font: { size: text === "CL-ML" ? 11 : 14, color: QUIET.letters },
        })),
      },
    ),
  );
}

function describe({ name, liquidLimitPct, plasticityIndexPct }: PlasticitySample): Text {
  const { group = "none" } = plasticityGroup({ liquidLimitPct, plasticityIndexPct });
  const above = plasticityIndexPct - aLine(liquidLimitPct);
  return say`${name}: liquid limit ${formatFixed(liquidLimitPct, 1)} %, plasticity index ${formatFixed(plasticityIndexPct, 1)} %, group ${group}, ${formatFixed(Math.abs(above), 1)} points ${above >= 0 ? say`above` : say`below`} the A-line.`;
}
