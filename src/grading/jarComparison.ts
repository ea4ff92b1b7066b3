import type { Finding } from "../lab/finding.js";
import type { JarLayerName, JarRecord } from "../lab/jarRecord.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say, sayOf } from "../words/say.js";
import type { GradingCurve } from "./gradingCurve.js";
import type { JarAnalysis } from "./jarAnalysis.js";
import { passingAtSize } from "./passingAtSize.js";
import { SIZE_BOUNDARIES } from "./sizeBoundaries.js";

/** A layer of the jar beside the laboratory's share of the same grains. */
export interface JarAgainstLaboratory {
  readonly name: JarLayerName;
  /** Percent by dry mass of what went into the jar; absent where the curve does not reach. */
  readonly laboratoryPct?: number;
  /** Whether it lies within what the height allows; absent with it. */
  readonly agrees?: boolean;
}

export interface JarComparison {
  readonly rows: readonly JarAgainstLaboratory[];
  readonly findings: readonly Finding[];
}

/**
 * Holds a jar test against the laboratory's curve of the same soil: a first guide beside a measurement.
 *
 * Formula: sand and gravel 100 (Pm − P0.063) / Pm, silt 100 (P0.063 − P0.002) / Pm, clay 100 P0.002 / Pm,
 * with Pm the passing at the sieve through which the soil was put before it went into the jar (100 where
 * it was not), boundaries of ISO 14688-1. A note tells each layer whose interval misses the laboratory's
 * share; the jar changes nothing in the curve.
 *
 * @example
 * const layers = [["sand and gravel", 1, 60], ["silt", 930, 80], ["clay", 2880, 100]].map(([name, timeMin, topMm], index) => ({ name, timeMin, topMm, row: index + 4 }));
 * const record = { file: "j.csv", waterDepthMm: 200, layers };
 * const curve = { points: [{ sizeMm: 0.002, passingPct: 18, origin: "sedimentation" }, { sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * jarComparison(record, analyseJar(record), curve).rows.map(({ laboratoryPct, agrees }) => [laboratoryPct, agrees]) // => [[60, false], [22, true], [18, false]]
 */
export function jarComparison(
  { file, layers, passedSizeMm }: JarRecord,
  { shares }: Pick<JarAnalysis, "shares">,
  curve: GradingCurve,
): JarComparison {
  const { clayMm, siltMm } = SIZE_BOUNDARIES.iso14688;
  const [clay, fines] = [clayMm, siltMm].map((sizeMm) => passingAtSize(curve, sizeMm));
  const put = passedSizeMm === undefined ? 100 : passingAtSize(curve, passedSizeMm);
  const share = (coarse: number | undefined, fine: number | undefined) =>
    put === undefined || !(put > 0) || coarse === undefined || fine === undefined
      ? undefined
      : (100 * (coarse - fine)) / put;
  const laboratory: Readonly<Record<JarLayerName, number | undefined>> = {
    "sand and gravel": share(put, fines),
    silt: share(fines, clay),
    clay: share(clay, 0),
  };
  const rows = shares.map(({ name, lowPct, highPct }): JarAgainstLaboratory => {
    const laboratoryPct = laboratory[name];
    if (laboratoryPct === undefined) return { name };
    return { name, laboratoryPct, agrees: laboratoryPct >= lowPct && laboratoryPct <= highPct };
  });
  const findings = rows.flatMap(({ name, laboratoryPct, agrees }, index): Finding[] => {
    if (laboratoryPct === undefined || agrees) return [];
    const { lowPct, highPct } = shares[index];
    return [
      {
        severity: "note",
        code: "jar-against-laboratory",
        file,
        row: layers[index].row,
        column: "layer",
        value: name,
        message: say`The jar allows ${formatFixed(lowPct, 0)} to ${formatFixed(highPct, 0)} % of ${sayOf(name)} by mass, the laboratory measured ${formatFixed(laboratoryPct, 1)} %.`,
        expected: say`the laboratory's share within what the height of the layer allows`,
        wayOut: say`The laboratory's curve stands. Check that both had the same soil, put through the same sieve, and that the jar was read at the right times.`,
      },
    ];
  });
  return { rows, findings };
}
