import { createRequire } from "node:module";
import { dirname } from "node:path";
import type { ReportFont } from "../reportMeta.js";

const FAMILIES = { "source-serif-4": "SourceSerif4", "source-sans-3": "SourceSans3" };
const CUTS = ["400Regular", "400Regular_Italic", "600SemiBold", "600SemiBold_Italic", "700Bold"];

/**
 * Paths of the TTF files the PDF embeds (Source Serif 4 and Source Sans 3, SIL Open Font
 * License 1.1), as installed from npm.
 */
export function reportFonts(): { readonly files: readonly string[]; readonly folders: string[] } {
  const require = createRequire(import.meta.url);
  const files = Object.entries(FAMILIES).flatMap(([packageName, family]) =>
    CUTS.map((cut) =>
      require.resolve(`@expo-google-fonts/${packageName}/${cut}/${family}_${cut}.ttf`),
    ),
  );
  return { files, folders: files.map((file) => dirname(file)) };
}

interface CoveringFont {
  hasGlyphForCodePoint(codePoint: number): boolean;
}

let ours: readonly CoveringFont[] | undefined;

/** Joiners and marks of direction: they steer their neighbours and need no glyph of their own. */
const STEERING = /\p{Default_Ignorable_Code_Point}/u;

/**
 * Tells which characters the PDF's fonts can draw: ours, and those that the study brings.
 * Ours are opened once for the process, with the first text that needs them.
 */
export function coverageOf(extra: readonly ReportFont[] = []): (codePoint: number) => boolean {
  let fonts: readonly CoveringFont[] | undefined;
  return (codePoint) => {
    if (codePoint < 0x7f && codePoint >= 0x20) return true;
    if (codePoint === 0x0a || codePoint === 0x09) return true;
    if (fonts === undefined) {
      const require = createRequire(import.meta.url);
      const fontkit = require("fontkit") as {
        openSync(path: string): CoveringFont;
        create(bytes: Buffer): CoveringFont;
      };
      // upright cuts of both families: the template falls back from one to the other
      const upright = reportFonts().files.filter((file) => file.endsWith("_400Regular.ttf"));
      ours ??= upright.map((file) => fontkit.openSync(file));
      fonts = [...ours, ...extra.map(({ bytes }) => fontkit.create(Buffer.from(bytes)))];
    }
    if (fonts.some((font) => font.hasGlyphForCodePoint(codePoint))) return true;
    return STEERING.test(String.fromCodePoint(codePoint));
  };
}

/**
 * Replaces in every text of plain data each character that no font of the PDF can draw by its code in
 * angle quotes (`‹U+4E2D›`), because an archival PDF must not hold missing glyphs. Keys are left as they are.
 *
 * @returns the data, and the characters that were replaced
 */
export function withoutMissingGlyphs<T>(
  data: T,
  covered: (codePoint: number) => boolean,
): { readonly data: T; readonly missing: ReadonlySet<string> } {
  const missing = new Set<string>();
  const inText = (text: string): string => {
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
  };
  const inData = (value: unknown): unknown => {
    if (typeof value === "string") return inText(value);
    if (Array.isArray(value)) return value.map(inData);
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, inData(item)]));
  };
  return { data: inData(data) as T, missing };
}

/** Scripts of Unicode that a free font has: Noto, SIL Open Font License; names from memory. */
const SCRIPTS = (
  "Arabic Armenian Bengali Devanagari Ethiopic Georgian Gujarati Gurmukhi Han Hangul Hebrew Hiragana " +
  "Katakana Kannada Khmer Lao Malayalam Myanmar Nko Sinhala Tamil Telugu Thai Tibetan Tifinagh"
).split(" ");

/** Fonts that are not named after their script. */
const NAMED: Readonly<Record<string, string>> = {
  Han: "Noto Sans SC, TC, JP or KR",
  Hangul: "Noto Sans KR",
  Hiragana: "Noto Sans JP",
  Katakana: "Noto Sans JP",
  Nko: "Noto Sans NKo",
  Tibetan: "Noto Serif Tibetan",
};

/** Fonts that would draw the characters given; empty where no script is known here. */
export function fontsForScripts(signs: Iterable<string>): string[] {
  const text = [...signs].join("");
  const found = SCRIPTS.filter((script) => new RegExp(`\\p{Script=${script}}`, "u").test(text));
  return [...new Set(found.map((script) => NAMED[script] ?? `Noto Sans ${script}`))];
}
