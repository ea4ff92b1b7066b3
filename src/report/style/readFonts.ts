import { readdir, readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";
import type { Finding } from "../../lab/finding.js";
import { say } from "../../words/say.js";
import type { ReportFont } from "./reportStyle.js";
import { stylePath } from "./styleFile.js";
import { styleFinding } from "./styleFinding.js";

interface OpenedFont {
  readonly familyName?: string | null;
}

/** Opens the fonts of a folder inside the study, in the order of their file names. */
export async function readFonts(
  folder: string,
  entry: string,
): Promise<{ readonly fonts: readonly ReportFont[]; readonly findings: readonly Finding[] }> {
  const found = await stylePath(folder, entry, "fonts", "folder");
  if ("finding" in found) return { fonts: [], findings: [found.finding] };
  const require = createRequire(import.meta.url);
  const fontkit = require("fontkit") as { create(bytes: Buffer): OpenedFont };
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
    let reason = say`it names no family`;
    try {
      family = fontkit.create(bytes).familyName ?? "";
    } catch (problem) {
      reason = (problem as Error).message;
    }
    if (family !== "") fonts.push({ file, family, bytes: new Uint8Array(bytes) });
    else {
      const words = [
        say`This font cannot be read (${reason}).`,
        say`a TTF or OTF font`,
        say`Get the font again, or take it out of the folder.`,
      ] as const;
      findings.push(styleFinding("fonts", file, "error", "font-unreadable", words));
    }
  }
  if (names.length === 0) {
    const words = [
      say`This folder holds no font.`,
      say`files ending in .ttf or .otf`,
      say`Put the fonts into it; a web font (.woff2) has to be converted first.`,
    ] as const;
    findings.push(styleFinding("fonts", entry, "warning", "no-fonts", words));
  }
  return { fonts, findings };
}
