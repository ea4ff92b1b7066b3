import type { BlendResult } from "../blend/blendMaterials.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { MaterialConfig } from "../study/studyConfig.js";
import { say } from "../words/say.js";
import { baseLayout } from "./baseLayout.js";
import type { Figure } from "./figure.js";
import { PALETTE, seriesStyle } from "./palette.js";

/** Shares of dry mass as bars, each with the range that it was allowed. */
export function sharesChart(
  title: string,
  materials: readonly MaterialConfig[],
  blend: BlendResult,
): Figure {
  const shares = materials.map((material) => ({
    ...material,
    sharePct: blend.shares.find(({ id }) => id === material.id)?.sharePct ?? 0,
  }));
  const y = shares.map(({ name }) => name);
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
  return {
    kind: "figure",
    title,
    altText: `${title}. ${shares
      .map(
        ({ name, sharePct, minSharePct, maxSharePct }) =>
          say`${name}: ${formatFixed(sharePct, 1)} % (allowed ${minSharePct} to ${maxSharePct} %)`,
      )
      .join("; ")}.`,
    data,
    layout: baseLayout(
      {
        title: say`Share of the dry mass of soil and aggregate (%)`,
        range: [0, 114],
        tickvals: [0, 20, 40, 60, 80, 100],
      },
      { title: "", autorange: "reversed", ticks: "", automargin: true },
      {
        margin: { l: 150, r: 18, t: 16, b: 54 },
        showlegend: false,
        annotations: shares.map(({ name, sharePct }) => ({
          text: `${formatFixed(sharePct, 1)} %`,
          x: 113,
          xanchor: "right",
          y: name,
          showarrow: false,
          font: { size: 14 },
        })),
      },
    ),
  };
}
