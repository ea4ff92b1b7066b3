import { createRequire } from "node:module";
import { dirname } from "node:path";

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
