import { type Finding, finding, hasErrors, STUDY_FILE } from "../../findings/finding.js";
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
import { blockOf, button, card, choices, el, field, fill, folded, tableHead } from "./dom.js";
import { entriesCard } from "./entriesCard.js";
import { checkLine } from "./verdictCard.js";

const ROLE_NAMES: Readonly<Record<Role, Text>> = {
  soil: say`soil`,
  sand: say`sand`,
  gravel: say`gravel`,
};

const READ = say`CSV or Excel (.xlsx): sieve, hydrometer, pipette, jar, limits, compaction, blocks, or an envelope. They stay in this page; nothing is sent anywhere.`;

/** Sheets of one's own: dropped, chosen or typed, with what is found in them. */
export function sheetsView(app: App): View {
  const { t } = app;
  const told = el("div", { role: "status", id: "sheet-findings" });
  const list = el("div");
  const stages = el("div");
  const entries = el("div");
  const found = el("div", { id: "study-findings" });
  const takeFiles = async (files: readonly File[]) => {
    const { sheets, findings } = await readDropped(files);
    await take(app, sheets, findings);
  };
  const node = el(
    "div",
    { class: "pair" },
    card(
      app,
      { id: "bring", title: say`Add sheets` },
      el("p", {}, t(READ)),
      dropBox(app, "sheets-input", takeFiles),
      told,
      el("h3", {}, t(say`Type a sheet`)),
      ...TYPED_FORMS.map((form) =>
        typedForm(app, form, "sheets", (name, csv) =>
          take(app, [{ name, bytes: new TextEncoder().encode(csv) }]),
        ),
      ),
    ),
    card(
      app,
      { id: "there", title: say`On the bench` },
      list,
      el("h3", {}, t(say`Entries`)),
      entries,
      el("h3", {}, t(say`Stages of the study`)),
      stages,
      el("h3", {}, t(say`Findings`)),
      found,
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
        news &&
          news.findings.length > 0 &&
          blockOf(app, { kind: "findings", findings: news.findings }),
      );
      fill(entries, ...entriesCard(app));
      fill(stages, ...stageRows(app));
      const all = open ? open.findings : findings;
      fill(found, blockOf(app, { kind: "findings", findings: all }));
    },
  };
}

export interface DroppedSheet {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Reads dropped files. Of one that is too large, enough is read for it to be refused. */
export async function readDropped(
  files: readonly File[],
): Promise<{ readonly sheets: readonly DroppedSheet[]; readonly findings: readonly Finding[] }> {
  const sheets: DroppedSheet[] = [];
  const findings: Finding[] = [];
  for (const file of files) {
    const { name } = file;
    try {
      const bytes = await file.slice(0, MAX_SHEET_BYTES + 1).arrayBuffer();
      sheets.push({ name, bytes: new Uint8Array(bytes) });
    } catch {
      const words = {
        message: say`The browser cannot read this: it is a folder, or the file has been moved or changed.`,
        expected: say`a CSV or XLSX file`,
        remedy: say`Drop the files themselves, or choose them again.`,
      };
      findings.push(finding({ file: name }, "error", "not-readable", words));
    }
  }
  return { sheets, findings };
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
  sheets: readonly DroppedSheet[],
  unread: readonly Finding[] = [],
): Promise<void> {
  const messages: Text[] = unread.map(({ file }) => say`${file}: not added.`);
  const placed: Text[] = [];
  const findings = [...unread];
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
    const roles = choices(
      { id: `role-${id}`, "aria-label": t(say`What ${name} is in the mix`) },
      ROLES.map((each) => [each, t(ROLE_NAMES[each])]),
      role,
    );
    roles.addEventListener("change", () => change(id, { role: roles.value }));
    const remove = removing(app, name, () => app.adopt(dropMaterial(app.state.files, id)));
    const more = materialEntries(app, id, entries);
    const folding = folded(app, say`Densities, moisture, price`, { id: `more-${id}` }, ...more);
    return el("div", { class: "material line" }, named, roles, remove, folding);
  });
}

export function removing(app: App, name: string, remove: () => void): HTMLElement {
  return button(app, say`remove`, remove, { "aria-label": app.t(say`remove: ${name}`) });
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
  return ENTRIES.map(({ key, label, example }) => {
    const input = el("input", {
      type: "text",
      id: `${id}-${key}`,
      placeholder: example,
      value: entries[key] ?? "",
    });
    input.addEventListener("change", () =>
      app.adopt(editMaterial(app.state.files, id, { [key]: input.value })),
    );
    return field(app, label, input);
  });
}

function stageRows(app: App): HTMLElement[] {
  const { t } = app;
  const { open } = app.state;
  if (!open) return [el("p", {}, t(say`A sieve sheet comes first.`))];
  const lines = open.result.stages.map(({ stage, known }) =>
    known
      ? checkLine("inside", t(say`Known: ${stageTitle(stage)}.`))
      : checkLine("unknown", t(notKnownYet(open.result, stage).text)),
  );
  return [el("ul", { class: "checks" }, ...lines)];
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
  const lines = form.lines.map(({ usual }, index) =>
    el("input", { type: "text", id: `${id}-line-${index}`, value: usual }),
  );
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
      lines.map(({ value }) => value),
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
  const changed = () => {
    number();
    delete node.dataset.sent;
  };
  const head = tableHead(app, say`Row`, ...form.columns.map(({ label }) => label));
  head.querySelector("th")!.className = "sum";
  const node = folded(
    app,
    form.title,
    { id, oninput: changed },
    field(app, say`Name of the sheet`, name),
    ...form.lines.map(({ label }, index) => field(app, label, lines[index])),
    el("div", { class: "scroll" }, el("table", { class: "grid" }, head, body)),
    button(app, say`Add this sheet`, send, { class: "main", id: `${id}-add` }),
  );
  return node;
}
