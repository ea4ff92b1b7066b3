import { createRequire } from "node:module";

const require = createRequire(import.meta.url);

/** Cuts of Source Sans 3 that the figures are measured with and drawn in. */
export type SansCut = "400Regular" | "400Regular_Italic" | "700Bold" | "700Bold_Italic";

/**
 * Path of one cut of Source Sans 3, as installed from npm (SIL Open Font License 1.1).
 * Found through Node's own resolution, so it holds wherever the package is hoisted to.
 */
export function fontFile(cut: SansCut): string {
  return require.resolve(`@expo-google-fonts/source-sans-3/${cut}/SourceSans3_${cut}.ttf`);
}
