import { createRequire } from "node:module";

/** The part of fontkit's font object that is used here. */
interface MeasuredFont {
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  layout(text: string): { readonly advanceWidth: number };
}

/** Width and heights of one run of text, in the unit of `sizePx`. */
interface TextMeasure {
  readonly widthPx: number;
  readonly ascentPx: number;
  readonly descentPx: number;
}

const require = createRequire(import.meta.url);
const fonts = new Map<SansCut, MeasuredFont>();
const widthsEm = new Map<string, number>();
const WIDTH_CACHE_LIMIT = 20_000;

function openFont(cut: SansCut): MeasuredFont {
  let font = fonts.get(cut);
  if (font === undefined) {
    const fontkit = require("fontkit") as { openSync(path: string): MeasuredFont };
    font = fontkit.openSync(fontFile(cut));
    fonts.set(cut, font);
  }
  return font;
}

/**
 * Width, ascent and descent of a run of text set in Source Sans 3, from the font's own tables
 * (advance widths with kerning, `hhea` ascent and descent).
 * `weight` of 600 or more is measured in the bold cut.
 */
export function measureText(
  text: string,
  sizePx: number,
  weight = 400,
  italic = false,
): TextMeasure {
  const cut = `${weight >= 600 ? "700Bold" : "400Regular"}${italic ? "_Italic" : ""}` as SansCut;
  const font = openFont(cut);
  const key = `${cut}\u0000${text}`;
  let widthEm = widthsEm.get(key);
  if (widthEm === undefined) {
    widthEm = font.layout(text).advanceWidth / font.unitsPerEm;
    if (widthsEm.size >= WIDTH_CACHE_LIMIT) widthsEm.clear();
    widthsEm.set(key, widthEm);
  }
  return {
    widthPx: widthEm * sizePx,
    ascentPx: (font.ascent / font.unitsPerEm) * sizePx,
    descentPx: (-font.descent / font.unitsPerEm) * sizePx,
  };
}

/** Cuts of Source Sans 3 that the figures are measured with and drawn in. */
export type SansCut = "400Regular" | "400Regular_Italic" | "700Bold" | "700Bold_Italic";

/**
 * Path of one cut of Source Sans 3, as installed from npm (SIL Open Font License 1.1).
 * Found through Node's own resolution, so it holds wherever the package is hoisted to.
 */
export function fontFile(cut: SansCut): string {
  return require.resolve(`@expo-google-fonts/source-sans-3/${cut}/SourceSans3_${cut}.ttf`);
}
