import { createRequire } from "node:module";
import { reportFonts } from "./reportFonts.js";

interface CoveringFont {
  hasGlyphForCodePoint(codePoint: number): boolean;
}

let fonts: readonly CoveringFont[] | undefined;

function covered(codePoint: number): boolean {
  if (codePoint < 0x7f && codePoint >= 0x20) return true;
  if (codePoint === 0x0a || codePoint === 0x09) return true;
  if (fonts === undefined) {
    const require = createRequire(import.meta.url);
    const fontkit = require("fontkit") as { openSync(path: string): CoveringFont };
    // upright cuts of both families: the template falls back from one to the other
    const upright = reportFonts().files.filter((file) => file.endsWith("_400Regular.ttf"));
    fonts = upright.map((file) => fontkit.openSync(file));
  }
  return fonts.some((font) => font.hasGlyphForCodePoint(codePoint));
}

/**
 * Replaces each character that no embedded font can draw by its code in angle quotes
 * (`‹U+4E2D›`), because an archival PDF must not hold missing glyphs, and collects what it replaced.
 */
export function coveredText(text: string, missing: Set<string>): string {
  let out = "";
  for (const sign of text) {
    const codePoint = sign.codePointAt(0)!;
    if (covered(codePoint)) out += sign;
    else {
      missing.add(sign);
      out += `‹U+${codePoint.toString(16).toUpperCase().padStart(4, "0")}›`;
    }
  }
  return out;
}

/** The same for every text inside plain data. Keys are left as they are. */
export function coveredData<T>(value: T, missing: Set<string>): T {
  if (typeof value === "string") return coveredText(value, missing) as T;
  if (Array.isArray(value)) return value.map((item) => coveredData(item, missing)) as T;
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).map(([key, item]) => [key, coveredData(item, missing)]);
  return Object.fromEntries(entries) as T;
}
