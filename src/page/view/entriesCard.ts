import { type Finding, hasErrors } from "../../findings/finding.js";
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
import { el, fill, written } from "./dom.js";

/** What a study needs beside its sheets: forms of a few entries each, and all entries as text. */
export function entriesCard(app: App): HTMLElement[] {
  const { t } = app;
  const { files, tuned } = app.state;
  if (files.size === 0) return [];
  const forms = ENTRY_FORMS.map((form) => formOf(app, form));
  const told = el("div", { role: "status" });
  const shares = el(
    "button",
    {
      type: "button",
      id: "tested-shares",
      onclick: () => {
        if (tuned) enter(app, withTestedShares(app.state.files, sharesOf(app)), told);
      },
    },
    t(say`Compaction and blocks were made of the mix on the bench`),
  );
  const text = el("textarea", { id: "entries-text", rows: 16, spellcheck: "false" });
  text.defaultValue = entriesText(files);
  const answer = el("div", { role: "status" });
  const apply = el(
    "button",
    {
      type: "button",
      class: "main",
      id: "entries-enter",
      onclick: () => enter(app, withEntriesText(app.state.files, text.value), answer),
    },
    t(say`Enter`),
  );
  return [
    ...forms,
    ...(tuned ? [shares, told] : []),
    el(
      "details",
      { id: "entries" },
      el("summary", {}, t(say`All entries as text (study.yaml)`)),
      el(
        "label",
        { for: "entries-text", class: "unseen" },
        t(say`All entries as text (study.yaml)`),
      ),
      text,
      apply,
      answer,
    ),
  ];
}

/** Shares of the bench by material, as a laboratory writes them down: to a tenth of a percent, 100 in all. */
function sharesOf({ state }: App): Readonly<Record<string, number>> {
  const { tuned } = state;
  const ids = tuned!.result.materials.map(({ id }) => id);
  return Object.fromEntries(ids.map((id, index) => [id, tuned!.mix.sharesPct[index]]));
}

function formOf(app: App, { id, title, fields }: EntryForm): HTMLElement {
  const { t } = app;
  if (fields.some(({ path }) => isListed(app.state.files, path))) {
    return el(
      "details",
      { id },
      el("summary", {}, t(title)),
      el(
        "p",
        { class: "sum" },
        t(say`The study lists several: change them among all entries as text.`),
      ),
    );
  }
  const inputs = fields.map((field, index) => inputOf(app, field, `${id}-${index}`));
  const told = el("div", { role: "status" });
  const send = () =>
    enter(
      app,
      withWritten(
        app.state.files,
        fields.map(({ path }, index) => ({ path, value: inputs[index].value })),
      ),
      told,
    );
  return el(
    "details",
    { id },
    el("summary", {}, t(title)),
    ...fields.map(({ label }, index) =>
      el(
        "div",
        { class: "field" },
        el("label", { for: inputs[index].id }, t(label)),
        inputs[index],
      ),
    ),
    el(
      "button",
      { type: "button", class: "main", id: `${id}-enter`, onclick: send },
      t(say`Enter`),
    ),
    told,
  );
}

function inputOf(
  { t, state }: App,
  { path, example, choices }: EntryField,
  id: string,
): HTMLInputElement | HTMLSelectElement {
  const value = writtenAt(state.files, path);
  if (!choices) return el("input", { type: "text", id, value, placeholder: example });
  return el(
    "select",
    { id },
    el("option", { value: "" }, t(say`not entered`)),
    ...choices.map(([choice, name]) =>
      el("option", { value: choice, selected: choice === value }, t(name)),
    ),
  );
}

/** Takes entries over, or tells what is wrong with them and leaves everything as it was. */
async function enter(app: App, files: StudyFiles, told: HTMLElement): Promise<void> {
  const { taken, findings } = await app.adopt(files);
  // What was taken is shown by the page made anew.
  if (taken) return;
  const errors: readonly Finding[] = findings.filter((one) => hasErrors([one]));
  const block = { kind: "findings", findings: errors } as const;
  fill(told, written("div", {}, app.html(block)));
}
