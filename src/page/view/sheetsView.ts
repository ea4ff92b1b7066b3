import type { FindingsBlock } from "../../blocks/block.js";
import { type Finding, hasErrors, STUDY_FILE } from "../../findings/finding.js";
import { MAX_SHEET_BYTES } from "../../lab/sheet/grid.js";
import { notKnownYet, stageTitle } from "../../study/stages.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import {
  dropMaterial,
  editMaterial,
  listedMaterials,
  placeSheet,
  ROLES,
  type Role,
} from "../studyFiles.js";
import { csvOfTyped, rowsOfTyped, TYPED_FORMS, type TypedForm } from "../typedSheet.js";
import type { App, View } from "./app.js";
import { el, fill, written } from "./dom.js";
import { entriesCard } from "./entriesCard.js";

const ROLE_NAMES: Readonly<Record<Role, Text>> = {
  soil: say`soil`,
  sand: say`sand`,
  gravel: say`gravel`,
};

/** Sheets of one's own: dropped, chosen or typed, with what is found in them. */
export function sheetsView(app: App): View {
  const { t } = app;
  const told = el("div", { role: "status", id: "sheet-findings" });
  const list = el("div");
  const stages = el("div");
  const entries = el("div");
  const takeFiles = async (files: readonly File[]) => {
    const read = await Promise.all(
      files.map(async (file) => ({
        name: file.name,
        bytes: await bytesOf(file),
      })),
    );
    await take(app, read);
  };
  const node = el(
    "div",
    { class: "pair" },
    el(
      "section",
      { class: "card", "aria-labelledby": "bring-title" },
      el("h2", { id: "bring-title" }, t(say`Add sheets`)),
      el(
        "p",
        {},
        t(
          say`CSV or Excel (.xlsx): sieve, hydrometer, pipette, jar, limits, compaction, blocks, or an envelope. They stay in this page; nothing is sent anywhere.`,
        ),
      ),
      dropBox(app, "sheets-input", takeFiles),
      told,
      el("h3", {}, t(say`Type a sheet`)),
      ...TYPED_FORMS.map((form) =>
        typedForm(app, form, "sheets", (name, csv) =>
          take(app, [{ name, bytes: new TextEncoder().encode(csv) }]),
        ),
      ),
    ),
    el(
      "section",
      { class: "card", "aria-labelledby": "there-title" },
      el("h2", { id: "there-title" }, t(say`On the bench`)),
      list,
      el("h3", {}, t(say`Entries`)),
      entries,
      el("h3", {}, t(say`Stages of the study`)),
      stages,
      el("h3", {}, t(say`Findings`)),
      el("div", { id: "study-findings" }),
    ),
  );
  return {
    node,
    refresh() {
      fill(list, ...materialRows(app));
      const { open, findings, news } = app.state;
      fill(
        told,
        ...(news?.messages ?? []).map((message) =>
          el("p", { class: hasErrors(news!.findings) ? "reason" : "note" }, t(message)),
        ),
        news && news.findings.length > 0 && written("div", {}, findingsHtml(app, news.findings)),
      );
      fill(entries, ...entriesCard(app));
      fill(stages, ...stageRows(app));
      const all = open ? open.findings : findings;
      node.querySelector("#study-findings")!.innerHTML = findingsHtml(app, all);
    },
  };
}

/**
 * The bytes of a file that somebody dropped or chose. A folder, or a file that is gone, has none, and is told as an
 * empty sheet. Of one that is too large, enough is read for it to be refused.
 */
export async function bytesOf(file: File): Promise<Uint8Array> {
  const read = file.slice(0, MAX_SHEET_BYTES + 1).arrayBuffer();
  return read.then(
    (bytes) => new Uint8Array(bytes),
    () => new Uint8Array(),
  );
}

function findingsHtml(app: App, findings: readonly Finding[]): string {
  const block: FindingsBlock = { kind: "findings", findings };
  return app.html(block);
}

