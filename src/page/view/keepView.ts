import type { ReportBlock } from "../../blocks/block.js";
import { rowsOf } from "../../blocks/kinds.js";
import type { Figure } from "../../figures/figure.js";
import { stored } from "../../lab/sheet/zip.js";
import { formatFixed } from "../../quantities/format.js";
import { csvRow, tableCsv } from "../../report/export/exportTable.js";
import { computeStudy } from "../../study/computeStudy.js";
import { studyFromFiles } from "../../study/studyFromFiles.js";
import { blendFitTable } from "../../tables/blend.js";
import { carbonTable } from "../../tables/carbon.js";
import { costTable } from "../../tables/cost.js";
import { recipeTable } from "../../tables/mix.js";
import { quantitiesTable } from "../../tables/quantities.js";
import { say, type Text } from "../../words/message.js";
import { type Locale, render, renderAll } from "../../words/render.js";
import { chartSvg } from "../chartSvg.js";
import { linkOf } from "../link.js";
import { withMix } from "../studyFiles.js";
import type { TunedBlend } from "../tune.js";
import type { App, View } from "./app.js";
import { button, card, download, el, remark } from "./dom.js";
import { gradingFigure } from "./plotCard.js";
import { strengthFigure } from "./verdictCard.js";

const FOLDER = say`A study folder holds study.yaml and the sheets: “loambook compute” on it gives the numbers of this page.`;
const NOT_STORED = say`Without it nothing outlives this tab: the mix is in the address, and a reload keeps it with its steps and the kept mix, but not sheets that were added.`;
const STORED = say`Store sheets and mix in this browser until this is switched off`;

/** Ways to take the mix along: a study folder, a link, a table, pictures, a page of paper. */
export function keepView(app: App): View {
  const { t } = app;
  const told = el("p", { class: "note", role: "status", hidden: true });
  const tell = (text: Text) => {
    told.hidden = false;
    told.textContent = t(text);
    app.announce(text);
  };
  const way = (label: Text, id: string, click: () => void) => button(app, label, click, { id });
  const link = el("input", {
    type: "text",
    readonly: true,
    hidden: true,
    id: "link",
    "aria-label": t(say`Link to this mix`),
  });
  const remember = el("input", { type: "checkbox", id: "remember" });
  remember.addEventListener("change", () => app.setRemember(remember.checked));
  const figures = (): readonly (readonly [string, Figure | undefined])[] => [
    ["grading", gradingFigure(app.state)],
    ["strength", strengthFigure(app.state)],
  ];
  const node = card(
    app,
    { id: "keep", title: say`Save and share` },
    el("p", {}, t(FOLDER)),
    el(
      "div",
      { class: "wishes" },
      way(say`Save the study folder (ZIP)`, "save-zip", async () => {
        download("study.zip", stored(await savedFolder(app)) as BlobPart, "application/zip");
        app.saved();
        tell(say`Saved: unpack study.zip, and run “loambook check” on the folder.`);
      }),
      way(say`Copy a link to this mix`, "copy-link", async () => {
        const { bench } = app.state;
        if (!bench) return;
        link.hidden = false;
        link.value = `${location.href.split("#")[0]}#mix=${linkOf(bench.now)}`;
        link.select();
        // Not every browser lets a page write to the clipboard; the link stands in the box then.
        const copied = await navigator.clipboard.writeText(link.value).then(
          () => true,
          () => false,
        );
        tell(
          copied
            ? say`The link is copied. It holds the mix, not the sheets: it works with this page.`
            : say`Copy the link from the box. It holds the mix, not the sheets: it works with this page.`,
        );
      }),
      way(say`Save the numbers (CSV)`, "save-csv", () => {
        download("mix.csv", csvOfMix(app), "text/csv");
        tell(say`Saved: mix.csv.`);
      }),
      way(say`Save the curves (SVG)`, "save-svg", () => {
        for (const [name, figure] of figures()) {
          if (figure) download(`${name}.svg`, svgOf(app, figure, name), "image/svg+xml");
        }
        tell(say`Saved as SVG.`);
      }),
      way(say`Save the curves (PNG)`, "save-png", async () => {
        for (const [name, figure] of figures()) {
          if (figure) download(`${name}.png`, await pngOf(svgOf(app, figure, name)), "image/png");
        }
        tell(say`Saved as PNG.`);
      }),
      way(say`Print one page`, "print", () => {
        app.show("mix");
        window.print();
      }),
    ),
    told,
    link,
    el("div", { class: "line" }, remember, el("label", { for: "remember" }, t(STORED))),
    remark(app, NOT_STORED),
  );
  return {
    node,
    refresh() {
      remember.checked = app.state.remember;
      const none = !app.state.bench;
      for (const id of ["copy-link", "save-csv", "save-svg", "save-png", "print"]) {
        (node.querySelector(`#${id}`) as HTMLButtonElement).disabled = none;
      }
      (node.querySelector("#save-zip") as HTMLButtonElement).disabled = app.state.files.size === 0;
    },
  };
}

