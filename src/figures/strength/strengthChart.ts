import type { StudyConfig } from "../../entries/studyConfig.js";
import type { SpecimenRecord } from "../../lab/specimens.js";
import {
  displayUnit,
  displayValue,
  formatFixed,
  formatQuantity,
  type UnitSystem,
} from "../../quantities/format.js";
import type { FittedStrength } from "../../strength/regression/curve.js";
import type { StrengthStudy, StudyResult } from "../../study/studyResult.js";
import { joinTexts, say, type Text, wordFor } from "../../words/message.js";
import type { Figure } from "../figure.js";
import { baseLayout, PALETTE } from "../style.js";

const BOUND_NAMES = {
  mean: say`lower bound of the mean`,
  prediction: say`lower bound of one further block`,
  tolerance: say`bound that 95 % of blocks exceed`,
};

/** Strength against cement content: blocks, fitted mean with its band, the bound, the requirement. */
export function strengthChart(title: Text, { config, strength }: StudyResult): Figure {
  const { units } = config;
  const { ageDays, statistic, strengthMpa: requirementMpa } = config.strength.requirement;
  const { bands, specimens, fit } = strength;
  const boundName = BOUND_NAMES[statistic];
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const x = bands.map(({ cementPct }) => cementPct);
  const lineTrace = (name: Text, values: readonly number[], more: object) => ({
    type: "scatter",
    mode: "lines",
    name,
    x,
    y: values.map(stress),
    ...more,
  });
  const points = (name: Text, keep: (specimen: SpecimenRecord) => boolean, marker: object) => {
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
      say`${wordFor(fit.line)} at ${ageDays} d`,
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
          points(say`excluded`, (block) => Boolean(block.excluded), {
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

/** The strength chart in words, from the same numbers. */
function strengthChartText(
  title: Text,
  config: StudyConfig,
  { bands, specimens, fit, leastCement }: StrengthStudy,
  boundName: Text,
): Text {
  const { statistic, strengthMpa } = config.strength.requirement;
  const [first, last] = [bands[0], bands[bands.length - 1]];
  const strength = (mpa: number) => formatQuantity(mpa, "stress", config.units);
  const least =
    leastCement.cementPct === null
      ? say`Within the tested contents no least cement content is found.`
      : say`The bound meets the requirement from ${formatFixed(leastCement.cementPct, 2)} % cement.`;
  return joinTexts(
    [
      say`${title}. ${specimens.length} blocks.`,
      say`The fitted ${wordFor(fit.line)} at ${fit.ageDays} days goes from ${strength(first.meanMpa)} at ${first.cementPct} % to ${strength(last.meanMpa)} at ${last.cementPct} % cement;`,
      say`the ${boundName} from ${strength(first.lowerBoundMpa[statistic])} to ${strength(last.lowerBoundMpa[statistic])}.`,
      say`Required: ${strength(strengthMpa)}. ${least}`,
    ],
    " ",
  );
}

/** Beyond this a studentised residual is worth a look: common practice, no source. */
const LOOK = 2;

/**
 * Studentised residuals against the fitted strength: a funnel shows scatter that grows, a bow the wrong
 * shape, a lone point a block to look at.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { form: "linear", ageDays: 28 });
 * residualsChart("Residuals", fit, "SI").data.length // => 1
 */
export function residualsChart(title: Text, fit: FittedStrength, units: UnitSystem): Figure {
  const shown = fit.points.filter(({ studentised }) => studentised !== null);
  const far = shown.filter(({ studentised }) => Math.abs(studentised!) > LOOK);
  const largest = [...shown].sort((a, b) => Math.abs(b.studentised!) - Math.abs(a.studentised!))[0];
  const level = (y: number, dash: string) => ({
    ...{ type: "line", xref: "paper", x0: 0, x1: 1, y0: y, y1: y },
    line: { color: PALETTE.manganese, width: 1, dash },
  });
  const altText = largest
    ? say`Studentised residuals of ${shown.length} blocks of ${fit.ageDays} days against fitted strength. ${far.length} lie beyond plus or minus ${LOOK}${far.length > 0 ? `: ${far.map(({ id }) => id).join(", ")}` : ""}. The largest is ${formatFixed(largest.studentised!, 1)}, of block ${largest.id} at a fitted ${formatQuantity(largest.fittedMpa, "stress", units)}.`
    : say`No studentised residuals: the blocks are too few, or lie exactly on the curve.`;
  return {
    kind: "figure",
    title,
    altText,
    data: [
      {
        ...{ type: "scatter", mode: "markers+text", name: say`blocks`, showlegend: false },
        x: shown.map(({ fittedMpa }) => displayValue(fittedMpa, "stress", units)),
        y: shown.map(({ studentised }) => studentised),
        text: shown.map((point) => (far.includes(point) ? point.id : "")),
        textposition: "top center",
        marker: { color: PALETTE.azurite, symbol: "circle", size: 7 },
      },
    ],
    layout: baseLayout(
      { title: say`Fitted strength (${displayUnit("stress", units)})` },
      { title: say`Studentised residual` },
      { shapes: [level(0, "solid"), level(LOOK, "dot"), level(-LOOK, "dot")] },
    ),
  };
}
