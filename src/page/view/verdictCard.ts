import type { LimitState } from "../../blend/description.js";
import type { Figure } from "../../figures/figure.js";
import { strengthChart } from "../../figures/strength/strengthChart.js";
import { PALETTE } from "../../figures/style.js";
import { CAUTIONS } from "../../guidance/cautions.js";
import { shortSource } from "../../guidance/entry.js";
import { formatFixed, formatPlain, formatQuantity } from "../../quantities/format.js";
import type { GuidanceStudy } from "../../study/studyResult.js";
import { statisticName } from "../../tables/strength.js";
import { stateInShort } from "../../tables/trials.js";
import { joinTexts, say, type Text, wordFor } from "../../words/message.js";
import { chartSvg } from "../chartSvg.js";
import { pagePaint } from "../pageStyle.js";
import { keepsLimit, type TunedBlend } from "../tune.js";
import type { App, PageState, View } from "./app.js";
import { el, fill, whenWidthChanges, written } from "./dom.js";

/** The strength of the tested blend with the bench's cement content marked; none where nothing holds for it. */
export function strengthFigure({ tuned }: Readonly<PageState>): Figure | undefined {
  if (!tuned?.trial || !tuned.result.strength) return undefined;
  const figure = strengthChart(say`Strength and cement`, tuned.result);
  const { cementPct } = tuned.mix;
  if (figure.kind !== "figure") return undefined;
  if (cementPct === undefined) return figure;
  const layout = figure.layout as { readonly shapes?: readonly object[] };
  const chosen = {
    ...{ type: "line", x0: cementPct, x1: cementPct, yref: "paper", y0: 0, y1: 1 },
    line: { color: PALETTE.umber, width: 3 },
  };
  return { ...figure, layout: { ...layout, shapes: [...(layout.shapes ?? []), chosen] } };
}

/** What the strength tests say of the mix, in one sentence. */
export function strengthSentence({ result, strength, mix }: TunedBlend): Text | undefined {
  const { band, boundMpa, meets } = strength;
  if (!band || mix.cementPct === undefined) return undefined;
  const { units } = result.config;
  const { requirement } = result.config.strength;
  const mpa = (value: number) => formatQuantity(value, "stress", units);
  const mean = say`With ${formatPlain(mix.cementPct)} % cement the blocks lead to ${mpa(band.meanMpa)} on average (${mpa(band.meanLowMpa)} to ${mpa(band.meanHighMpa)}).`;
  if (!requirement || boundMpa === undefined) return mean;
  const bound = say`Required at ${requirement.ageDays} days: ${mpa(requirement.strengthMpa)}; ${statisticName(requirement.statistic, requirement.confidence)} is ${mpa(boundMpa)}`;
  return joinTexts([mean, meets ? say`${bound}: reached.` : say`${bound}: not reached.`], " ");
}

/** Verdicts line by line, estimates, strength. */
export function verdictCard(app: App): View {
  const { t } = app;
  const overview = el("dl", { class: "facts" });
  const checks = el("div");
  const words = el("div");
  const chart = el("div", { class: "chart" });
  const node = el(
    "section",
    { class: "card verdict", "aria-labelledby": "verdict-title" },
    el("h2", { id: "verdict-title" }, t(say`Verdicts`)),
    overview,
    checks,
    el("h3", {}, t(say`Strength`)),
    words,
    chart,
  );
  const draw = () => {
    const figure = strengthFigure(app.state);
    chart.hidden = !figure;
    if (!figure) return;
    const widthPx = Math.max(300, chart.clientWidth || 640);
    const { locale } = app.state;
    chart.innerHTML = chartSvg(figure, {
      ...{ widthPx, heightPx: Math.min(380, Math.max(280, widthPx * 0.55)) },
      ...{ locale, idPrefix: "strength", paint: pagePaint },
    });
  };
  whenWidthChanges(chart, draw);
  return {
    node,
    refresh() {
      const { tuned } = app.state;
      if (!tuned) return;
      fill(
        overview,
        ...overviewOf(tuned).map(([name, value]) =>
          el("div", {}, el("dt", {}, t(name)), el("dd", {}, t(value))),
        ),
      );
      const { recipe } = app.state;
      // With its recipe the blend has a density, which some recommendations limit.
      const { guidance } = recipe?.result.blend === tuned.blend ? recipe.result : tuned.result;
      fill(checks, ...checkLists(app, guidance, tuned.limits));
      const sentence = strengthSentence(tuned);
      fill(
        words,
        sentence && el("p", { class: "big", id: "strength-words" }, t(sentence)),
        ...tuned.strength.reasons.map((reason) => el("p", { class: "reason" }, t(reason))),
      );
      draw();
    },
  };
}

