import { type MeasuredLine, usableForm } from "../../batch/mixRecord.js";
import type { Recipe, RecipeLine } from "../../batch/recipe.js";
import type { TableBlock } from "../../blocks/block.js";
import { PALETTE } from "../../figures/style.js";
import {
  displayUnit,
  formatFixed,
  formatQuantity,
  type UnitSystem,
} from "../../quantities/format.js";
import type { Interval } from "../../quantities/interval.js";
import { bucketSize } from "../../study/studyRecord.js";
import type { MixStudy, StudyResult } from "../../study/studyResult.js";
import { ends, quantity } from "../../tables/cell.js";
import { compareMixTable } from "../../tables/cost.js";
import { recipeTable } from "../../tables/mix.js";
import { buckets as bucketWords, liquid } from "../../tables/site/crewMix.js";
import { trialCard } from "../../tables/site/trialCard.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { pagePaint } from "../pageStyle.js";
import type { TunedMix } from "../tune.js";
import type { App, View } from "./app.js";
import {
  blockOf,
  type Child,
  card,
  drawing,
  el,
  factsOf,
  fill,
  folded,
  remark,
  written,
} from "./dom.js";

/** The bucket: what goes into one batch, and what it costs against the study's mix; or why there is none. */
export function bucketCard(app: App): View {
  const body = el("div", { id: "bucket-body" });
  const node = card(app, { name: "bucket", id: "bucket", title: say`Bucket` }, body);
  let shown: readonly unknown[] = [];
  return {
    node,
    refresh() {
      const { recipe, tuned, kept } = app.state;
      if (!recipe || !tuned) return;
      // While a slider moves, the recipe has not followed yet: what is shown is of the mix before.
      node.setAttribute("aria-busy", String(recipe.result.blend !== tuned.blend));
      if (shown[0] === recipe && shown[1] === kept) return;
      shown = [recipe, kept];
      fill(
        body,
        ...(recipe.mix ? mixParts(app, recipe) : missingParts(app, recipe)),
        kept && blockOf(app, keptTable(app), { class: "kept" }),
      );
    },
  };
}

function reason(app: App, text: Text): HTMLElement {
  return el("p", { class: "reason" }, app.t(text));
}

/** Stages of a study that a recipe rests on, beside the blend that is on the bench. */
const BEHIND_BLEND = new Set(["compaction", "blocks", "cement", "element", "quantities"]);

/** Why there is no recipe, and the batch for test blocks of a blend that was not tested. */
function missingParts(app: App, { result, findings }: TunedMix): Child[] {
  const reasons = findings
    .filter(({ severity }) => severity !== "note")
    .map(({ message, remedy }) => reason(app, joinTexts([message, remedy], " ")));
  const needs = result.stages.flatMap(({ stage, known, needs: sheet }) =>
    known || !sheet || !BEHIND_BLEND.has(stage) ? [] : [sheet],
  );
  const open = reasons.length > 0 ? reasons : needs.map((need) => reason(app, need));
  if (!result.proposal) return open;
  const blocks = trialCard(result).blocks.map((block) => app.html(block));
  const title = el("h3", {}, app.t(say`Batch for test blocks`));
  return [...open, title, written("div", {}, blocks.join("\n"))];
}

/** Kilograms as the reader weighs, without the unit. */
function masses(kilograms: Interval, units: UnitSystem): Text {
  return ends(kilograms, (end) => quantity(1000 * end, "mass", units));
}

function money(amount: Interval): Text {
  return ends(amount, (end) => formatFixed(end, 0));
}

/** What the element takes in cement, money and carbon, and what is not in these sums. */
export function mixFacts(
  { config }: Pick<StudyResult, "config">,
  { record, quantities, cost, carbon }: MixStudy,
): { readonly facts: readonly (readonly [Text, Text])[]; readonly missing: readonly Text[] } {
  const { units, currency = "" } = config;
  const { cementKgM3, mix } = quantities;
  const whole =
    config.elements.length > 1 ? say`Cement for all elements` : say`Cement for the element`;
  const emitted = [masses(carbon.total, units), displayUnit("mass", units), "CO₂e"];
  const facts: (readonly [Text, Text])[] = [
    [say`Cement`, formatQuantity(cementKgM3, "density", units)],
    [whole, formatQuantity(1000 * mix.cement.dryMassKg, "mass", units)],
  ];
  if (cost) {
    facts.push([say`Cost of the materials`, joinTexts([money(cost.total), currency], " ")]);
  }
  facts.push([say`Carbon`, joinTexts(emitted, " ")]);
  if (record.batches !== null) facts.push([say`Batches`, say`${record.batches}`]);
  const missing = [cost, carbon].flatMap((sum) =>
    sum && sum.status !== "ok" ? [sum.message] : [],
  );
  return { facts, missing };
}

