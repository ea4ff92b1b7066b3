import { type Figure, figureOf } from "../figures/figure.js";
import { decadeSizes } from "../figures/grading/gradingChart.js";
import { powerOf } from "../numerics/powerOf.js";
import { formatPlain } from "../quantities/format.js";
import { say } from "../words/message.js";

interface Axis {
  readonly range: readonly number[];
}

/** Sixteen sizes stand side by side on a page's width: larger ones would touch. */
const LABEL_PX = 12;

/** Between the lines of the grid and the paper: seen on a print, and no rival to a curve. */
const MINOR = "#d3c9bb";
const MINOR_PCT = 5;

/** The same chart to read sizes off: 1, 2 and 5 of each decade named, a line for each step, and for each 5 %. */
export function withFineLines(figure: Figure): Figure {
  const { layout } = figure as Figure & {
    readonly layout: { readonly xaxis: Axis; readonly yaxis: Axis };
  };
  const { xaxis, yaxis } = layout;
  const [minMm, maxMm] = [Math.min(...xaxis.range), Math.max(...xaxis.range)].map((power) =>
    powerOf(10, power),
  );
  const minor = { showgrid: true, gridcolor: MINOR, gridwidth: 0.7 };
  const named = decadeSizes(minMm, maxMm, [1, 2, 5]);
  return {
    ...figure,
    layout: {
      ...layout,
      xaxis: {
        ...xaxis,
        tickmode: "array",
        tickvals: named,
        ticktext: named.map((size) => formatPlain(size)),
        tickfont: { size: LABEL_PX },
        minor: {
          ...minor,
          tickmode: "array",
          tickvals: decadeSizes(minMm, maxMm),
        },
      },
      yaxis: { ...yaxis, minor: { ...minor, tick0: 0, dtick: MINOR_PCT } },
    },
  };
}

/** Tall enough to fill a page. */
const PAPER_HEIGHT_PX = 900;

/** Empty paper to draw a grading curve on: percent passing over size, by decades. */
export function semiLogPaper(): Figure {
  const line = { gridcolor: "#a89d8e", linecolor: "#8a7f72", showline: true, mirror: true };
  const paper = figureOf(
    say`Paper for a grading curve`,
    say`Empty paper for a grading curve: percent passing from 0 to 100 over grain size from 0.001 to 100 mm on a logarithmic axis, with a line for each step of a decade.`,
    [{ type: "scatter", mode: "lines", x: [], y: [], showlegend: false }],
    {
      showlegend: false,
      margin: { l: 55, r: 15, t: 20, b: 50 },
      paper_bgcolor: "#ffffff",
      plot_bgcolor: "#ffffff",
      xaxis: { ...line, title: { text: say`Grain size (mm)` }, type: "log", range: [-3, 2] },
      yaxis: {
        ...line,
        title: { text: say`Passing (% of dry mass)` },
        range: [0, 100],
        dtick: 10,
      },
    },
    PAPER_HEIGHT_PX,
  );
  return withFineLines(paper);
}
