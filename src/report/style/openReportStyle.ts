import { readdir, readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";
import { formatHex, oklch, parse, wcagContrast } from "culori";
import type { ReportConfig } from "../../entries/studyConfig.js";
import { type Finding, hasErrors } from "../../findings/finding.js";
import { formatFixed } from "../../quantities/format.js";
import { say, type Text } from "../../words/message.js";
import { type Locale, render } from "../../words/render.js";
import type { ReportFont } from "../reportMeta.js";
import { readLogo } from "./logo.js";
import { checkCss, checkTypst } from "./ownCode.js";
import { type OpenedStyle, styleFinding, stylePath } from "./styleFile.js";

/**
 * Reads what the entry `report` of a study names: logo, accent colour, texts, style sheet, Typst file and
 * fonts. All files must lie inside the study folder; each is checked, and what cannot be used is left out
 * and told as a finding.
 *
 * @param folder the study folder
 * @param config `config.report` of the study; without it the style is empty
 * @param locale of the study, for a logo without words of its own; default `en`
 *
 * @example
 * (await openReportStyle(".", undefined)).findings // => []
 */
export async function openReportStyle(
  folder: string,
  config: ReportConfig | undefined,
  locale: Locale = "en",
): Promise<OpenedStyle> {
  if (config === undefined) return { style: {}, findings: [] };
  const { header, footer, logo, logoText, accent, css, typst, fonts } = config;
  const alt = logoText ?? render(say`Logo`, locale);
  const readings = [
    await readEntry(logo, (file) =>
      readFileOf(folder, file, "logo", (bytes) => readLogo(file, bytes, alt)),
    ),
    await readEntry(accent, readAccent),
    await readEntry(css, (file) => readCode(folder, file, "css", checkCss)),
    await readEntry(typst, (file) => readCode(folder, file, "typst", checkTypst)),
    await readEntry(fonts, (entry) => readFonts(folder, entry)),
  ];
  return {
    style: Object.assign({ header, footer }, ...readings.map(({ style }) => style)),
    findings: readings.flatMap(({ findings }) => findings),
  };
}

/** What one entry gives: a part of the style, none where it cannot be used. */
async function readEntry(
  entry: string | undefined,
  read: (entry: string) => OpenedStyle | Promise<OpenedStyle>,
): Promise<OpenedStyle> {
  return entry === undefined ? { style: {}, findings: [] } : read(entry);
}

async function readFileOf(
  folder: string,
  file: string,
  key: "logo" | "css" | "typst",
  read: (bytes: Uint8Array) => OpenedStyle,
): Promise<OpenedStyle> {
  const found = await stylePath(folder, file, key, "file");
  if ("finding" in found) return { style: {}, findings: [found.finding] };
  return read(new Uint8Array(await readFile(found.path)));
}

async function readCode(
  folder: string,
  file: string,
  key: "css" | "typst",
  check: (file: string, text: string) => readonly Finding[],
): Promise<OpenedStyle> {
  return readFileOf(folder, file, key, (bytes) => {
    const text = new TextDecoder().decode(bytes);
    const findings = check(file, text);
    return { style: hasErrors(findings) ? {} : { [key]: text }, findings };
  });
}

/** Grounds that the accent stands on: the page of the HTML file in the light and in the dark. */
const LIGHT_PAPER = "#fbf9f5";
const DARK_PAPER = "#1b1714";
/** For rules and large type, and for small type: WCAG 2.2, 1.4.11 and 1.4.3 (from memory). */
const LARGE = 3;
const SMALL = 4.5;

/** The same hue, made just light enough for small type on a dark screen. */
function onDark(colour: string): string {
  const base = oklch(colour);
  if (base === undefined) return colour;
  for (let lightness = base.l; lightness < 1; lightness += 0.01) {
    const lighter = formatHex({ ...base, l: lightness });
    if (wcagContrast(lighter, DARK_PAPER) >= SMALL) return lighter;
  }
  return "#ffffff";
}

/**
 * Reads the accent colour and checks its contrast on the page. It is used as it is given: a colour that is
 * too pale is the maker's to change, and told as a finding.
 */
export function readAccent(text: string): OpenedStyle {
  const colour = parse(text);
  if (colour === undefined || (colour.alpha ?? 1) < 1) {
    const words = {
      message: say`This is not an opaque colour.`,
      expected: say`a colour as CSS writes it, such as '#1f5f8b' or teal`,
      remedy: say`Correct the value in study.yaml.`,
    };
    return {
      style: {},
      findings: [styleFinding("accent", text, "error", "accent-unreadable", words)],
    };
  }
  const light = formatHex(colour);
  const contrast = wcagContrast(light, LIGHT_PAPER);
  const accent = { light, dark: onDark(light) };
  if (contrast >= SMALL) return { style: { accent }, findings: [] };
  const shown = formatFixed(contrast, 1);
  const pale = contrast < LARGE;
  const words = {
    message: pale
      ? say`The accent colour has a contrast of ${shown} : 1 on the page: headings and rules are hard to see.`
      : say`The accent colour has a contrast of ${shown} : 1 on the page: enough for headings, too little for small type.`,
    expected: pale
      ? say`at least ${LARGE} : 1, for small type 4.5 : 1`
      : say`at least 4.5 : 1 for small type`,
    remedy: say`Take a darker shade of it.`,
  };
  const severity = pale ? "warning" : "note";
  return {
    style: { accent },
    findings: [styleFinding("accent", text, severity, "accent-contrast", words)],
  };
}

async function readFonts(folder: string, entry: string): Promise<OpenedStyle> {
  const found = await stylePath(folder, entry, "fonts", "folder");
  if ("finding" in found) return { style: {}, findings: [found.finding] };
  const require = createRequire(import.meta.url);
  const fontkit = require("fontkit") as {
    create(bytes: Buffer): { readonly familyName?: string | null };
  };
  const fonts: ReportFont[] = [];
  const findings: Finding[] = [];
  const names = (await readdir(found.path)).filter((name) => /\.(ttf|otf)$/i.test(name)).sort();
  for (const name of names) {
    const file = `${entry.replace(/\/+$/, "")}/${name}`;
    // by its own path again: a link in the folder could point elsewhere
    const inside = await stylePath(folder, join(entry, name), "fonts", "file");
    if ("finding" in inside) {
      findings.push(inside.finding);
      continue;
    }
    const bytes = await readFile(inside.path);
    let family = "";
    let reason: Text = say`it names no family`;
    try {
      family = fontkit.create(bytes).familyName ?? "";
    } catch (problem) {
      reason = (problem as Error).message;
    }
    if (family !== "") fonts.push({ file, family, bytes: new Uint8Array(bytes) });
    else {
      const words = {
        message: say`This font cannot be read (${reason}).`,
        expected: say`a TTF or OTF font`,
        remedy: say`Get the font again, or take it out of the folder.`,
      };
      findings.push(styleFinding("fonts", file, "error", "font-unreadable", words));
    }
  }
  if (names.length === 0) {
    const words = {
      message: say`This folder holds no font.`,
      expected: say`files ending in .ttf or .otf`,
      remedy: say`Put the fonts into it; a web font (.woff2) has to be converted first.`,
    };
    findings.push(styleFinding("fonts", entry, "warning", "no-fonts", words));
  }
  return { style: { fonts }, findings };
}
