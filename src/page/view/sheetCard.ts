import { sumSimple } from "simple-statistics";
import type { BlendLimit, FixedOrRange } from "../../blend/target.js";
import { formatFixed, formatPlain } from "../../quantities/format.js";
import type { Interval } from "../../quantities/interval.js";
import { moistureWindow } from "../../soil/compaction/moistureWindow.js";
import { say, type Text, wordFor } from "../../words/message.js";
import { type BenchMix, isSameMix } from "../bench.js";
import { dashArray, markPath } from "../chartSvg.js";
import { pagePaint } from "../pageStyle.js";
import { solveBench, type Wish } from "../solve.js";
import type { App, PageState, View } from "./app.js";
import { button, card, drawing, el, fill, folded, remark, tableHead, typingIn } from "./dom.js";
import { gradingFigure, materialTraces } from "./plotCard.js";

interface ControlOptions {
  readonly id: string;
  readonly label: Text;
  readonly unit: string;
  readonly range: readonly [min: number, max: number, step: number];
  readonly decimals: number;
  /** The line of its curve, before the name. */
  readonly mark?: SVGSVGElement;
  /** Behind the number. */
  readonly beside?: HTMLElement;
  readonly change: (value: number, during: boolean) => void;
}

/** The sheet of the mix: shares, cement, moisture, aim and limits, and the buttons that solve. */
export function sheetCard(app: App): View {
  const { t, act } = app;
  const open = app.state.open!;
  const { config, materials } = open.result;
  const traces = materialTraces(gradingFigure(app.state)!, materials);
  const rows = materials.map(({ id, name }, index) => {
    const bought = config.materials.find((material) => material.id === id);
    const { line, marker } = traces[index];
    const flip = () => act({ kind: "lock", index });
    const lock = el("button", { type: "button", class: "lock", onclick: flip });
    const control = controlOf(app, {
      id: `share-${index}`,
      label: name,
      unit: "%",
      range: [0, 100, 0.5],
      decimals: 1,
      mark: swatch(line.color, dashArray(line.dash), markPath(marker.symbol, [15, 7], 3.5)),
      beside: lock,
      change: (pct, during) => act({ kind: "share", index, pct, during }),
    });
    const [low, high] = [bought?.minSharePct ?? 0, bought?.maxSharePct ?? 100];
    const bounds = say`the study allows ${formatPlain(low, 3)} to ${formatPlain(high, 3)} %`;
    const bounded = low > 0 || high < 100;
    const node = el("div", { class: "material" }, control.node, bounded && remark(app, bounds));
    return { node, control, lock, name, index };
  });
  const cement = controlOf(app, {
    id: "cement",
    label: say`Cement`,
    unit: t(say`% of the dry soil and aggregate`),
    range: [0, cementEnd(app), 0.1],
    decimals: 2,
    change: (pct, during) => act({ kind: "cement", pct, during }),
  });
  const moisture = controlOf(app, {
    id: "moisture",
    label: say`Moisture at ramming`,
    unit: t(say`% of all dry solids`),
    range: [2, 25, 0.1],
    decimals: 2,
    change: (pct, during) => act({ kind: "moisture", pct, during }),
  });
  const sum = el("p", { class: "sum" });
  const aim = aimBox(app);
  const limits = limitsBox(app);
  const answer = el("div", { class: "answer" });
  // The mix that the answer belongs to.
  let solvedFor: BenchMix | undefined;
  const answered = (messages: readonly Text[]) => {
    solvedFor = app.state.bench?.now;
    fill(answer, ...messages.map((message) => el("p", {}, t(message))));
  };
  const tested = open.result.trials.some(({ strength }) => strength);
  const contents = testedContents(app);
  const box = (name: string, title: Text, ...children: readonly HTMLElement[]) =>
    el("div", { class: name }, el("h3", {}, t(title)), ...children);
  const allowed = el("p", { class: "sum" });
  const node = card(
    app,
    { name: "sheet", id: "sheet", title: say`Sheet` },
    el("h3", {}, t(say`Shares of the dry mass`)),
    ...rows.map((row) => row.node),
    sum,
    el("h3", {}, t(say`Cement and water`)),
    tested
      ? el("div", {}, cement.node, contents && remark(app, contents))
      : remark(app, say`A cement content follows from crushed blocks; there are none yet.`),
    moisture.node,
    allowed,
    box("target-box", say`Aim of the blend`, aim.node, limits.node),
    box("wishes-box", say`Find shares`, wishes(app, answered), answer),
  );
  return {
    node,
    refresh() {
      const { bench } = app.state;
      if (!bench) return;
      const { now } = bench;
      for (const { control, lock, name, index } of rows) {
        const locked = now.locked[index];
        control.show(now.sharesPct[index], locked);
        lock.setAttribute("aria-pressed", String(locked));
        lock.setAttribute("aria-label", t(locked ? say`locked: ${name}` : say`lock: ${name}`));
        fill(lock, padlock(locked));
      }
      cement.show(now.cementPct);
      moisture.show(now.moisturePct);
      const range = moistureRange(app.state);
      allowed.hidden = !range;
      fill(allowed, range && t(range));
      fill(sum, t(say`Total ${formatFixed(sumSimple(now.sharesPct), 1)} %`));
      aim.refresh();
      limits.refresh();
      if (!isSameMix(now, solvedFor ?? now)) {
        solvedFor = undefined;
        fill(answer);
      }
    },
  };
}

