import type { LimitState } from "../../blend/description.js";
import type { Figure } from "../../figures/figure.js";
import { strengthChart } from "../../figures/strength/strengthChart.js";
import { PALETTE } from "../../figures/style.js";
import { CAUTIONS } from "../../guidance/cautions.js";
import { type CriterionCheck, estimatedConsistency } from "../../guidance/check.js";
import { shortSource } from "../../guidance/entry.js";
import { probabilityPercent } from "../../guidance/probability.js";
import { formatFixed, formatPlain, formatQuantity } from "../../quantities/format.js";
import type { GuidanceStudy } from "../../study/studyResult.js";
import { statisticName } from "../../tables/strength.js";
import { stateInShort } from "../../tables/trials.js";
import { joinTexts, say, type Text, wordFor } from "../../words/message.js";
import { chartSvg } from "../chartSvg.js";
import { pagePaint } from "../pageStyle.js";
import { type BlendEstimate, keepsLimit, type TunedBlend } from "../tune.js";
import type { App, PageState, View } from "./app.js";
import { blockOf, type Child, card, el, factsOf, fill, remark, whenWidthChanges } from "./dom.js";
import { PAPER_PX } from "./plotCard.js";

/** The strength of the tested blend with the bench's cement content marked; none where nothing holds for it. */
export function strengthFigure({ tuned }: Readonly<PageState>): Figure | undefined {
  if (!tuned?.trial || !tuned.result.strength) return undefined;
  const figure = strengthChart(say`Strength and cement`, tuned.result);
  const { cementPct } = tuned.mix;
  if (figure.kind !== "figure") return undefined;
  if (cementPct === undefined) return figure;
  const layout = figure.layout as { readonly shapes?: readonly object[] };
  const chosen = {
    type: "line",
    x0: cementPct,
    x1: cementPct,
    yref: "paper",
    y0: 0,
    y1: 1,
    line: { color: PALETTE.umber, width: 3 },
  };
  return { ...figure, layout: { ...layout, shapes: [...(layout.shapes ?? []), chosen] } };
}

/** What the strength tests say of the mix, in one sentence. */
export function strengthSentence({ result, strength, mix }: TunedBlend): Text | undefined {
  const { band, confidence, boundMpa, meets, shown, inDoubt } = strength;
  if (!band || !confidence || !result.strength || mix.cementPct === undefined) return undefined;
  const line = wordFor(result.strength.fit.line);
  const { units } = result.config;
  const { requirement } = result.config.strength;
  const mpa = (value: number) => formatQuantity(value, "stress", units);
  const mean = say`With ${formatPlain(mix.cementPct)} % cement: ${line} of the curve ${mpa(band.meanMpa)} (${formatPlain(100 * confidence)} % confidence interval ${mpa(band.meanLowMpa)} to ${mpa(band.meanHighMpa)}).`;
  if (!requirement || boundMpa === undefined) return mean;
  const bound = say`Required at ${requirement.ageDays} days: ${mpa(requirement.strengthMpa)}; ${statisticName(requirement.statistic, requirement.confidence)} is ${mpa(boundMpa)}`;
  const verdict = () => {
    if (!meets) return say`${bound}: not reached.`;
    if (!shown) return say`${bound}. This does not show that the requirement is met.`;
    return inDoubt
      ? say`${bound}: reached by the curve, whose bounds are in doubt (see the findings under “Sheets”).`
      : say`${bound}: reached.`;
  };
  return joinTexts([mean, verdict()], " ");
}

