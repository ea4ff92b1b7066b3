import type { FrontierPoint, TernaryMap, TernaryPoint } from "../../blend/tradeoffs.js";
import { formatFixed, formatNumber } from "../../quantities/format.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { type Figure, figureOf } from "../figure.js";
import { baseLayout, GRID, GROUND, PALETTE, QUIET } from "../style.js";

/**
 * What a better fit costs: difference from the target against cost per tonne or share of site soil.
 *
 * @param names of the materials in the order of the shares, for the text alternative.
 */
export function frontierChart(
  title: Text,
  frontier: readonly FrontierPoint[],
  axis: Text,
  names: readonly Text[],
): Figure {
  const described = [frontier[0], frontier[frontier.length - 1]]
    .filter((point) => point !== undefined)
    .map(({ value, rmsDifferencePct, sharesPct }) => {
      const shares = sharesPct.map((share, j) => say`${names[j]} ${formatFixed(share, 1)} %`);
      return say`at ${formatNumber(value, 3)} the difference is ${formatNumber(rmsDifferencePct, 3)} points (${joinTexts(shares)})`;
    });
  return figureOf(
    title,
    say`${title}. ${axis} against the root mean square difference from the target: ${described.length > 0 ? joinTexts(described, "; ") : say`no blend keeps the limits`}.`,
    [
      {
        type: "scatter",
        mode: "lines+markers",
        name: say`best blend`,
        x: frontier.map(({ value }) => value),
        y: frontier.map(({ rmsDifferencePct }) => rmsDifferencePct),
        line: { color: PALETTE.umber, width: 2 },
        marker: { color: PALETTE.umber, symbol: "circle", size: 7 },
      },
    ],
    baseLayout(
      { title: axis },
      { title: say`Difference from the target<br>(points, root mean square)`, rangemode: "tozero" },
      { showlegend: false },
    ),
  );
}

/** Darker is nearer; the size of the mark says it too. */
const CLASSES = [
  { upTo: 1.25, color: PALETTE.umber, size: 11 },
  { upTo: 2, color: PALETTE.redEarth, size: 8.5 },
  { upTo: 4, color: PALETTE.ochre, size: 6 },
  { upTo: Infinity, color: PALETTE.ochre, size: 3.5 },
] as const;

/**
 * All blends of three materials: each corner is one material alone. Marks are larger and darker the
 * nearer the blend is to its target, in multiples of the best difference; crosses break a limit.
 */
export function ternaryChart(
  title: Text,
  map: TernaryMap,
  names: readonly [Text, Text, Text],
): Figure {
  const allowed = map.points.filter((point) => point.allowed);
  const nearest = allowed.reduce(
    (smallest, { rmsDifferencePct }) => Math.min(smallest, rmsDifferencePct),
    map.best?.rmsDifferencePct ?? Infinity,
  );
  // Where the target is met exactly, multiples of nothing would all be far.
  const unit = Math.max(nearest, 1);
  const classOf = ({ rmsDifferencePct }: TernaryPoint) =>
    CLASSES.findIndex(({ upTo }) => rmsDifferencePct <= upTo * unit);
  const below = (at: number) => say`${formatNumber(CLASSES[at].upTo * unit, 3)} points`;
  const data = [
    trace(
      map.points.filter((point) => !point.allowed),
      say`breaks a limit`,
      { color: QUIET.border, size: 5, symbol: "x-thin", line: { color: QUIET.border, width: 1 } },
    ),
    ...CLASSES.map(({ color, size }, at) =>
      trace(
        allowed.filter((point) => classOf(point) === at),
        at === CLASSES.length - 1 ? say`more than ${below(at - 1)}` : say`up to ${below(at)}`,
        { color, size, symbol: "circle" },
      ),
    ),
    trace(map.best ? [map.best] : [], say`best blend`, {
      color: "#ffffff",
      size: 15,
      symbol: "star",
      line: { color: PALETTE.manganese, width: 1.6 },
    }),
  ].filter(({ a }) => a.length > 0);
  const axis = (name: Text) => ({
    title: { text: say`${name} (%)`, font: { size: 12 } },
    tickfont: { size: 11 },
    tickvals: [20, 40, 60, 80],
    linecolor: PALETTE.manganese,
    gridcolor: GRID.line,
    min: 0,
  });
  const best = map.best?.sharesPct.map((share, j) => say`${names[j]} ${formatFixed(share, 1)} %`);
  return figureOf(
    title,
    say`${title}. Map of all blends of ${joinTexts(names)}: ${allowed.length} of ${map.points.length} blends in even steps keep all limits. ${
      best
        ? say`The best, ${joinTexts(best)}, differs from the target by ${formatNumber(map.best!.rmsDifferencePct, 3)} points; ${allowed.filter((point) => classOf(point) === 0).length} blends differ by no more than ${below(0)}.`
        : say`No blend keeps all limits.`
    }`,
    data,
    {
      ...GROUND,
      margin: { l: 70, r: 70, t: 46, b: 72 },
      ternary: {
        sum: 100,
        bgcolor: "#ffffff",
        aaxis: axis(names[0]),
        baxis: axis(names[1]),
        caxis: axis(names[2]),
      },
      legend: { orientation: "h", x: 0.5, xanchor: "center", y: -0.2, yanchor: "top" },
    },
  );
}

function trace(points: readonly TernaryPoint[], name: Text, marker: object) {
  return {
    type: "scatterternary",
    mode: "markers",
    name,
    a: points.map(({ sharesPct }) => sharesPct[0]),
    b: points.map(({ sharesPct }) => sharesPct[1]),
    c: points.map(({ sharesPct }) => sharesPct[2]),
    marker,
  };
}
