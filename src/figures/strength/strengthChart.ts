import type { NoteBlock } from "../../blocks/block.js";
import type { RequirementStatistic, StudyConfig } from "../../entries/studyConfig.js";
import type { SpecimenRecord } from "../../lab/specimens.js";
import {
  displayUnit,
  displayValue,
  formatFixed,
  formatQuantity,
  type UnitSystem,
} from "../../quantities/format.js";
import type { LeastCement } from "../../strength/leastCement.js";
import type { StrengthBand } from "../../strength/regression/bounds.js";
import type { FittedStrength } from "../../strength/regression/curve.js";
import { notKnownYet } from "../../study/stages.js";
import type { StrengthStudy, StudyResult } from "../../study/studyResult.js";
import { joinTexts, say, type Text, wordFor } from "../../words/message.js";
import { type Figure, figureOf } from "../figure.js";
import { baseLayout, horizontalLine, PALETTE, translucent, verticalLine } from "../style.js";

/** The bound of a requirement, as the trade calls it; a legend has its parts on two lines. */
function boundName(statistic: RequirementStatistic, confidence: number, separator = " "): Text {
  switch (statistic) {
    case "mean":
      return say`lower bound of the mean`;
    case "prediction":
      return say`prediction bound (one further block)`;
    case "tolerance":
      return joinTexts(
        [
          say`95 % / ${Number((100 * confidence).toPrecision(4))} % tolerance bound`,
          say`(exceeded by 95 % of blocks)`,
        ],
        separator,
      );
  }
}

/** Bound that is drawn where no requirement names one: that of one further block, with 95 % probability. */
const USUAL = { statistic: "prediction", confidence: 0.95 } as const;

/**
 * Strength against cement content: blocks, fitted mean with its band, the bound, and the requirement where
 * the study states one; a note where no curve is known yet. Where the blend of the study was not tested the
 * title says that the blocks are of another.
 */
export function strengthChart(heading: Text, result: StudyResult): Figure | NoteBlock {
  const { config, strength, testing } = result;
  if (!strength) return notKnownYet(result, "blocks");
  // A blend that was not tested has no strength: what is drawn is that of another.
  const title = testing?.state === "proposed" ? say`${heading}: blocks of another blend` : heading;
  const { units } = config;
  const { requirement } = config.strength;
  const { statistic, confidence } = requirement ?? USUAL;
  const { bands, fit } = strength;
  const name = boundName(statistic, confidence);
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const line = (strengthOf: (band: StrengthBand) => number, more: object) => ({
    type: "scatter",
    mode: "lines",
    x: bands.map(({ cementPct }) => cementPct),
    y: bands.map((band) => stress(strengthOf(band))),
    ...more,
  });
  const edge = { line: { color: PALETTE.azurite, width: 0 }, hoverinfo: "skip" };
  const least = strength.leastCement?.cementPct ?? null;
  return figureOf(
    title,
    strengthChartText(title, config, strength, name),
    [
      line(({ meanHighMpa }) => meanHighMpa, { ...edge, name: "", showlegend: false }),
      line(({ meanLowMpa }) => meanLowMpa, {
        ...edge,
        name: say`band of the mean`,
        fill: "tonexty",
        fillcolor: translucent(PALETTE.azurite, 0.16),
      }),
      line(({ meanMpa }) => meanMpa, {
        name: say`${wordFor(fit.line)} at ${fit.ageDays} d`,
        line: { color: PALETTE.azurite, width: 2.5 },
      }),
      line(({ lowerBoundMpa }) => lowerBoundMpa[statistic], {
        name: boundName(statistic, confidence, "<br>"),
        line: { color: PALETTE.redEarth, width: 2, dash: "dash" },
      }),
      ...blockTraces(strength.specimens, fit.ageDays, stress),
    ],
    baseLayout(
      { title: say`Cement (% of the dry mass of soil and aggregate)` },
      { title: say`Compressive strength (${displayUnit("stress", units)})`, rangemode: "tozero" },
      {
        shapes: [
          ...(requirement ? [horizontalLine(stress(requirement.strengthMpa), REQUIRED)] : []),
          ...(least === null ? [] : [verticalLine(least, LEAST_CEMENT)]),
        ],
        annotations: [
          ...(requirement ? [requiredLabel(requirement.strengthMpa, units)] : []),
          ...(least === null ? [] : [leastCementLabel(least, bands)]),
        ],
      },
    ),
  );
}

const REQUIRED = { color: PALETTE.manganese, width: 1.5, dash: "dot" } as const;
const LEAST_CEMENT = { color: PALETTE.redEarth, width: 1, dash: "dot" } as const;

function requiredLabel(strengthMpa: number, units: UnitSystem): object {
  return {
    text: say`required ${formatQuantity(strengthMpa, "stress", units)}`,
    xref: "paper",
    x: 1,
    xanchor: "right",
    y: displayValue(strengthMpa, "stress", units),
    yanchor: "bottom",
    showarrow: false,
  };
}

/** The name of the line of the least cement, at its foot and on the side with more room. */
function leastCementLabel(contentPct: number, bands: StrengthStudy["bands"]): object {
  const middlePct = (bands[0].cementPct + bands[bands.length - 1].cementPct) / 2;
  const toRight = contentPct < middlePct;
  return {
    text: say`least cement ${formatFixed(contentPct, 2)} %`,
    x: contentPct,
    xanchor: toRight ? "left" : "right",
    xshift: toRight ? 3 : -3,
    yref: "paper",
    y: 0,
    yanchor: "bottom",
    showarrow: false,
  };
}