/** A piece of the line by which a curve is known, for beside its name. */
function swatch(color: string, dash: string, symbol: string): SVGSVGElement {
  const ink = pagePaint(color);
  return drawing("swatch", "0 0 30 14", [
    { d: "M0 7h30", stroke: ink, "stroke-width": "2", "stroke-dasharray": dash || "none" },
    { d: symbol, fill: ink, stroke: ink },
  ]);
}

function padlock(locked: boolean): SVGSVGElement {
  const shackle = locked ? "M7 10V7a5 5 0 0 1 10 0v3" : "M7 10V7a5 5 0 0 1 9.6-2";
  return drawing("lock-picture", "0 0 24 24", [
    { d: "M5 10h14v11H5z", fill: locked ? "currentColor" : "none", stroke: "currentColor" },
    { d: shackle, fill: "none", stroke: "currentColor" },
  ]);
}

function testedContents({ state }: App): Text | undefined {
  const { strength } = state.open!.result;
  if (!strength) return undefined;
  const { contentsPct } = strength.fit;
  const [first, last] = [contentsPct[0], contentsPct[contentsPct.length - 1]];
  return say`blocks were made with ${formatPlain(first)} to ${formatPlain(last)} %`;
}

/** The moistures that the mix may hold: with a tolerance that was entered, or by the compaction test. */
export function moistureRange({ open, recipe }: Readonly<PageState>): Text | undefined {
  const { compaction, mix = open?.result.mix } = recipe?.result ?? open?.result ?? {};
  const ends = ({ low, high }: Interval) =>
    say`${formatFixed(low, 1)} to ${formatFixed(high, 1)} %`;
  if (mix?.water.basis === "entered") {
    return say`with its tolerance the mix may hold ${ends(mix.water.window.moisturePct)}`;
  }
  const window = compaction && moistureWindow(compaction);
  if (!window) return undefined;
  return say`the compaction test allows ${ends({ low: window.driestPct, high: window.wettestPct })}`;
}

/** As far as the slider of the cement goes: a little beyond the tested contents. */
function cementEnd({ state }: App): number {
  const contents = state.open!.result.trials.flatMap(
    ({ strength }) => strength?.fit.contentsPct ?? [],
  );
  return Math.ceil(Math.max(10, ...contents) + 2);
}

/** After so long a slider that was moved has come to rest. */
const SETTLE_MS = 600;

