import { hasErrors } from "../../findings/finding.js";
import { say } from "../../words/message.js";
import { ENTRY_FORMS, type EntryField, type EntryForm } from "../entryForms.js";
import {
  entriesText,
  isListed,
  type StudyFiles,
  withEntriesText,
  withTestedShares,
  withWritten,
  writtenAt,
} from "../studyFiles.js";
import type { App } from "./app.js";
import { blockOf, button, choices, el, field, fill, folded, remark } from "./dom.js";

/** What a study needs beside its sheets: forms of a few entries each, and all entries as text. */
export function entriesCard(app: App): HTMLElement[] {
  const { t } = app;
  const { files, tuned } = app.state;
  if (files.size === 0) return [];
  const forms = ENTRY_FORMS.map((form) => formOf(app, form));
  const told = el("div", { role: "status" });
  const shares = button(
    app,
    say`Compaction and blocks were made of the mix on the bench`,
    () => enter(app, withTestedShares(app.state.files, sharesOf(app)), told),
    { id: "tested-shares" },
  );
  const text = el("textarea", { id: "entries-text", rows: 16, spellcheck: "false" });
  text.defaultValue = entriesText(files);
  const answer = el("div", { role: "status" });
  const entered = () => enter(app, withEntriesText(app.state.files, text.value), answer);
  const apply = button(app, say`Enter`, entered, { class: "main", id: "entries-enter" });
  const title = say`All entries as text (study.yaml)`;
  const label = el("label", { for: "entries-text", class: "unseen" }, t(title));
  return [
    ...forms,
    ...(tuned ? [shares, told] : []),
    folded(app, title, { id: "entries" }, label, text, apply, answer),
  ];
}

/** Shares of the bench by material, as a laboratory writes them down: to a tenth of a percent, 100 in all. */
function sharesOf({ state }: App): Readonly<Record<string, number>> {
  const { tuned } = state;
  const ids = tuned!.result.materials.map(({ id }) => id);
  return Object.fromEntries(ids.map((id, index) => [id, tuned!.mix.sharesPct[index]]));
}

function formOf(app: App, { id, title, fields }: EntryForm): HTMLElement {
  if (fields.some(({ path }) => isListed(app.state.files, path))) {
    const several = say`The study lists several: change them among all entries as text.`;
    return folded(app, title, { id }, remark(app, several));
  }
  const inputs = fields.map((field, index) => inputOf(app, field, `${id}-${index}`));
  const told = el("div", { role: "status" });
  const send = () => {
    const typed = fields.map(({ path }, index) => ({ path, value: inputs[index].value }));
    return enter(app, withWritten(app.state.files, typed), told);
  };
  return folded(
    app,
    title,
    { id },
    ...fields.map(({ label }, index) => field(app, label, inputs[index])),
    button(app, say`Enter`, send, { class: "main", id: `${id}-enter` }),
    told,
  );
}

function inputOf(
  { t, state }: App,
  { path, example, choices: known }: EntryField,
  id: string,
): HTMLInputElement | HTMLSelectElement {
  const value = writtenAt(state.files, path);
  if (!known) return el("input", { type: "text", id, value, placeholder: example });
  const options = known.map(([choice, name]) => [choice, t(name)] as const);
  return choices({ id }, [["", t(say`not entered`)], ...options], value);
}

/** Takes entries over, or tells what is wrong with them and leaves everything as it was. */
async function enter(app: App, files: StudyFiles, told: HTMLElement): Promise<void> {
  const { taken, findings } = await app.adopt(files);
  // What was taken is shown by the page made anew.
  if (taken) return;
  const errors = findings.filter((one) => hasErrors([one]));
  fill(told, blockOf(app, { kind: "findings", findings: errors }));
}