/** The blocks of the age that counts, those of each other age, and those left out. */
function blockTraces(
  specimens: readonly SpecimenRecord[],
  ageDays: number,
  stress: (mpa: number) => number,
): object[] {
  const trace = (name: Text, blocks: readonly SpecimenRecord[], marker: object) => ({
    type: "scatter",
    mode: "markers",
    name,
    x: blocks.map(({ cementPct }) => cementPct),
    y: blocks.map(({ strengthMpa }) => stress(strengthMpa)),
    text: blocks.map(({ id, excluded }) => (excluded ? say`${id}, excluded: ${excluded}` : id)),
    marker,
  });
  const included = specimens.filter(({ excluded }) => !excluded);
  const excluded = specimens.filter((block) => block.excluded);
  const ofAge = (age: number) => included.filter((block) => block.ageDays === age);
  const otherAges = [...new Set(specimens.map((block) => block.ageDays))]
    .filter((age) => age !== ageDays)
    .sort((a, b) => a - b);
  const traces = [
    trace(say`${ageDays} d`, ofAge(ageDays), { color: PALETTE.azurite, symbol: "circle", size: 7 }),
    ...otherAges.map((age) =>
      trace(say`${age} d`, ofAge(age), {
        color: PALETTE.greenEarth,
        symbol: "square-open",
        size: 7,
      }),
    ),
  ];
  if (excluded.length > 0) {
    const marker = { color: PALETTE.manganese, symbol: "x-thin-open", size: 8 };
    traces.push(trace(say`excluded`, excluded, marker));
  }
  return traces;
}

/** The strength chart in words, from the same numbers. */
function strengthChartText(
  title: Text,
  config: StudyConfig,
  { bands, specimens, fit, leastCement }: StrengthStudy,
  name: Text,
): Text {
  const { requirement } = config.strength;
  const { statistic } = requirement ?? USUAL;
  const [first, last] = [bands[0], bands[bands.length - 1]];
  const strength = (mpa: number) => formatQuantity(mpa, "stress", config.units);
  return joinTexts(
    [
      say`${title}. ${specimens.length} blocks.`,
      say`The fitted ${wordFor(fit.line)} at ${fit.ageDays} days goes from ${strength(first.meanMpa)} at ${first.cementPct} % to ${strength(last.meanMpa)} at ${last.cementPct} % cement;`,
      say`the ${name} from ${strength(first.lowerBoundMpa[statistic])} to ${strength(last.lowerBoundMpa[statistic])}.`,
      requirement
        ? say`Required: ${strength(requirement.strengthMpa)}.`
        : say`No requirement is entered yet.`,
      leastCement && leastCementWords(leastCement),
    ],
    " ",
  );
}

function leastCementWords({ cementPct }: LeastCement): Text {
  return cementPct === null
    ? say`Within the tested contents no least cement content is found.`
    : say`The bound meets the requirement from ${formatFixed(cementPct, 2)} % cement.`;
}

/** Beyond this a studentised residual is worth a look: common practice, no source. */
const LARGE_RESIDUAL = 2;

/**
 * Studentised residuals against the fitted strength: a funnel shows scatter that grows, a bow the wrong
 * shape, a lone point a block to look at.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { model: "linear", ageDays: 28 });
 * residualsChart("Residuals", fit, "SI").data.length // => 1
 */
export function residualsChart(title: Text, fit: FittedStrength, units: UnitSystem): Figure {
  const shown = fit.points.flatMap(({ id, fittedMpa, studentised }) =>
    studentised === null ? [] : [{ id, fittedMpa, studentised }],
  );
  const residuals = shown.map(({ studentised }) => studentised);
  const isFar = ({ studentised }: { readonly studentised: number }) =>
    Math.abs(studentised) > LARGE_RESIDUAL;
  const level = (y: number, dash: string) =>
    horizontalLine(y, { color: PALETTE.manganese, width: 1, dash });
  return figureOf(
    title,
    residualsText(fit.ageDays, shown, shown.filter(isFar), units),
    [
      {
        type: "scatter",
        mode: "markers+text",
        name: say`blocks`,
        showlegend: false,
        x: shown.map(({ fittedMpa }) => displayValue(fittedMpa, "stress", units)),
        y: residuals,
        text: shown.map((point) => (isFar(point) ? point.id : "")),
        textposition: "top center",
        marker: { color: PALETTE.azurite, symbol: "circle", size: 7 },
      },
    ],
    baseLayout(
      { title: say`Fitted strength (${displayUnit("stress", units)})` },
      // the lines of what is large stay off the frame
      {
        title: say`Studentised residual about the curve`,
        range: [
          Math.min(-LARGE_RESIDUAL, ...residuals) - 0.5,
          Math.max(LARGE_RESIDUAL, ...residuals) + 0.5,
        ],
      },
      {
        shapes: [level(0, "solid"), level(LARGE_RESIDUAL, "dot"), level(-LARGE_RESIDUAL, "dot")],
      },
    ),
  );
}

interface ShownResidual {
  readonly id: string;
  readonly fittedMpa: number;
  readonly studentised: number;
}

function residualsText(
  ageDays: number,
  shown: readonly ShownResidual[],
  far: readonly ShownResidual[],
  units: UnitSystem,
): Text {
  const [max] = [...shown].sort((a, b) => Math.abs(b.studentised) - Math.abs(a.studentised));
  if (!max)
    return say`No studentised residuals: the blocks are too few, or lie exactly on the curve.`;
  const names = far.length > 0 ? `: ${far.map(({ id }) => id).join(", ")}` : "";
  return say`Studentised residuals of ${shown.length} blocks of ${ageDays} days against fitted strength. ${far.length} lie beyond plus or minus ${LARGE_RESIDUAL}${names}. The largest is ${formatFixed(max.studentised, 1)}, of block ${max.id} at a fitted ${formatQuantity(max.fittedMpa, "stress", units)}.`;
}
