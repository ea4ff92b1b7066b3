import { stored } from "../../lab/sheet/zip.js";
import { say } from "../../words/message.js";
import { slug } from "../../words/slug.js";
import { chartSvg } from "../chartSvg.js";
import { classFigure, classTables, type GroupSheets, groupResults } from "../classGroups.js";
import { pagePaint } from "../pageStyle.js";
import { TYPED_FORMS } from "../typedSheet.js";
import type { App, View } from "./app.js";
import { blockOf, button, card, download, el, field, fill, remark, written } from "./dom.js";
import { INVENTED_DATA, inventedMark, tablesCsv } from "./keepView.js";
import { dropBox, readDropped, removing, typedForm } from "./sheetsView.js";

/** Several groups' jars and sieves side by side. */
export function classView(app: App): View {
  const { t } = app;
  const results = el("div", { id: "class-results" });
  const list = el("div");
  const told = el("div", { role: "status" });
  const name = el("input", { type: "text", id: "group-name" });
  const groupName = () => name.value.trim() || t(say`Group ${app.state.groups.length + 1}`);
  const hand = (file: string, bytes: Uint8Array) => {
    app.setGroups(withSheet(app.state.groups, groupName(), file, bytes));
  };
  const print = button(app, say`Print`, () => window.print(), { id: "print-class" });
  const save = button(app, say`Save the class (ZIP)`, () => saveClass(app), { id: "save-class" });
  const ways = el("div", { class: "switches no-print" }, print, save);
  const node = el(
    "div",
    { class: "pair" },
    card(
      app,
      { name: "no-print", id: "group", title: say`Sheets of a group` },
      field(app, say`Name of the group`, name),
      remark(app, say`A jar, a sieve analysis, or both. Two sheets under one name are one group.`),
      dropBox(app, "class-input", async (files) => {
        const { sheets, findings } = await readDropped(files);
        for (const sheet of sheets) hand(sheet.name, sheet.bytes);
        fill(told, findings.length > 0 && blockOf(app, { kind: "findings", findings }));
      }),
      told,
      ...TYPED_FORMS.filter(({ kind }) => kind !== "hydrometer").map((form) =>
        typedForm(app, form, "class", (_, csv) =>
          hand(`${form.kind}.csv`, new TextEncoder().encode(csv)),
        ),
      ),
      el("h3", {}, t(say`Groups`)),
      list,
    ),
    card(app, { id: "class", title: say`The class side by side` }, results, ways),
  );
  return {
    node,
    async refresh() {
      const { groups, locale } = app.state;
      fill(
        list,
        ...groups.map((group) =>
          el(
            "div",
            { class: "material line" },
            el("span", { class: "name" }, group.name),
            el("span", { class: "bounds" }, group.sheets.map(({ file }) => file).join(", ")),
            removing(app, group.name, () =>
              app.setGroups(app.state.groups.filter((each) => each.name !== group.name)),
            ),
          ),
        ),
      );
      const found = (await Promise.all(groups.map(groupResults))).flat();
      if (app.state.groups !== groups) return;
      const figure = classFigure(found);
      const widthPx = Math.max(300, results.clientWidth || 640);
      const findings = found.flatMap(({ findings: each, name: whose }) =>
        each.map((one) => ({ ...one, file: `${whose}: ${one.file}` })),
      );
      for (const way of [print, save]) way.disabled = groups.length === 0;
      const invented = found.some((each) => each.invented);
      fill(
        results,
        groups.length === 0 && el("p", {}, t(say`No sheets of a group yet.`)),
        invented && el("p", { class: "reason", role: "note" }, t(INVENTED_DATA)),
        figure &&
          written(
            "div",
            { class: "chart" },
            chartSvg(figure, {
              widthPx,
              heightPx: Math.min(430, Math.max(260, widthPx * 0.6)),
              locale,
              idPrefix: "class",
              paint: pagePaint,
            }),
          ),
        ...classTables(found).map((table) => blockOf(app, table)),
        findings.length > 0 && blockOf(app, { kind: "findings", findings }),
      );
    },
  };
}

/** The groups with a further sheet of one of them. */
function withSheet(
  groups: readonly GroupSheets[],
  name: string,
  file: string,
  bytes: Uint8Array,
): GroupSheets[] {
  const sheet = { file, bytes };
  if (!groups.some((group) => group.name === name)) return [...groups, { name, sheets: [sheet] }];
  return groups.map((group) =>
    group.name === name ? { name, sheets: [...group.sheets, sheet] } : group,
  );
}

/** The sheets of the groups, each in a folder of its own, with the tables of the class. */
async function saveClass({ state }: App): Promise<void> {
  const { groups, locale } = state;
  const found = (await Promise.all(groups.map(groupResults))).flat();
  const mark = inventedMark(
    found.some(({ invented }) => invented),
    locale,
  );
  const tables = mark + tablesCsv(classTables(found), locale);
  const sheets = groups.flatMap(({ name, sheets: own }) =>
    own.map(({ file, bytes }) => [`${slug(name)}/${file}`, bytes] as const),
  );
  const files = new Map([["class.csv", new TextEncoder().encode(tables)], ...sheets]);
  download("class.zip", stored(files) as BlobPart, "application/zip");
}