function mixParts(app: App, { result, mix, findings }: TunedMix): Child[] {
  const { t } = app;
  const { record } = mix!;
  const { units } = result.config;
  const { facts, missing } = mixFacts(result, mix!);
  const counted = usableForm(record.buckets);
  const warnings = findings.filter(({ severity }) => severity === "warning");
  const dryMass = formatQuantity(1000 * record.batch.dryMassKg, "mass", units);
  return [
    el("p", { class: "big" }, t(say`One batch: ${dryMass} of dry soil and aggregate`)),
    ...record.doubts.map((doubt) => reason(app, doubt)),
    ...(counted ? [] : record.messages.map((message) => reason(app, message))),
    ...measuredRows(app, counted ?? weighed(record.batch)),
    countRow(t(say`Water to add`), t(liquid(record.batch.water.toAddKg, units))),
    ...warnings.map(({ message, remedy }) => reason(app, joinTexts([message, remedy], " "))),
    el("dl", { class: "facts" }, ...factsOf(app, facts)),
    ...missing.map((message) => remark(app, message)),
    mix!.compared && blockOf(app, compareMixTable(result)),
    folded(app, say`The batch by mass and by volume`, {}, blockOf(app, recipeTable(result))),
  ];
}

/** What goes into a batch, counted or weighed. */
interface Measured {
  readonly materials: readonly Pick<MeasuredLine, "name" | "measure" | "moistMassKg">[];
  readonly cement: Measured["materials"][number] | null;
  readonly size: number;
}

/** The batch on a scale, where no buckets make this mix. */
function weighed({ materials, cement, cementPct }: Recipe): Measured {
  const line = ({ name, moistMassKg }: RecipeLine) => ({ name, moistMassKg, measure: null });
  return { materials: materials.map(line), cement: cementPct > 0 ? line(cement) : null, size: 0 };
}

/** Each material with its buckets as pictures and in words, or with what to weigh. */
function measuredRows(app: App, { materials, cement, size }: Measured): HTMLElement[] {
  const { t } = app;
  const { units } = app.state;
  return [...materials, ...(cement ? [cement] : [])].map(({ name, measure, moistMassKg }) => {
    const kilograms = formatQuantity(1000 * moistMassKg, "mass", units);
    const much =
      measure === null
        ? say`weigh ${kilograms}`
        : say`${bucketWords(measure)} × ${bucketSize(size, units)}`;
    if (measure === null) return countRow(t(name), t(much));
    return countRow(
      t(name),
      t(much),
      el("div", { class: "pails", "aria-hidden": "true" }, ...pails(measure)),
      el("span", { class: "sum" }, t(say`these buckets hold ${kilograms}, moist`)),
    );
  });
}

/** A line of what goes into the batch: its name, how much of it, and what stands below. */
function countRow(name: string, much: string, ...below: readonly HTMLElement[]): HTMLElement {
  const line = el(
    "div",
    { class: "line" },
    el("span", { class: "name" }, name),
    el("span", { class: "much" }, much),
  );
  return el("div", { class: "count" }, line, ...below);
}

const MOST_PAILS = 40;

/** A picture of a bucket for each one counted, the last perhaps half full. */
function pails(count: number): SVGSVGElement[] {
  const full = Math.floor(count + 1e-9);
  const half = count - full > 0.25;
  return Array.from({ length: Math.min(MOST_PAILS, full + (half ? 1 : 0)) }, (_, index) =>
    pail(index < full ? 1 : 0.5),
  );
}

function pail(filled: number): SVGSVGElement {
  const top = 5 + (1 - filled) * 15;
  const inset = 2 + (top - 5) * 0.13;
  const outline = { stroke: "currentColor", "stroke-width": "1.3" };
  return drawing("pail", "0 0 20 22", [
    {
      d: `M${inset} ${top}H${20 - inset}L16 20H4z`,
      fill: pagePaint(PALETTE.ochre),
      ...outline,
    },
    { d: "M2 5H18L16 20H4zM2 5C4 -1 16 -1 18 5", fill: "none", ...outline },
  ]);
}

/** The kept mix beside the one on the bench. */
function keptTable({ state }: App): TableBlock {
  const { tuned, recipe, kept, open } = state;
  const both = [
    { tuned: tuned!, mix: recipe!.mix },
    { tuned: kept!.tuned, mix: kept!.recipe.mix },
  ];
  type Side = (typeof both)[number];
  const row = (label: Text, value: (side: Side) => Text | undefined) => [
    label,
    ...both.map((side) => value(side) ?? say`not known`),
  ];
  const pct = (value: number | undefined) =>
    value === undefined ? undefined : formatFixed(value, 1);
  const { units, currency } = open!.result.config;
  return {
    kind: "table",
    caption: say`Beside the kept mix`,
    columns: [
      { header: say`Quantity` },
      { header: say`On the bench`, align: "right" },
      { header: say`Kept mix`, align: "right" },
    ],
    rows: [
      ...open!.result.materials.map(({ name }, index) =>
        row(say`${name}, %`, (side) => pct(side.tuned.mix.sharesPct[index])),
      ),
      row(say`Cement, %`, (side) => pct(side.tuned.mix.cementPct)),
      row(say`Difference from the target, points`, (side) =>
        formatFixed(side.tuned.blend.rmsDifferencePct, 2),
      ),
      row(
        joinTexts([say`Cost of the materials`, currency]),
        (side) => side.mix?.cost && money(side.mix.cost.total),
      ),
      row(
        say`Carbon, ${displayUnit("mass", units)} CO₂e`,
        (side) => side.mix && masses(side.mix.carbon.total, units),
      ),
    ],
  };
}
