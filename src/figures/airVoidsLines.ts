import { airVoidsDensity } from "../soil/airVoidsDensity.js";
import type { DensityAtWater } from "../soil/compactionAnalysis.js";
import { phrase, sayOf } from "../words/say.js";

const LINES = [
  {
    airPct: 0,
    name: phrase`no air left (zero air voids)`,
    short: phrase`no air`,
    dash: "dash",
    width: 1.8,
  },
  { airPct: 5, name: phrase`5 % air`, short: phrase`5 % air`, dash: "dashdot", width: 1.3 },
  { airPct: 10, name: phrase`10 % air`, short: phrase`10 % air`, dash: "dot", width: 1.3 },
] as const;

/** Water that fills a volume, kg/m³: the convention of the phase relations. */
const WATER_KG_M3 = 1000;

/** The line without air and those of 5 and 10 % air, at the water contents of the first; none without it. */
export function airVoidsLines(zeroAirVoids: readonly DensityAtWater[]): {
  readonly name: string;
  /** For a label beside the line. */
  readonly short: string;
  readonly dash: string;
  readonly width: number;
  readonly points: readonly DensityAtWater[];
}[] {
  if (zeroAirVoids.length === 0) return [];
  const [{ waterContentPct, dryDensityKgM3 }] = zeroAirVoids;
  // The line without air holds the particle density: 1 / ρd = 1 / ρs + w / ρw.
  const particleDensity = 1 / (1 / dryDensityKgM3 - waterContentPct / 100 / WATER_KG_M3);
  return LINES.map(({ airPct, name, short, dash, width }) => ({
    name: sayOf(name),
    short: sayOf(short),
    dash,
    width,
    points: zeroAirVoids.map(({ waterContentPct: water }) => ({
      waterContentPct: water,
      dryDensityKgM3: airVoidsDensity(water, particleDensity, airPct),
    })),
  }));
}
