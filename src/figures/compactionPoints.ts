import type { CompactionAnalysisPoint } from "../soil/compactionAnalysis.js";
import { phrase, sayOf } from "../words/say.js";
import { PALETTE } from "./palette.js";

/** A point without a particle density has no air voids: nothing is said of it. */
const KINDS = [
  {
    name: phrase`test`,
    is: ({ rejected, airVoidsPct = 0 }: CompactionAnalysisPoint) => !rejected && airVoidsPct >= 0,
    marker: { color: PALETTE.azurite, symbol: "square", size: 8 },
  },
  {
    name: phrase`test, denser than without air`,
    is: ({ rejected, airVoidsPct = 0 }: CompactionAnalysisPoint) => !rejected && airVoidsPct < 0,
    marker: { color: PALETTE.redEarth, symbol: "square-x-open", size: 10, line: { width: 2 } },
  },
  {
    name: phrase`test, denser than without air: left out of the fit`,
    is: ({ rejected }: CompactionAnalysisPoint) => rejected === true,
    marker: { color: PALETTE.redEarth, symbol: "x-open", size: 10, line: { width: 2 } },
  },
];

/** The points of a compaction test; those denser than the soil can be without air look different. */
export function compactionPoints(
  points: readonly CompactionAnalysisPoint[],
  density: (kgM3: number) => number,
): object[] {
  return KINDS.flatMap(({ name, is, marker }) => {
    const own = points.filter(is);
    if (own.length === 0) return [];
    return [
      {
        type: "scatter",
        mode: "markers",
        name: sayOf(name),
        x: own.map(({ waterContentPct }) => waterContentPct),
        y: own.map(({ dryDensityKgM3 }) => density(dryDensityKgM3)),
        marker,
      },
    ];
  });
}
