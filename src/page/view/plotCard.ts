import { blendChart } from "../../figures/blend/blendChart.js";
import type { Figure } from "../../figures/figure.js";
import { guidanceBand, uncertaintyBand } from "../../figures/grading/band.js";
import type { ChartCurve } from "../../figures/grading/gradingChart.js";
import type { LineStyle } from "../../figures/style.js";
import { boundariesOf } from "../../grading/fractions.js";
import { say, type Text } from "../../words/message.js";
import { chartSvg } from "../chartSvg.js";
import { pagePaint } from "../pageStyle.js";
import type { App, PageState, View } from "./app.js";
import { card, el, whenWidthChanges } from "./dom.js";

/** The grading of the blend on the bench with its materials, its target, its envelopes and its doubt. */
export function gradingFigure({ open, tuned, kept }: Readonly<PageState>): Figure | undefined {
  if (!open || !tuned) return undefined;
  const { blend } = tuned;
  const { materials, blendSpread = [] } = tuned.result;
  const components: ChartCurve[] = materials.map(({ name, curve }) => ({ name, curve }));
  const aside: ChartCurve[] = kept
    ? [{ name: say`kept blend`, curve: kept.tuned.blend.curve, smooth: true }]
    : [];
  const bands = open.entries.flatMap((entry) => guidanceBand(entry) ?? []);
  return blendChart(
    say`Grading of the blend`,
    blend,
    [...bands, uncertaintyBand(say`blend`, blend.curve, blendSpread)],
    [...components, ...aside],
    boundariesOf(tuned.result.config.units),
  );
}

/** Width of a chart on paper, where its letters come out as small as those beside it. */
export const PAPER_PX = 540;

/** The curve of the blend, drawn anew with every move. */
export function plotCard(app: App): View {
  const chart = el("div", { class: "chart" });
  const about = { name: "plot", id: "plot", title: say`Curve` };
  const node = card(app, about, el("div", { class: "figure" }, chart));
  const draw = () => {
    const figure = gradingFigure(app.state);
    if (!figure) return;
    const { locale, paper } = app.state;
    const widthPx = paper ? PAPER_PX : Math.max(300, chart.clientWidth || 640);
    const phone = !paper && document.documentElement.clientWidth < 760;
    const shown = phone ? forPhone(figure, app.state.open!.result.materials) : figure;
    const screenPx = phone ? 190 : Math.min(460, Math.max(320, widthPx * 0.6));
    const heightPx = paper ? PAPER_PX * 0.4 : screenPx;
    chart.innerHTML = chartSvg(shown, {
      widthPx,
      heightPx,
      locale,
      idPrefix: "curve",
      paint: pagePaint,
    });
  };
  whenWidthChanges(chart, draw);
  return { node, refresh: draw };
}

interface MaterialTrace {
  readonly name: Text;
  readonly line: Pick<LineStyle, "color" | "dash">;
  readonly marker: Pick<LineStyle, "symbol">;
}

/** The traces of the materials in a grading figure, in their order. */
export function materialTraces(
  { data }: Figure,
  materials: readonly { readonly name: Text }[],
): readonly MaterialTrace[] {
  const traces = data as readonly MaterialTrace[];
  return traces.filter((trace) => materials.some(({ name }) => name === trace.name));
}

/** On a phone the lines of the materials are explained beside their sliders only; the legend says so. */
function forPhone(figure: Figure, materials: readonly { readonly name: Text }[]): Figure {
  const own: readonly object[] = materialTraces(figure, materials);
  const data = figure.data.map((trace) =>
    own.includes(trace) ? { ...trace, showlegend: false } : trace,
  );
  const elsewhere = { name: say`materials: see their sliders`, mode: "none", x: [], y: [] };
  return { ...figure, data: [...data, elsewhere] };
}