function overviewOf({ blend, estimates, result }: TunedBlend): (readonly [Text, Text])[] {
  const { clayPct, finesPct, gravelPct } = blend.fractions;
  const pct = (value: number | undefined) =>
    value === undefined ? say`not measured` : say`${formatFixed(value, 1)} %`;
  const names = {
    "plasticity-index": say`Plasticity index, estimated`,
    "linear-shrinkage": say`Linear shrinkage, estimated`,
  };
  return [
    [
      say`Difference from the target, root mean square`,
      say`${formatFixed(blend.rmsDifferencePct, 2)} points`,
    ],
    [say`Clay`, pct(clayPct)],
    [say`Silt and clay`, pct(finesPct)],
    [say`Gravel`, pct(gravelPct)],
    ...estimates.map(
      ({ kind, valuePct, untested }) =>
        [
          names[kind],
          valuePct === undefined ? say`not tested: ${untested.join(", ")}` : pct(valuePct),
        ] as const,
    ),
    ...(result.life ? [[say`State of the mix`, stateInShort(result.life)] as const] : []),
  ];
}

const MARKS = { inside: "✓", outside: "✗", unknown: "?" } as const;

function checkLists(
  app: App,
  guidance: readonly GuidanceStudy[],
  limits: readonly LimitState[],
): HTMLElement[] {
  const { t } = app;
  const line = (state: keyof typeof MARKS, text: Text, sure?: Text) =>
    el(
      "li",
      { class: state },
      el("span", { class: "mark", "aria-hidden": "true" }, MARKS[state]),
      el("span", {}, t(text)),
      sure && el("span", { class: "sure" }, t(sure)),
    );
  const lists = guidance.map(({ check, probability }) =>
    el(
      "div",
      {},
      el("h3", {}, t(say`${shortSource(check.entry)}: ${wordFor(check.verdict)}`)),
      el(
        "ul",
        { class: "checks" },
        ...check.criteria.map(({ verdict, text }, index) =>
          line(
            verdict === "inside" || verdict === "outside" ? verdict : "unknown",
            text,
            verdict === "inside" || verdict === "outside"
              ? say`the same in ${formatPlain(100 * probability.criteria[index].probability, 3)} % of the curves drawn within the reading errors`
              : undefined,
          ),
        ),
        ...(check.others ?? []).map(({ verdict, text }) =>
          line(verdict === "not measured" ? "unknown" : verdict, text),
        ),
      ),
      el("p", { class: "sum" }, t(check.honesty)),
    ),
  );
  if (limits.length > 0) {
    lists.push(
      el(
        "div",
        {},
        el("h3", {}, t(say`Limits of the blend`)),
        el(
          "ul",
          { class: "checks" },
          ...limits.map((limit) => {
            const { label, side, value, unit, estimate } = limit;
            const asked =
              side === "max"
                ? say`${label}: ${formatFixed(value, 1)} ${wordFor(unit)}, at most ${formatPlain(limit.limit)}`
                : say`${label}: ${formatFixed(value, 1)} ${wordFor(unit)}, at least ${formatPlain(limit.limit)}`;
            return line(
              keepsLimit(limit) ? "inside" : "outside",
              asked,
              estimate
                ? say`an estimate from the materials, to be confirmed by a test of the blend`
                : undefined,
            );
          }),
        ),
      ),
    );
  }
  return lists;
}

/** The cautions that stand on every view. */
export function cautions(app: App): HTMLElement {
  return written("div", {}, app.html({ kind: "cautions", items: CAUTIONS }));
}
