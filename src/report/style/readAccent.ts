import { formatHex, oklch, parse, wcagContrast } from "culori";
import type { Finding } from "../../lab/finding.js";
import { formatFixed } from "../../quantities/formatNumber.js";
import { say } from "../../words/say.js";
import type { ReportStyle } from "./reportStyle.js";
import { styleFinding } from "./styleFinding.js";

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
export function readAccent(text: string): {
  readonly accent?: ReportStyle["accent"];
  readonly findings: readonly Finding[];
} {
  const colour = parse(text);
  if (colour === undefined || (colour.alpha ?? 1) < 1) {
    const words = [
      say`This is not an opaque colour.`,
      say`a colour as CSS writes it, such as '#1f5f8b' or teal`,
      say`Correct the value in study.yaml.`,
    ] as const;
    return { findings: [styleFinding("accent", text, "error", "accent-unreadable", words)] };
  }
  const light = formatHex(colour);
  const contrast = wcagContrast(light, LIGHT_PAPER);
  const accent = { light, dark: onDark(light) };
  if (contrast >= SMALL) return { accent, findings: [] };
  const shown = formatFixed(contrast, 1);
  const pale = contrast < LARGE;
  const words = [
    pale
      ? say`The accent colour has a contrast of ${shown} : 1 on the page: headings and rules are hard to see.`
      : say`The accent colour has a contrast of ${shown} : 1 on the page: enough for headings, too little for small type.`,
    pale
      ? say`at least ${LARGE} : 1, for small type 4.5 : 1`
      : say`at least 4.5 : 1 for small type`,
    say`Take a darker shade of it.`,
  ] as const;
  const severity = pale ? "warning" : "note";
  return { accent, findings: [styleFinding("accent", text, severity, "accent-contrast", words)] };
}
