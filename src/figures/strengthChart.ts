import type { SpecimenRecord } from "../lab/specimenRecord.js";
import { displayUnit, displayValue, formatQuantity } from "../quantities/displayUnits.js";
import type { StudyResult } from "../study/studyResult.js";
import { phrase, say, sayOf } from "../words/say.js";
import { baseLayout } from "./baseLayout.js";
import type { Figure } from "./figure.js";
import { PALETTE } from "./palette.js";
import { strengthChartText } from "./strengthChartText.js";

const BOUND_NAMES = {
  mean: phrase`lower bound of the mean`,
  prediction: phrase`lower bound of one further block`,
  tolerance: phrase`bound that 95 % of blocks exceed`,
};

/** Strength against cement content: blocks, fitted mean with its band, the bound, the requirement. */
export function strengthChart(title: string, { config, strength }: StudyResult): Figure {
  const { units } = config;
  const { ageDays, statistic, strengthMpa: requirementMpa } = config.strength.requirement;
  const { bands, specimens, fit } = strength;
  const boundName = sayOf(BOUND_NAMES[statistic]);
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const x = bands.map(({ cementPct }) => cementPct);
  const lineTrace = (name: string, values: readonly number[], more: object) => ({
    type: "scatter",
    mode: "lines",
    name,
    x,
    y: values.map(stress),
    ...more,
  });
  const points = (name: string, keep: (specimen: SpecimenRecord) => boolean, marker: object) => {
    const chosen = specimens.filter(keep);
    return {
      type: "scatter",
      mode: "markers",
      name,
      x: chosen.map(({ cementPct }) => cementPct),
      y: chosen.map(({ strengthMpa }) => stress(strengthMpa)),
      text: chosen.map(({ id, excluded }) => (excluded ? say`${id}, excluded: ${excluded}` : id)),
      marker,
    };
  };
  const ages = [...new Set(specimens.map((specimen) => specimen.ageDays))].sort((a, b) => a - b);
  const others = ages.filter((age) => age !== ageDays);
  const excluded = specimens.some((specimen) => specimen.excluded);
  const edge = { line: { color: PALETTE.azurite, width: 0 }, hoverinfo: "skip" };
  const data = [
    lineTrace(
      "",
      bands.map((at) => at.meanHighMpa),
      { ...edge, showlegend: false },
    ),
    lineTrace(
      say`band of the mean`,
      bands.map((at) => at.meanLowMpa),
      {
        ...edge,
        fill: "tonexty",
        fillcolor: "rgba(1,98,156,0.16)",
      },
    ),
    lineTrace(
      say`${sayOf(fit.line)} at ${ageDays} d`,
      bands.map((at) => at.meanMpa),
      {
        line: { color: PALETTE.azurite, width: 2.5 },
      },
    ),
    lineTrace(
      boundName,
      bands.map((at) => at.lowerBoundMpa[statistic]),
      {
        line: { color: PALETTE.redEarth, width: 2, dash: "dash" },
      },
    ),
    points(`${ageDays} d`, (block) => block.ageDays === ageDays && !block.excluded, {
      color: PALETTE.azurite,
      symbol: "circle",
      size: 7,
    }),
    ...others.map((age) =>
      points(`${age} d`, (block) => block.ageDays === age && !block.excluded, {
        color: PALETTE.greenEarth,
        symbol: "square-open",
        size: 7,
      }),
    ),
    ...(excluded
      ? [
          points("excluded", (block) => Boolean(block.excluded), {
            color: PALETTE.manganese,
            symbol: "x-thin-open",
            size: 8,
          }),
        ]
      : []),
  ];
  const required = stress(requirementMpa);
  const level = {
    type: "line",
    xref: "paper",
    x0: 0,
    x1: 1,
    y0: required,
    y1: required,
    line: { color: PALETTE.manganese, width: 1.5, dash: "dot" },
  };
  const least = strength.leastCement.cementPct ?? undefined;
  const drop = {
    type: "line",
    x0: least,
    x1: least,
    yref: "paper",
    y0: 0,
    y1: 1,
    line: { color: PALETTE.redEarth, width: 1, dash: "dot" },
  };
  return {
    kind: "figure",
    title,
    altText: strengthChartText(title, config, strength, boundName),
    data,
    layout: baseLayout(
      { title: say`Cement (% of the dry mass of soil and aggregate)` },
      { title: say`Compressive strength (${displayUnit("stress", units)})`, rangemode: "tozero" },
      {
        shapes: least === undefined ? [level] : [level, drop],
        annotations: [
          {
            text: say`required ${formatQuantity(requirementMpa, "stress", units)}`,
            xref: "paper",
            x: 1,
            xanchor: "right",
            y: required,
            yanchor: "bottom",
            showarrow: false,
          },
        ],
      },
    ),
  };
}
