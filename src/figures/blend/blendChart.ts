import type { BlendResult } from "../../blend/description.js";
import type { Robustness } from "../../blend/robustness.js";
import type { MaterialConfig } from "../../entries/studyConfig.js";
import type { GradingCurve } from "../../grading/curve.js";
import type { BoundarySystem } from "../../grading/fractions.js";
import { formatFixed, formatNumber, formatPlain } from "../../quantities/format.js";
import type { BlendStudy } from "../../study/studyResult.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { type Figure, figureOf } from "../figure.js";
import type { ChartBand } from "../grading/band.js";
import { type ChartCurve, gradingChart } from "../grading/gradingChart.js";
import { baseLayout, PALETTE, seriesStyle, translucent } from "../style.js";

/**
 * The blended curve against what it was to be (a curve, or a band), and a recommended band and the
 * materials' own curves where given.
 */
export function blendChart(
  title: Text,
  blend: Pick<BlendStudy, "curve" | "points" | "target">,
  band?: ChartBand | readonly ChartBand[],
  components: readonly ChartCurve[] = [],
  boundaries?: BoundarySystem,
): Figure {
  const { kind, topSizeMm = null } = blend.target ?? {};
  const target: GradingCurve = {
    points: [
      ...blend.points.map(({ sizeMm, targetPct }) => ({
        sizeMm,
        passingPct: targetPct,
        origin: "sieve" as const,
      })),
      ...(topSizeMm === null
        ? []
        : [{ sizeMm: topSizeMm, passingPct: 100, origin: "sieve" as const }]),
    ],
  };
  return gradingChart(
    title,
    [
      { name: say`blend`, curve: blend.curve },
      // Against a band the target is the band itself; of given shares there is none.
      ...(kind === undefined || kind === "band"
        ? []
        : [{ name: say`target`, curve: target, smooth: true }]),
      ...components,
    ],
    band,
    { ...(boundaries ? { boundaries } : {}) },
  );
}

/** Shares of dry mass as bars, each with the range that it was allowed. */
export function sharesChart(
  title: Text,
  materials: readonly MaterialConfig[],
  blend: Pick<BlendResult, "shares">,
): Figure {
  const shares = materials.map((material) => ({
    ...material,
    sharePct: blend.shares.find(({ id }) => id === material.id)?.sharePct ?? 0,
  }));
  // Two materials may have one name: each has a row of its own by its id.
  const y = shares.map(({ id }) => id);
  const data = [
    {
      type: "bar",
      orientation: "h",
      name: say`share`,
      x: shares.map(({ sharePct }) => sharePct),
      y,
      marker: { color: shares.map((_, index) => seriesStyle(index).color) },
      width: 0.5,
    },
    {
      type: "scatter",
      mode: "markers",
      name: say`allowed range`,
      x: shares.map(({ minSharePct, maxSharePct }) => (minSharePct + maxSharePct) / 2),
      y,
      marker: { size: 0.1, color: PALETTE.manganese },
      error_x: {
        type: "data",
        symmetric: true,
        array: shares.map(({ minSharePct, maxSharePct }) => (maxSharePct - minSharePct) / 2),
        color: PALETTE.manganese,
        thickness: 1.2,
        width: 5,
      },
    },
  ];
  const sentences = shares.map(
    ({ name, sharePct, minSharePct, maxSharePct }) =>
      say`${name}: ${formatFixed(sharePct, 1)} % (allowed ${minSharePct} to ${maxSharePct} %)`,
  );
  return figureOf(
    title,
    say`${title}. ${joinTexts(sentences, "; ")}.`,
    data,
    baseLayout(
      {
        title: say`Share of the dry mass<br>of soil and aggregate (%)`,
        range: [0, 124],
        tickvals: [0, 20, 40, 60, 80, 100],
      },
      {
        title: "",
        type: "category",
        autorange: "reversed",
        tickvals: y,
        ticktext: shares.map(({ name }) => name),
        ticks: "",
        automargin: true,
      },
      {
        margin: { l: 150, r: 18, t: 16, b: 54 },
        showlegend: false,
        annotations: shares.map(({ id, sharePct }) => ({
          text: say`${formatFixed(sharePct, 1)} %`,
          x: 123,
          xanchor: "right",
          y: id,
          showarrow: false,
          font: { size: 14 },
        })),
      },
    ),
  );
}

/** At each size of the band: what is allowed, and between what nine in ten blends lie. */
export function robustnessChart(
  title: Text,
  { points, insideProbability, worst, draws }: Robustness,
): Figure {
  const x = points.map(({ sizeMm }) => say`${formatPlain(sizeMm, 3)} mm`);
  const percent = (part: number) => say`${formatNumber(100 * part, 3)} %`;
  const sentences = points.map(
    (point, i) =>
      say`At ${x[i]}: 90 % of the blends between ${formatNumber(point.p05Pct, 3)} and ${formatNumber(point.p95Pct, 3)} %, allowed ${formatNumber(point.lowPct, 3)} to ${formatNumber(point.highPct, 3)} %, inside in ${percent(point.insideProbability)}.`,
  );
  return figureOf(
    title,
    say`${title}. ${percent(insideProbability)} of ${draws} drawn blends stay inside the band at every size; the worst size is ${formatNumber(worst.sizeMm, 2)} mm. ${joinTexts(sentences, " ")}`,
    [
      {
        type: "bar",
        name: say`allowed`,
        x,
        base: points.map(({ lowPct }) => lowPct),
        y: points.map(({ lowPct, highPct }) => highPct - lowPct),
        width: 0.5,
        marker: {
          color: translucent(PALETTE.ochre, 0.22),
          line: { color: PALETTE.ochre, width: 1 },
        },
      },
      {
        type: "scatter",
        mode: "markers",
        name: say`median and 90 % range of the blends`,
        x,
        y: points.map(({ medianPct }) => medianPct),
        marker: { color: PALETTE.azurite, symbol: "diamond", size: 9 },
        error_y: {
          type: "data",
          symmetric: false,
          array: points.map(({ p95Pct, medianPct }) => p95Pct - medianPct),
          arrayminus: points.map(({ p05Pct, medianPct }) => medianPct - p05Pct),
          color: PALETTE.azurite,
          thickness: 2.5,
          width: 8,
        },
      },
    ],
    baseLayout(
      { title: say`Grain size`, type: "category" },
      { title: say`Passing (% of dry mass)`, range: [0, 108], tickvals: [0, 20, 40, 60, 80, 100] },
      {
        annotations: points.map((point, i) => ({
          text: percent(point.insideProbability),
          x: x[i],
          y: Math.min(104, Math.max(point.highPct, point.p95Pct) + 4),
          showarrow: false,
          font: { size: 13 },
        })),
      },
    ),
  );
}
