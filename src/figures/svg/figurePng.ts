import { createRequire } from "node:module";
import { fontFile, type SansCut } from "./sourceSans.js";

type Library = typeof import("@resvg/resvg-js");

const CUTS: readonly SansCut[] = ["400Regular", "400Regular_Italic", "700Bold", "700Bold_Italic"];

/**
 * Paints an SVG of this project as PNG, on white, in the font that its text was measured with. Nothing is
 * looked up on the machine, so the same SVG gives the same picture everywhere.
 *
 * @param zoom pixels of the picture to one of the SVG; default 2.
 * @throws Error where the text is no SVG.
 */
export function figurePng(svg: string, zoom = 2): Uint8Array {
  // a native library: loaded only when there is something to paint
  const { Resvg } = createRequire(import.meta.url)("@resvg/resvg-js") as Library;
  const painting = new Resvg(svg, {
    background: "#ffffff",
    fitTo: { mode: "zoom", value: zoom },
    font: {
      fontFiles: CUTS.map(fontFile),
      loadSystemFonts: false,
      defaultFontFamily: "Source Sans 3",
      sansSerifFamily: "Source Sans 3",
    },
  });
  return painting.render().asPng();
}
