import type { Finding } from "../../lab/finding.js";
import { say } from "../../words/say.js";
import { missingScripts } from "./missingScripts.js";

function finding(
  severity: Finding["severity"],
  code: string,
  value: string | undefined,
  words: readonly [message: string, expected: string, wayOut: string],
): Finding {
  const [message, expected, wayOut] = words;
  return { severity, code, file: "report.pdf", value, message, expected, wayOut };
}

/** A formula that the typesetter cannot set. */
export function formulaFinding(tex: string): Finding {
  return finding("warning", "formula-shown-as-tex", tex, [
    say`A formula could not be set in the PDF and is shown as TeX.`,
    say`plain TeX maths`,
    say`write it with common TeX commands only`,
  ]);
}

/** Characters that no font of the PDF has, with the fonts that would help. */
export function charactersFinding(missing: ReadonlySet<string>): Finding {
  const signs = [...missing].join(" ");
  const scripts = missingScripts(missing);
  const fonts = [...new Set(scripts.map(({ font }) => font))].join(", ");
  return finding("warning", "characters-not-in-font", signs, [
    say`The PDF's fonts have no glyph for ${signs}; each is shown by its code, like ‹U+4E2D›.`,
    say`text in Latin, Greek or Cyrillic letters, or fonts for other scripts`,
    fonts === ""
      ? say`Put a font that has these signs into a folder of the study and name the folder under “report: fonts”; the HTML file shows them as they are.`
      : say`Put a font with these letters (for example ${fonts}) into a folder of the study and name the folder under “report: fonts”; the HTML file shows them as they are.`,
  ]);
}

/** A font of the study that the typesetter does not take. */
export function fontFinding(file: string, family: string): Finding {
  return finding("warning", "font-not-used", file, [
    say`The typesetter does not know this font by its family name “${family}”; it is not used.`,
    say`a font whose family name is plain`,
    say`Take another cut or file of the font.`,
  ]);
}

/** A user's Typst file with which the report cannot be made. */
export function typstFinding(message: string): Finding {
  return finding("error", "typst-template-failed", undefined, [
    say`The study's own Typst file does not work, so the PDF was made without it: ${message}`,
    say`a file that Typst can compile, for the PDF standard asked for`,
    say`Mend the file and make the report again.`,
  ]);
}