/** A slider with its number box; both stay true to the mix. */
function controlOf(app: App, options: ControlOptions) {
  const { id, label, unit, range, decimals, mark, beside, change } = options;
  const { t } = app;
  const [min, max, step] = range;
  const named = { id: `${id}-slider`, "aria-labelledby": `${id}-label` };
  const slider = el("input", { type: "range", ...named, min, max, step });
  const box = el("input", { type: "number", id, min, max, step: "any", inputmode: "decimal" });
  // Keys move a slider in many small changes: those that follow one another are one step.
  let end: ReturnType<typeof setTimeout> | undefined;
  slider.addEventListener("input", () => {
    clearTimeout(end);
    change(slider.valueAsNumber, true);
  });
  slider.addEventListener("change", () => {
    clearTimeout(end);
    end = setTimeout(() => app.act({ kind: "settle" }), SETTLE_MS);
  });
  const isTyped = typingIn(box);
  box.addEventListener("change", () => {
    if (Number.isFinite(box.valueAsNumber)) change(box.valueAsNumber, false);
    // Without a number the box shows again what the mix has.
    else app.act({ kind: "settle" });
  });
  const inUnit = el("span", { class: "unit" }, unit);
  const name = el("label", { for: id, id: `${id}-label` }, mark, t(label), " ", inUnit);
  const props = { class: beside ? "field slid three" : "field slid" };
  return {
    node: el("div", props, name, box, beside, slider),
    show(value: number | undefined, locked = false) {
      slider.disabled = locked;
      box.disabled = locked;
      if (value === undefined) {
        if (!isTyped()) box.value = "";
        slider.value = "";
        slider.setAttribute("aria-valuetext", t(say`not chosen`));
        return;
      }
      slider.value = String(value);
      slider.setAttribute("aria-valuetext", `${t(formatFixed(value, decimals))} %`);
      if (!isTyped()) box.value = String(Number(value.toFixed(decimals)));
    },
  };
}

/** The target: exponent and top size of the power curve, or what is sought inside the band. */
function aimBox(app: App): View {
  const { t, act } = app;
  const middle = (value: FixedOrRange) =>
    typeof value === "number" ? value : (value.min + value.max) / 2;
  const power = () => {
    const target = app.state.bench?.now.target;
    return target?.kind === "power" ? target : undefined;
  };
  /** What a power curve cannot have does not stay in the box. */
  const changed =
    (key: "exponent" | "topSizeMm", low: number, high: number): ControlOptions["change"] =>
    (value, during) => {
      const target = power();
      if (!target || !(value >= low && value <= high)) return act({ kind: "settle" });
      act({ kind: "target", target: { ...target, [key]: value }, during });
    };
  const exponent = controlOf(app, {
    id: "exponent",
    label: say`Exponent`,
    unit: "",
    range: [0.1, 0.7, 0.01],
    decimals: 3,
    change: changed("exponent", 0.05, 1),
  });
  const top = controlOf(app, {
    id: "top-size",
    label: say`Top size`,
    unit: "mm",
    range: [2, 63, 0.5],
    decimals: 2,
    change: changed("topSizeMm", 1, 100),
  });
  const ofBand = say`The band of the guidance that the study names; the sliders of a power curve are for studies that aim at one.`;
  const untold = say`The study states no target. This curve is a common start, from memory: choose your own.`;
  const told = app.state.open!.result.config.target !== undefined;
  const band = el("p", {}, t(ofBand));
  const curve = el("div", {}, exponent.node, top.node, !told && remark(app, untold));
  return {
    node: el("div", {}, curve, band),
    refresh() {
      const target = power();
      curve.hidden = !target;
      band.hidden = !!target;
      if (!target) return;
      exponent.show(middle(target.exponent));
      top.show(middle(target.topSizeMm));
    },
  };
}

const LIMITED = ["fines", "clay", "plasticity-index", "linear-shrinkage", "site-soil"] as const;

const LIMIT_NAMES: Readonly<Record<(typeof LIMITED)[number], Text>> = {
  fines: wordFor("fines"),
  clay: wordFor("clay"),
  "plasticity-index": say`plasticity index`,
  "linear-shrinkage": say`linear shrinkage`,
  "site-soil": say`share of site soil`,
};

