/**
 * Line colours named after earth pigments. Each has a contrast of at least 3 : 1 on white, and any two
 * stay apart under the three common colour-vision deficiencies (checked in tests/figures/palette.test.ts).
 * No figure tells things apart by colour alone: dash and marker go with it.
 */
export const PALETTE = {
  umber: "#5f2b00",
  azurite: "#01629c",
  ochre: "#c07000",
  greenEarth: "#6a8a6c",
  redEarth: "#a3424e",
  manganese: "#1b150f",
} as const;

export interface LineStyle {
  readonly color: string;
  readonly dash: "solid" | "dash" | "dot" | "dashdot" | "longdash" | "longdashdot";
  readonly symbol: "circle" | "square" | "diamond" | "triangle-up" | "cross" | "x";
}

/** Styles for series that stand side by side, in order of use. */
export const SERIES_STYLES: readonly LineStyle[] = [
  { color: PALETTE.umber, dash: "solid", symbol: "circle" },
  { color: PALETTE.azurite, dash: "dash", symbol: "square" },
  { color: PALETTE.ochre, dash: "dot", symbol: "diamond" },
  { color: PALETTE.greenEarth, dash: "dashdot", symbol: "triangle-up" },
  { color: PALETTE.redEarth, dash: "longdash", symbol: "cross" },
  { color: PALETTE.manganese, dash: "longdashdot", symbol: "x" },
];

/** The style of the n-th series; after six the colours and dashes repeat out of step. */
export function seriesStyle(index: number): LineStyle {
  const count = SERIES_STYLES.length;
  const base = SERIES_STYLES[index % count];
  const round = Math.floor(index / count);
  return round === 0 ? base : { ...base, dash: SERIES_STYLES[(index + round) % count].dash };
}