/** A place to drop files on, with a button that does the same. */
export function dropBox(app: App, id: string, take: (files: readonly File[]) => void): HTMLElement {
  const { t } = app;
  const input = el("input", { type: "file", id, multiple: true, accept: ".csv,.xlsx" });
  input.addEventListener("change", () => {
    take([...(input.files ?? [])]);
    input.value = "";
  });
  const box = el(
    "div",
    { class: "drop" },
    el("p", {}, t(say`Drop files here`)),
    input,
    el("label", { class: "button", for: id }, t(say`Choose files`)),
  );
  box.addEventListener("dragover", (event) => {
    event.preventDefault();
    box.classList.add("over");
  });
  box.addEventListener("dragleave", () => box.classList.remove("over"));
  box.addEventListener("drop", (event) => {
    event.preventDefault();
    box.classList.remove("over");
    take([...((event as DragEvent).dataTransfer?.files ?? [])]);
  });
  return box;
}

/** Takes sheets into the study one by one; what cannot be read is told and changes nothing. */
async function take(
  app: App,
  sheets: readonly { readonly name: string; readonly bytes: Uint8Array }[],
): Promise<void> {
  const messages: Text[] = [];
  const placed: Text[] = [];
  const findings: Finding[] = [];
  let files = app.state.files;
  for (const { name, bytes } of sheets) {
    const one = await placeSheet(files, name, bytes);
    if (!one.files) {
      findings.push(...one.findings);
      messages.push(say`${name}: not added.`);
      continue;
    }
    files = one.files;
    if (one.message) placed.push(one.message);
  }
  if (files !== app.state.files) {
    const { taken, findings: found } = await app.adopt(files);
    findings.push(...(taken ? found.filter(({ file }) => file !== STUDY_FILE) : found));
    if (taken) messages.push(...placed);
    else messages.push(say`The study with these sheets has errors, so the bench stays as it was.`);
  }
  app.tell({ messages, findings });
}

function materialRows(app: App): HTMLElement[] {
  const { t } = app;
  const { files } = app.state;
  const materials = listedMaterials(files);
  if (materials.length === 0) return [el("p", {}, t(say`No material yet.`))];
  const change = (id: string, entries: Readonly<Record<string, string>>) =>
    app.adopt(editMaterial(app.state.files, id, entries));
  return materials.map(({ id, name, role, written: entries }) => {
    const named = el("input", {
      type: "text",
      id: `name-${id}`,
      value: name,
      "aria-label": t(say`Name of the material`),
    });
    named.addEventListener("change", () => change(id, { name: named.value || id }));
    const roles = el(
      "select",
      { id: `role-${id}`, "aria-label": t(say`What ${name} is in the mix`) },
      ...ROLES.map((each) =>
        el("option", { value: each, selected: each === role }, t(ROLE_NAMES[each])),
      ),
    );
    roles.addEventListener("change", () => change(id, { role: roles.value }));
    const remove = el(
      "button",
      {
        type: "button",
        onclick: () => app.adopt(dropMaterial(app.state.files, id)),
        "aria-label": t(say`remove: ${name}`),
      },
      t(say`remove`),
    );
    return el(
      "div",
      { class: "material line" },
      named,
      roles,
      remove,
      el(
        "details",
        { id: `more-${id}` },
        el("summary", {}, t(say`Densities, moisture, price`)),
        ...materialEntries(app, id, entries),
      ),
    );
  });
}

/** Entries of a material that a recipe needs, written with their units as in study.yaml. */
const ENTRIES: readonly { readonly key: string; readonly label: Text; readonly example: string }[] =
  [
    { key: "particle-density", label: say`Particle density`, example: "2650 kg/m3" },
    { key: "loose-bulk-density", label: say`Loose bulk density`, example: "1450 kg/m3" },
    { key: "moisture", label: say`Moisture on delivery`, example: "4 %" },
    { key: "price", label: say`Price`, example: "25 to 30 per t" },
  ];

function materialEntries(
  app: App,
  id: string,
  entries: Readonly<Record<string, string>>,
): HTMLElement[] {
  const { t } = app;
  return ENTRIES.map(({ key, label, example }) => {
    const field = `${id}-${key}`;
    const input = el("input", {
      type: "text",
      id: field,
      placeholder: example,
      value: entries[key] ?? "",
    });
    input.addEventListener("change", () =>
      app.adopt(editMaterial(app.state.files, id, { [key]: input.value })),
    );
    return el("div", { class: "field" }, el("label", { for: field }, t(label)), input);
  });
}