/** The limits of the blend, each with a least and a greatest value; an empty box does not limit. */
function limitsBox(app: App): View {
  const { t } = app;
  const rows = LIMITED.map((kind) => {
    const box = (side: "minPct" | "maxPct") => {
      const name = t(LIMIT_NAMES[kind]);
      const input = el("input", {
        type: "number",
        min: 0,
        max: 100,
        step: "any",
        inputmode: "decimal",
        "aria-label": t(side === "minPct" ? say`minimum ${name}` : say`maximum ${name}`),
      });
      const isTyped = typingIn(input);
      input.addEventListener("change", () => {
        const value = input.value === "" ? undefined : input.valueAsNumber;
        if (value === undefined || (value >= 0 && value <= 100)) setLimit(app, kind, side, value);
        // What is no share of the blend does not stay in the box.
        else app.act({ kind: "settle" });
      });
      const show = (limit: PercentLimit | undefined) => {
        if (!isTyped()) input.value = String(limit?.[side] ?? "");
      };
      return { input, show };
    };
    const [least, most] = [box("minPct"), box("maxPct")];
    const node = el(
      "tr",
      {},
      el("th", { scope: "row" }, t(LIMIT_NAMES[kind])),
      el("td", {}, least.input),
      el("td", {}, most.input),
    );
    return { kind, least, most, node };
  });
  const others = el("p", { class: "sum" });
  const head = tableHead(app, say`Quantity`, say`at least, %`, say`at most, %`);
  const node = folded(
    app,
    say`Limits of the blend`,
    {},
    el("table", {}, head, el("tbody", {}, ...rows.map((row) => row.node))),
    others,
  );
  return {
    node,
    refresh() {
      const limits = app.state.bench?.now.limits ?? [];
      for (const { kind, least, most } of rows) {
        const limit: PercentLimit | undefined = limits.find((each) => each.kind === kind);
        least.show(limit);
        most.show(limit);
      }
      const more = limits.filter(({ kind }) => !LIMITED.some((each) => each === kind)).length;
      fill(
        others,
        more > 0 &&
          t(
            say`${more}{0, plural, one { further limit} other { further limits}} of the study, kept as they are; they stand under “Verdicts”.`,
          ),
      );
    },
  };
}

type PercentLimit = {
  readonly kind?: BlendLimit["kind"];
  readonly minPct?: number;
  readonly maxPct?: number;
};

function setLimit(
  app: App,
  kind: (typeof LIMITED)[number],
  side: "minPct" | "maxPct",
  value: number | undefined,
): void {
  const limits = app.state.bench?.now.limits ?? [];
  const { [side]: _, ...rest }: PercentLimit = limits.find((limit) => limit.kind === kind) ?? {};
  const next: PercentLimit = { kind, ...rest, ...(value === undefined ? {} : { [side]: value }) };
  const others = limits.filter((limit) => limit.kind !== kind);
  const limiting = next.minPct !== undefined || next.maxPct !== undefined;
  app.act({ kind: "limits", limits: limiting ? [...others, next as BlendLimit] : others });
}

function wishes(app: App, answered: (messages: readonly Text[]) => void): HTMLElement {
  const ask = (wish: Wish) => {
    const { open, bench } = app.state;
    if (!open || !bench) return;
    const { sharesPct, messages } = solveBench(open, bench.now, wish);
    if (sharesPct) app.act({ kind: "shares", sharesPct });
    answered(messages);
    for (const message of messages) app.announce(message);
  };
  const asking = (label: Text, wish: Wish) =>
    button(app, label, () => ask(wish), { "data-wish": wish });
  const { mix, compaction, strength } = app.state.open!.result;
  // Of another blend they say nothing.
  const least = mix && strength?.leastCement?.batchablePct;
  const optimum = mix && compaction?.peak?.optimumWaterPct;
  return el(
    "div",
    { class: "wishes" },
    asking(say`Nearest to the target`, "target"),
    asking(say`In the band with most site soil`, "most-site-soil"),
    asking(say`In the band at least cost`, "least-cost"),
    asking(say`Whole buckets`, "whole-buckets"),
    typeof least === "number" &&
      button(app, say`Least cement`, () => app.act({ kind: "cement", pct: least })),
    optimum !== undefined &&
      button(app, say`Optimum moisture`, () => app.act({ kind: "moisture", pct: optimum })),
  );
}
