import type { ReportBlock } from "../../blocks/block.js";
import { notKnownYet } from "../../study/stages.js";
import { firstMixTable } from "../../tables/firstMix.js";
import { jarTable } from "../../tables/grading.js";
import { say } from "../../words/message.js";
import type { OpenStudy } from "../tune.js";
import type { App, View } from "./app.js";
import { bucketCard } from "./bucketCard.js";
import { blockOf, button, el } from "./dom.js";
import { looksCard } from "./looksCard.js";
import { plotCard } from "./plotCard.js";
import { sheetCard } from "./sheetCard.js";
import { verdictCard } from "./verdictCard.js";

/** What stands in the way of a blend, and what the sheets tell without one: jars, and a first mix by them. */
function knownWithoutBlend({ obstacles, result }: OpenStudy): ReportBlock[] {
  const { materials, ungraded = [], firstMix } = result;
  // Without any curve the study says what comes next; a blend that fails says why.
  const why: ReportBlock =
    materials.length === 0
      ? notKnownYet(result, "soil")
      : { kind: "findings", findings: obstacles };
  return [
    why,
    ...ungraded.flatMap(({ name, jar }) => (jar ? [jarTable(name, jar)] : [])),
    ...(firstMix ? [firstMixTable(result)] : []),
  ];
}

/** The bench: sheet, curve and bucket side by side. */
export function mixView(app: App): View {
  const { t } = app;
  const { open } = app.state;
  if (!open) {
    const words = say`Add a sieve sheet, or type one: what the sheets allow is computed at once.`;
    const add = button(app, say`Add sheets`, () => app.show("sheets"), { class: "main" });
    const title = el("h2", {}, t(say`Nothing on the bench yet`));
    const node = el("section", { class: "card" }, title, el("p", {}, t(words)), add);
    return { node, refresh: () => {} };
  }
  if (open.obstacles.length > 0) {
    const node = el(
      "section",
      { class: "card" },
      el("h2", {}, t(say`These materials cannot be blended yet`)),
      ...knownWithoutBlend(open).map((block) => blockOf(app, block)),
    );
    return { node, refresh: () => {} };
  }
  const cards = [sheetCard(app), plotCard(app), verdictCard(app), bucketCard(app)];
  const node = el(
    "div",
    {},
    el("div", { class: "bench" }, ...cards.map((card) => card.node)),
    looksCard(app),
  );
  return {
    node,
    refresh() {
      for (const card of cards) card.refresh();
    },
  };
}
