import { say } from "../../words/message.js";
import type { App, View } from "./app.js";
import { bucketCard } from "./bucketCard.js";
import { el, written } from "./dom.js";
import { plotCard } from "./plotCard.js";
import { sheetCard } from "./sheetCard.js";
import { verdictCard } from "./verdictCard.js";

/** The bench: sheet, curve and bucket side by side. */
export function mixView(app: App): View {
  const { t } = app;
  const { open } = app.state;
  if (!open) {
    const node = el(
      "section",
      { class: "card" },
      el("h2", {}, t(say`Nothing on the bench yet`)),
      el(
        "p",
        {},
        t(say`Add a sieve sheet, or type one: what the sheets allow is computed at once.`),
      ),
      el(
        "button",
        { type: "button", class: "main", onclick: () => app.show("sheets") },
        t(say`Add sheets`),
      ),
    );
    return { node, refresh: () => {} };
  }
  if (open.obstacles.length > 0) {
    const block = { kind: "findings", findings: open.obstacles } as const;
    const node = el(
      "section",
      { class: "card" },
      el("h2", {}, t(say`These materials cannot be blended yet`)),
      written("div", {}, app.html(block)),
    );
    return { node, refresh: () => {} };
  }
  const cards = [sheetCard(app), plotCard(app), verdictCard(app), bucketCard(app)];
  const node = el("div", { class: "bench" }, ...cards.map((card) => card.node));
  return {
    node,
    refresh() {
      for (const card of cards) card.refresh();
    },
  };
}
