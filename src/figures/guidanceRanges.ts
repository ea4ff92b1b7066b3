import {
  type GuidanceComparison,
  type GuidanceDisagreement,
  recommendedRange,
} from "../guidance/comparison.js";
import { formatFixed } from "../quantities/format.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import { type Figure, figureOf } from "./figure.js";
import { baseLayout, PALETTE, QUIET, translucent, verticalLine } from "./style.js";

/** Fewer sources are told as well by a sentence. */
const MIN_SOURCES = 3;
/** Height of a row, and of title, legend and axis around the rows, in CSS pixels. */
const ROW_PX = 26;
const FRAME_PX = 140;

/**
 * One small chart for each measured quantity that three sources or more limit differently: the range of each as a
 * bar, and the measured value as a line across them. Nothing is averaged.
 *
 * @param comparison of `compareGuidance`: `guidanceComparison` of a result.
 * @param name whose value was measured, for the titles.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.002, passingPct: 18, origin: "sedimentation" }, { sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 20, passingPct: 100, origin: "sieve" }] };
 * const entries = ["walker-2005", "keable-sazs-ars", "hb195"].map((id) => GUIDANCE_ENTRIES.find((entry) => entry.id === id));
 * guidanceRangesCharts(compareGuidance(curve, entries), "Site soil").map(({ title }) => render(title)) // => ["Recommended clay (up to 0.002 mm) and Site soil", "Recommended silt (0.002 to 0.063 mm) and Site soil", "Recommended sand and gravel (above 0.063 mm) and Site soil"]
 */
export function guidanceRangesCharts(comparison: GuidanceComparison, name: Text): Figure[] {
  return comparison.disagreements
    .filter(({ sides, measuredPct }) => sides.length >= MIN_SOURCES && measuredPct !== undefined)
    .map((disagreement) =>
      guidanceRangesChart(say`Recommended ${disagreement.what} and ${name}`, disagreement),
    );
}

/**
 * The ranges that several sources recommend for one quantity, each as a bar, with the measured value as a
 * line across them.
 *
 * @param disagreement one of those that `compareGuidance` found.
 *
 * @example
 * const sides = [{ source: "A", lowPct: 10, highPct: 30, verdict: "inside" }, { source: "B", lowPct: 0, highPct: 15, verdict: "outside" }];
 * render(guidanceRangesChart("Clay", { what: "clay", measuredPct: 20, sides }).altText) // => "Clay. clay, measured 20.0 %. A: 10 to 30 % (inside); B: 0 to 15 % (outside)."
 */
export function guidanceRangesChart(
  title: Text,
  { what, measuredPct, sides }: GuidanceDisagreement,
): Figure {
  const top = Math.min(100, 1.15 * Math.max(1, measuredPct ?? 0, ...sides.map(endOf)));
  const recommended = sides.map(
    ({ source, lowPct, highPct, verdict }) =>
      say`${source}: ${recommendedRange(lowPct, highPct)} (${wordFor(verdict)})`,
  );
  const words = joinTexts(recommended, "; ");
  const measured = measuredPct === undefined ? undefined : formatFixed(measuredPct, 1);
  const line = { color: PALETTE.manganese, width: 2, dash: "dash" };
  return figureOf(
    title,
    measured === undefined
      ? say`${title}. ${what}, not measured. ${words}.`
      : say`${title}. ${what}, measured ${measured} %. ${words}.`,
    [
      ...GROUPS.flatMap((group) => {
        const some = sides.filter(({ verdict }) => group.verdicts.includes(verdict));
        return some.length === 0 ? [] : [rangeBars(group, some, top)];
      }),
      ...(measured === undefined
        ? []
        : [
            {
              type: "scatter",
              mode: "lines",
              name: say`measured ${measured} %`,
              // For the legend: a shape draws the line from edge to edge.
              x: [measuredPct],
              y: [sides[0].id],
              line,
            },
          ]),
    ],
    baseLayout(
      {
        title: sides.some(({ remembered }) => remembered)
          ? say`${what} (%)<br>* from memory, not read`
          : say`${what} (%)`,
        range: [0, top],
      },
      {
        title: "",
        type: "category",
        // Two sources may be cited alike: each has a row of its own.
        categoryarray: sides.map(({ id }) => id),
        autorange: "reversed",
        tickvals: sides.map(({ id }) => id),
        ticktext: sides.map(({ source, remembered }) => (remembered ? say`${source}*` : source)),
        ticks: "",
        automargin: true,
      },
      {
        showlegend: true,
        margin: { l: 62, r: 18, t: 16, b: 66 },
        barmode: "overlay",
        shapes: measuredPct === undefined ? [] : [verticalLine(measuredPct, line)],
      },
    ),
    FRAME_PX + ROW_PX * sides.length,
  );
}

type Side = GuidanceDisagreement["sides"][number];

/** The verdicts on the measured value, told apart by colour and hatching. */
const GROUPS: readonly {
  readonly name: Text;
  readonly verdicts: readonly Side["verdict"][];
  readonly color: string;
  readonly hatch: string;
}[] = [
  { name: say`measured value inside`, verdicts: ["inside"], color: PALETTE.greenEarth, hatch: "" },
  { name: say`measured value outside`, verdicts: ["outside"], color: PALETTE.redEarth, hatch: "/" },
  {
    name: say`recommended`,
    verdicts: ["not measured", "not classified"],
    color: QUIET.border,
    hatch: "",
  },
];

function rangeBars(
  { name, color, hatch }: (typeof GROUPS)[number],
  sides: readonly Side[],
  top: number,
): object {
  return {
    type: "bar",
    orientation: "h",
    name,
    y: sides.map(({ id }) => id),
    base: sides.map(({ lowPct = 0 }) => lowPct),
    x: sides.map(({ lowPct = 0, highPct = top }) => highPct - lowPct),
    width: 0.56,
    marker: {
      color: translucent(color, 0.35),
      line: { color, width: 1.2 },
      pattern: { shape: hatch },
    },
  };
}

function endOf({ lowPct = 0, highPct = lowPct }: Side): number {
  return highPct;
}