/**
 * The files of the study with the mix of the bench written into its entries, and with the result that follows
 * from just these files: what “loambook compute” writes of them.
 */
async function savedFolder({ state }: App): Promise<ReadonlyMap<string, Uint8Array>> {
  const { files, bench, open, locale, units } = state;
  if (!bench || !open) return files;
  const ids = open.result.materials.map(({ id }) => id);
  const saved = withMix(files, bench.now, ids, { locale, units });
  const { study, findings } = await studyFromFiles(saved);
  const result = study && computeStudy(study, findings).result;
  if (!result) return saved;
  const json = `${JSON.stringify(result, undefined, 2)}\n`;
  return new Map([...saved, ["result.json", new TextEncoder().encode(json)]]);
}

/** What the page and its files say of a study whose data are invented. */
export const INVENTED_DATA: Text = say`These numbers rest on laboratory data invented for a demonstration. Do not build from them.`;

/** The tables of the mix below one another, each under its caption; on invented data the first line says so. */
function csvOfMix({ state }: App): string {
  const { tuned, recipe, locale } = state;
  if (!tuned || !recipe) return "";
  const { result } = recipe;
  const blocks: readonly ReportBlock[] = [
    sharesTable(tuned),
    blendFitTable(tuned.blend),
    ...(recipe.mix
      ? [recipeTable(result), quantitiesTable(result), costTable(result), carbonTable(result)]
      : []),
  ];
  return inventedMark(result.config.invented, locale) + tablesCsv(blocks, locale);
}

/** First line of a file with numbers from invented data; empty where they are not. */
export function inventedMark(invented: boolean | undefined, locale: Locale): string {
  return invented ? csvRow([render(INVENTED_DATA, locale)]) : "";
}

/** Tables below one another, each under its caption. */
export function tablesCsv(blocks: readonly ReportBlock[], locale: Locale): string {
  return blocks
    .flatMap((block) => {
      const rows = rowsOf(block);
      if (!rows || rows.rows.length === 0) return [];
      const said = renderAll(rows, locale);
      return [csvRow([said.caption]) + tableCsv(said, locale)];
    })
    .join("\n");
}

function sharesTable({ mix, result }: TunedBlend): ReportBlock {
  const percent = (name: Text, value: number | undefined): Text[] =>
    value === undefined ? [] : [name, formatFixed(value, 2)];
  return {
    kind: "table",
    caption: say`The mix on the bench`,
    columns: [{ header: say`Quantity` }, { header: say`Value`, unit: "%", align: "right" }],
    rows: [
      ...result.materials.map(({ name }, index) => percent(name, mix.sharesPct[index])),
      percent(say`Cement, of the dry soil and aggregate`, mix.cementPct),
      percent(say`Moisture at ramming, of all dry solids`, mix.moisturePct),
    ].filter((row) => row.length > 0),
  };
}

function svgOf({ state }: App, figure: Figure, name: string): string {
  return chartSvg(figure, { widthPx: 900, heightPx: 540, locale: state.locale, idPrefix: name });
}

/** Draws an SVG onto white, twice as fine as it stands on a page. */
async function pngOf(svg: string): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  const image = new Image();
  image.src = address;
  await image.decode();
  const canvas = el("canvas", { width: 2 * image.naturalWidth, height: 2 * image.naturalHeight });
  const pen = canvas.getContext("2d")!;
  pen.fillStyle = "#ffffff";
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(image, 0, 0, canvas.width, canvas.height);
  URL.revokeObjectURL(address);
  return new Promise((done, failed) => {
    canvas.toBlob((blob) => (blob ? done(blob) : failed(new Error("no picture"))), "image/png");
  });
}