function stageRows(app: App): HTMLElement[] {
  const { t } = app;
  const { open } = app.state;
  if (!open) return [el("p", {}, t(say`A sieve sheet comes first.`))];
  return [
    el(
      "ul",
      { class: "checks" },
      ...open.result.stages.map(({ stage, known }) =>
        el(
          "li",
          { class: known ? "inside" : "unknown" },
          el("span", { class: "mark", "aria-hidden": "true" }, known ? "✓" : "?"),
          el(
            "span",
            {},
            t(known ? say`Known: ${stageTitle(stage)}.` : notKnownYet(open.result, stage).text),
          ),
        ),
      ),
    ),
  ];
}

/**
 * A sheet as a form of cells: lines above, and a table below that grows by itself. Each row says which row of the
 * file it becomes, as findings name it.
 */
export function typedForm(
  app: App,
  form: TypedForm,
  view: string,
  done: (name: string, csv: string) => void,
): HTMLElement {
  const { t } = app;
  const id = `${view}-${form.kind}`;
  const name = el("input", {
    type: "text",
    id: `${id}-name`,
    value: form.kind === "sieve" ? "site-soil-sieve" : form.kind,
  });
  const lines = form.lines.map(({ usual, label }, index) => {
    const input = el("input", { type: "text", id: `${id}-line-${index}`, value: usual });
    return {
      input,
      node: el("div", { class: "field" }, el("label", { for: input.id }, t(label)), input),
    };
  });
  const body = el("tbody");
  const cellsOf = (row: Element) => [...row.querySelectorAll("input")];
  const addRow = (cells: readonly string[]) => {
    const row = body.children.length;
    const inputs = form.columns.map((_, index) =>
      el(
        "td",
        {},
        el("input", {
          type: "text",
          id: `${id}-${row}-${index}`,
          inputmode: index === 0 ? "text" : "decimal",
          value: cells[index] ?? "",
        }),
      ),
    );
    body.append(el("tr", {}, el("th", { scope: "row", class: "sum" }), ...inputs));
  };
  const typed = () =>
    [
      form.kind,
      lines.map(({ input }) => input.value),
      [...body.children].map((row) => cellsOf(row).map(({ value }) => value)),
    ] as const;
  const number = () => {
    const last = body.lastElementChild;
    if (!last || cellsOf(last).some(({ value }) => value.trim() !== "")) addRow([]);
    const fileRows = rowsOfTyped(...typed());
    [...body.children].forEach((row, index) => {
      const fileRow = fileRows[index];
      fill(row.querySelector("th")!, String(fileRow ?? "–"));
      const cells = cellsOf(row);
      const what = fileRow === undefined ? cells[0].value : say`row ${fileRow}`;
      form.columns.forEach(({ label }, column) => {
        cells[column].setAttribute("aria-label", t(joinTexts([label, what])));
      });
    });
  };
  form.rows.forEach(addRow);
  number();
  const send = () => {
    node.dataset.sent = "";
    done(`${name.value || form.kind}.csv`, csvOfTyped(...typed()));
  };
  const node = el(
    "details",
    {
      id,
      oninput() {
        number();
        delete node.dataset.sent;
      },
    },
    el("summary", {}, t(form.title)),
    el("div", { class: "field" }, el("label", { for: name.id }, t(say`Name of the sheet`)), name),
    ...lines.map((line) => line.node),
    el(
      "div",
      { class: "scroll" },
      el(
        "table",
        { class: "grid" },
        el(
          "thead",
          {},
          el(
            "tr",
            {},
            el("th", { scope: "col", class: "sum" }, t(say`Row`)),
            ...form.columns.map(({ label }) => el("th", { scope: "col" }, t(label))),
          ),
        ),
        body,
      ),
    ),
    el(
      "button",
      { type: "button", class: "main", id: `${id}-add`, onclick: send },
      t(say`Add this sheet`),
    ),
  );
  return node;
}
