import {
  displayUnit,
  displayValue,
  formatQuantity,
  type UnitSystem,
} from "../quantities/displayUnits.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { baseLayout } from "./baseLayout.js";
import type { Figure } from "./figure.js";
import { PALETTE } from "./palette.js";

export interface StrengthChartInput {
  readonly title: string;
  readonly units: UnitSystem;
  readonly ageDays: number;
  readonly specimens: readonly {
    readonly id: string;
    readonly cementPct: number;
    readonly ageDays: number;
    readonly strengthMpa: number;
    readonly excluded?: string;
  }[];
  /** The fitted mean and its bands at the age of the requirement, in order of cement content. */
  readonly line: readonly {
    readonly cementPct: number;
    readonly meanMpa: number;
    readonly meanLowMpa: number;
    readonly meanHighMpa: number;
    /** The one-sided bound that the requirement is held against. */
    readonly boundMpa: number;
  }[];
  readonly boundName: string;
  readonly requirementMpa: number;
  readonly leastCementPct?: number;
}

/** Strength against cement content: blocks, fitted mean with its band, the bound, the requirement. */
export function strengthChart(input: StrengthChartInput): Figure {
  const { units, ageDays, line, specimens } = input;
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const x = line.map(({ cementPct }) => cementPct);
  const lineTrace = (name: string, values: readonly number[], more: object) => ({
    type: "scatter",
    mode: "lines",
    name,
    x,
    y: values.map(stress),
    ...more,
  });
  const points = (
    name: string,
    keep: (specimen: StrengthChartInput["specimens"][number]) => boolean,
    marker: object,
  ) => {
    const chosen = specimens.filter(keep);
    return {
      type: "scatter",
      mode: "markers",
      name,
      x: chosen.map(({ cementPct }) => cementPct),
      y: chosen.map(({ strengthMpa }) => stress(strengthMpa)),
      text: chosen.map(({ id, excluded }) => (excluded ? `${id}, excluded: ${excluded}` : id)),
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
      line.map((at) => at.meanHighMpa),
      { ...edge, showlegend: false },
    ),
    lineTrace(
      "95 % band of the mean",
      line.map((at) => at.meanLowMpa),
      {
        ...edge,
        fill: "tonexty",
        fillcolor: "rgba(1,98,156,0.16)",
      },
    ),
    lineTrace(
      `mean at ${ageDays} d`,
      line.map((at) => at.meanMpa),
      {
        line: { color: PALETTE.azurite, width: 2.5 },
      },
    ),
    lineTrace(
      input.boundName,
      line.map((at) => at.boundMpa),
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
  const required = stress(input.requirementMpa);
  const level = {
    type: "line",
    xref: "paper",
    x0: 0,
    x1: 1,
    y0: required,
    y1: required,
    line: { color: PALETTE.manganese, width: 1.5, dash: "dot" },
  };
  const least = input.leastCementPct;
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
    title: input.title,
    altText: describe(input),
    data,
    layout: baseLayout(
      { title: "Cement (% of the dry mass of soil and aggregate)" },
      { title: `Compressive strength (${displayUnit("stress", units)})`, rangemode: "tozero" },
      {
        shapes: least === undefined ? [level] : [level, drop],
        annotations: [
          {
            text: `required ${formatQuantity(input.requirementMpa, "stress", units)}`,
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

function describe(input: StrengthChartInput): string {
  const { line, units } = input;
  const [first, last] = [line[0], line[line.length - 1]];
  const strength = (mpa: number) => formatQuantity(mpa, "stress", units);
  const least =
    input.leastCementPct === undefined
      ? "Within the tested contents no least cement content is found."
      : `The bound meets the requirement from ${formatFixed(input.leastCementPct, 2)} % cement.`;
  return [
    `${input.title}. ${input.specimens.length} blocks.`,
    `The fitted mean at ${input.ageDays} days goes from ${strength(first.meanMpa)} at ${first.cementPct} % to ${strength(last.meanMpa)} at ${last.cementPct} % cement;`,
    `${input.boundName} from ${strength(first.boundMpa)} to ${strength(last.boundMpa)}.`,
    `Required: ${strength(input.requirementMpa)}. ${least}`,
  ].join(" ");
}
