import { compareTrials } from "../../strength/trials.js";
import { trialDifferencesTable, trialsTable } from "../../tables/trialBlocks.js";
import { say } from "../../words/message.js";
import type { App } from "./app.js";
import { blockOf, card, el, remark } from "./dom.js";

/** What was seen on the trial blocks, with the photographs that the page carries; nothing where nobody looked. */
export function looksCard(app: App): HTMLElement | false {
  const { t } = app;
  const { open, files } = app.state;
  const { trials, config } = open!.result;
  const looks = trials.flatMap((trial) => trial.looks ?? []);
  if (looks.length === 0) return false;
  const differences = compareTrials(looks);
  const pictures = trials.flatMap(({ name, looks: seen = [] }) =>
    seen.flatMap(({ id, photograph }) => {
      const bytes = photograph === undefined ? undefined : files.get(photograph);
      return bytes ? [picture(t(say`${name}, ${id}`), bytes)] : [];
    }),
  );
  return card(
    app,
    { name: "looks no-print", id: "looks", title: say`Trial blocks` },
    remark(
      app,
      say`What was seen on the trial blocks, in the words of whoever looked; nothing of it is judged here.`,
    ),
    blockOf(app, trialsTable(looks, config.units)),
    differences.length > 0 && blockOf(app, trialDifferencesTable(differences)),
    el("div", { class: "wishes" }, ...pictures),
  );
}

/** A photograph with what it shows below it. */
function picture(shown: string, bytes: Uint8Array): HTMLElement {
  const src = URL.createObjectURL(new Blob([bytes as BlobPart]));
  return el(
    "figure",
    {},
    el("img", { src, alt: shown, onload: () => URL.revokeObjectURL(src) }),
    el("figcaption", { class: "sum" }, shown),
  );
}