export function verdictCard(app: App): View {
  const { t } = app;
  const overview = el("dl", { class: "facts" });
  const checks = el("div");
  const words = el("div");
  const chart = el("div", { class: "chart" });
  const node = card(
    app,
    { name: "verdict", id: "verdict", title: say`Verdicts` },
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
    const { locale, paper } = app.state;
    const widthPx = paper ? PAPER_PX : Math.max(300, chart.clientWidth || 640);
    const screenPx = Math.min(380, Math.max(280, widthPx * 0.55));
    chart.innerHTML = chartSvg(figure, {
      widthPx,
      heightPx: paper ? PAPER_PX * 0.35 : screenPx,
      locale,
      idPrefix: "strength",
      paint: pagePaint,
    });
  };
  whenWidthChanges(chart, draw);
  return {
    node,
    refresh() {
      const { tuned } = app.state;
      if (!tuned) return;
      fill(overview, ...factsOf(app, overviewOf(tuned)));
      const { recipe } = app.state;
      // With its recipe the blend has a density, which some recommendations limit.
      const { guidance } = recipe?.result.blend === tuned.blend ? recipe.result : tuned.result;
      fill(checks, ...checkLists(app, guidance, tuned));
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
  const difference = say`${formatFixed(blend.rmsDifferencePct, 2)} points`;
  const facts: (readonly [Text, Text])[] = [
    [say`Difference from the target, root mean square`, difference],
    [say`Clay`, pct(clayPct)],
    [say`Silt and clay`, pct(finesPct)],
    [say`Gravel`, pct(gravelPct)],
  ];
  for (const { kind, valuePct, untested } of estimates) {
    const lacking = say`not tested: ${untested.join(", ")}`;
    facts.push([names[kind], valuePct === undefined ? lacking : pct(valuePct)]);
  }
  if (result.testing) facts.push([say`State of the mix`, stateInShort(result.testing)]);
  return facts;
}

interface CriterionLine {
  readonly state: keyof typeof MARKS;
  readonly text: Text;
  readonly sure?: Text;
}

const ESTIMATED_AS = {
  plasticityIndexPct: "plasticity-index",
  linearShrinkagePct: "linear-shrinkage",
  liquidLimitPct: undefined,
} as const;

/** What a blend meets of a recommendation, each limit once, with estimates where nothing was measured on it. */
export function criterionLines(
  { check, probability }: GuidanceStudy,
  estimates: readonly BlendEstimate[],
): CriterionLine[] {
  const { criteria, entry, others = [] } = check;
  const fractions = criteria.filter(({ kind }) => kind === "fraction");
  const lines = criteria.flatMap((criterion, index): CriterionLine[] => {
    const { kind, verdict, text, quantity } = criterion;
    const isFraction = fractions.some((fraction) => limitsTheSame(fraction, criterion));
    if (kind === "passing" && isFraction) return [];
    if (verdict === "inside" || verdict === "outside") {
      const draws = probabilityPercent(probability.criteria[index].probability);
      const sure = say`${wordFor(verdict)} in ${draws} of 100 draws of the reading errors`;
      return [{ state: verdict, text, sure }];
    }
    const limit = entry.consistency.find((one) => one.quantity === quantity);
    const estimate = estimates.find((one) => quantity && one.kind === ESTIMATED_AS[quantity]);
    if (!limit || estimate?.valuePct === undefined) return [{ state: "unknown", text }];
    return [{ state: "unknown", text: estimatedConsistency(limit, estimate.valuePct) }];
  });
  return [
    ...lines,
    ...others.map(({ verdict, text }): CriterionLine => {
      return { state: verdict === "not measured" ? "unknown" : verdict, text };
    }),
  ];
}

/** The passing of a size that is the boundary of a limited fraction says the same as the fraction. */
function limitsTheSame(one: CriterionCheck, other: CriterionCheck): boolean {
  return (["measuredPct", "lowPct", "highPct"] as const).every((key) => one[key] === other[key]);
}

const MARKS = { inside: "✓", outside: "✗", unknown: "?" } as const;

export function checkLine(state: keyof typeof MARKS, text: string, beside?: Child): HTMLElement {
  const mark = el("span", { class: "mark", "aria-hidden": "true" }, MARKS[state]);
  return el("li", { class: state }, mark, el("span", {}, text), beside);
}

function checkLists(
  app: App,
  guidance: readonly GuidanceStudy[],
  { limits, estimates }: Pick<TunedBlend, "limits" | "estimates">,
): HTMLElement[] {
  const { t } = app;
  const list = (title: Text, lines: readonly CriterionLine[], below?: HTMLElement) => {
    const shown = lines.map(({ state, text, sure }) =>
      checkLine(state, t(text), sure && el("span", { class: "sure" }, t(sure))),
    );
    return el("div", {}, el("h3", {}, t(title)), el("ul", { class: "checks" }, ...shown), below);
  };
  const lists = guidance.map((study) => {
    const { entry, verdict, honesty } = study.check;
    const title = say`${shortSource(entry)}: ${wordFor(verdict)}`;
    return list(title, criterionLines(study, estimates), remark(app, honesty));
  });
  if (limits.length === 0) return lists;
  return [...lists, list(say`Limits of the blend`, limits.map(limitLine))];
}

function limitLine(limit: LimitState): CriterionLine {
  const { label, side, value, estimate } = limit;
  const unit = wordFor(limit.unit);
  const [now, asked] = [formatFixed(value, 1), formatPlain(limit.limit)];
  return {
    state: keepsLimit(limit) ? "inside" : "outside",
    text:
      side === "max"
        ? say`${label}: ${now} ${unit}, at most ${asked} ${unit}`
        : say`${label}: ${now} ${unit}, at least ${asked} ${unit}`,
    sure: estimate
      ? say`an estimate from the materials, to be confirmed by a test of the blend`
      : undefined,
  };
}

/** The cautions that stand on every view. */
export function cautions(app: App): HTMLElement {
  return blockOf(app, { kind: "cautions", items: CAUTIONS });
}
