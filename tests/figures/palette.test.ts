import {
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  wcagContrast,
} from "culori";
import { describe, expect, it } from "vitest";
import { PALETTE, SERIES_STYLES, seriesStyle } from "../../src/figures/style.js";

const colours = Object.entries(PALETTE);
const pairs = colours.flatMap((one, index) => colours.slice(index + 1).map((two) => [one, two]));

describe("the palette", () => {
  // WCAG 2.2, success criterion 1.4.11 (non-text contrast), from memory: 3 : 1.
  it.each(colours)("%s stands out from white", (_, colour) => {
    expect(wcagContrast(colour, "#ffffff")).toBeGreaterThanOrEqual(3);
  });

  it.each([
    ["full colour vision", (colour: string) => colour],
    ["protanopia", filterDeficiencyProt(1)],
    ["deuteranopia", filterDeficiencyDeuter(1)],
    ["tritanopia", filterDeficiencyTrit(1)],
  ] as [string, (colour: string) => string][])(
    "any two colours are told apart under %s",
    (_, filter) => {
      const difference = differenceCiede2000();
      for (const [[, one], [, two]] of pairs) {
        // Above 10 a difference is seen at a glance (common practice, no source).
        expect(difference(filter(one), filter(two)), `${one} ${two}`).toBeGreaterThan(10);
      }
    },
  );

  it("no two series share a colour, a dash or a marker", () => {
    for (const key of ["color", "dash", "symbol"] as const) {
      expect(new Set(SERIES_STYLES.map((style) => style[key])).size).toBe(SERIES_STYLES.length);
    }
    const seen = Array.from({ length: 12 }, (_, index) => {
      const { color, dash } = seriesStyle(index);
      return `${color} ${dash}`;
    });
    expect(new Set(seen).size).toBe(12);
  });
});
