import type { Finding } from "../../lab/finding.js";
import type { ReportConfig } from "../../study/reportConfig.js";
import { say } from "../../words/say.js";
import { checkCss } from "./checkCss.js";
import { checkTypst } from "./checkTypst.js";
import { readAccent } from "./readAccent.js";
import { readFonts } from "./readFonts.js";
import { readLogo } from "./readLogo.js";
import type { ReportStyle } from "./reportStyle.js";
import { styleFile } from "./styleFile.js";

/** What a report is to wear, and what was found while reading it. */
export interface OpenedStyle {
  readonly style: ReportStyle;
  readonly findings: readonly Finding[];
}

/**
 * Reads what the entry `report` of a study names: logo, accent colour, texts, style sheet, Typst file and
 * fonts. All files must lie inside the study folder; each is checked, and what cannot be used is left out
 * and told as a finding.
 *
 * @param folder the study folder
 * @param config `config.report` of the study; without it the style is empty
 *
 * @example
 * (await openReportStyle(".", undefined)).findings // => []
 */
export async function openReportStyle(
  folder: string,
  config: ReportConfig | undefined,
): Promise<OpenedStyle> {
  if (config === undefined) return { style: {}, findings: [] };
  const findings: Finding[] = [];
  const sound = (found: readonly Finding[]): boolean => {
    findings.push(...found);
    return found.every(({ severity }) => severity !== "error");
  };
  const open = async (file: string, key: string): Promise<Uint8Array | undefined> => {
    const opened = await styleFile(folder, file, key);
    if ("bytes" in opened) return opened.bytes;
    findings.push(opened.finding);
    return undefined;
  };
  const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
  const style: { -readonly [Key in keyof ReportStyle]: ReportStyle[Key] } = {};
  if (config.header !== undefined) style.header = config.header;
  if (config.footer !== undefined) style.footer = config.footer;
  if (config.logo !== undefined) {
    const bytes = await open(config.logo, "logo");
    if (bytes) {
      const read = readLogo(config.logo, bytes, config.logoText ?? say`Logo`);
      findings.push(...read.findings);
      if (read.logo) style.logo = read.logo;
    }
  }
  if (config.accent !== undefined) {
    const read = readAccent(config.accent);
    findings.push(...read.findings);
    if (read.accent) style.accent = read.accent;
  }
  if (config.css !== undefined) {
    const bytes = await open(config.css, "css");
    if (bytes && sound(checkCss(config.css, textOf(bytes)))) style.css = textOf(bytes);
  }
  if (config.typst !== undefined) {
    const bytes = await open(config.typst, "typst");
    if (bytes && sound(checkTypst(config.typst, textOf(bytes)))) style.typst = textOf(bytes);
  }
  if (config.fonts !== undefined) {
    const read = await readFonts(folder, config.fonts);
    findings.push(...read.findings);
    style.fonts = read.fonts;
  }
  return { style, findings };
}
