import { type Finding, finding, findingIf } from "../../findings/finding.js";
import type { Pretreatment } from "../../lab/pretreatment.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { formatFixed } from "../../quantities/format.js";
import { say, type Text, wordFor } from "../../words/message.js";
import type { GradingPoint } from "../curve.js";
import { type WaterBasis, waterProperties } from "./settling.js";

/** A reading or sample of a sedimentation, worked out. */
export interface SedimentationRow {
  readonly row: number;
  readonly timeMin: number;
  readonly temperatureC: number;
  readonly viscosityMPaS: number;
  readonly sizeMm: number;
  /** Percent of the dispersed dry mass. */
  readonly finerOfDispersedPct: number;
  /** Percent of the whole sample. */
  readonly passingPct: number;
}

/** What a sedimentation gives, by hydrometer or pipette. */
export interface SedimentationAnalysis<Row extends SedimentationRow> {
  /** Increasing size, percent of the whole sample, held within 0 and the passing of the separating sieve. */
  readonly points: readonly GradingPoint[];
  /** In the order of time. */
  readonly rows: readonly Row[];
  /** Whose viscosity of water the sizes rest on. */
  readonly water: WaterBasis;
  /** As the sheet gives it. */
  readonly pretreatment?: Pretreatment;
  readonly findings: readonly Finding[];
}

/** What a sedimentation's own sheet does not tell. */
export interface SedimentationInput {
  readonly particleDensityKgM3: number;
  /** Percent of the whole sample that passes the sieve that separated the dispersed material. */
  readonly passingSeparatingPct: number;
}

/** Refuses a passing of the separating sieve, or a dispersed mass, that cannot be. */
export function checkDispersed(passingSeparatingPct: number, dryMassG: number): void {
  const isPercent = passingSeparatingPct >= 0 && passingSeparatingPct <= 100;
  checkThat(isPercent, { passingSeparatingPct }, "0 to 100");
  checkThat(dryMassG > 0, { dryMassG }, "above 0");
}

/** Rows of a sedimentation as points of a curve: increasing size, held within 0 and the separating sieve's passing. */
export function sedimentationPoints(
  rows: readonly SedimentationRow[],
  passingSeparatingPct: number,
): GradingPoint[] {
  return rows
    .map(({ sizeMm, passingPct }): GradingPoint => {
      const held = Math.min(passingSeparatingPct, Math.max(0, passingPct));
      return { sizeMm, passingPct: held, origin: "sedimentation" };
    })
    .sort((a, b) => a.sizeMm - b.sizeMm);
}

/** A temperature at which the viscosity of water is not known. */
export function temperatureFindings(file: string, row: number, temperatureC: number): Finding[] {
  const place = {
    file,
    row,
    column: "temperature",
    value: say`${formatFixed(temperatureC, 1)} °C`,
  };
  return findingIf(!waterProperties(temperatureC), place, "error", "temperature-outside-table", {
    message: say`The viscosity of water is not tabulated at this temperature.`,
    expected: say`10 to 30 °C`,
    remedy: say`Check the reading and its unit; repeat the test in a room or bath within that range.`,
  });
}

/**
 * Percentages in suspension that cannot be: below 0 or over 100 by more than the method explains (within that they
 * are held at the limit), or rising with time.
 */
export function suspensionFindings(
  rows: readonly Pick<SedimentationRow, "row" | "sizeMm" | "finerOfDispersedPct">[],
  words: {
    readonly file: string;
    readonly column: string;
    readonly slackPct: number;
    readonly below: Text;
    readonly remedy: Text;
    readonly before: "reading" | "sample";
    readonly riseRemedy: Text;
  },
): Finding[] {
  const { file, column, slackPct } = words;
  const placed = rows.map(({ row, sizeMm, finerOfDispersedPct: pct }) => {
    return { sizeMm, pct, place: { file, row, column, value: say`${formatFixed(pct, 1)} %` } };
  });
  const outside = placed.flatMap(({ pct, place }) => {
    const isOutside = Math.max(pct - 100, -pct) > slackPct;
    const over = pct > 100;
    return findingIf(isOutside, place, "error", over ? "finer-over-100" : "finer-below-0", {
      message: over ? say`More is in suspension than was put in.` : words.below,
      expected: say`0 to 100 % of the dispersed mass, within ${slackPct} (common practice, no source)`,
      remedy: words.remedy,
    });
  });
  const rising = placed.slice(1).flatMap(({ sizeMm, pct, place }, index) => {
    const before = placed[index];
    const rise = pct - before.pct;
    // A later sample at a lower depth may be of coarser grains.
    const isRise = rise > 1e-9 && sizeMm <= before.sizeMm;
    return findingIf(isRise, place, "warning", "finer-rises", {
      message: say`The percentage in suspension rises by ${formatFixed(rise, 1)} points from the ${wordFor(words.before)} before, which settling cannot cause.`,
      expected: say`percentages that never increase with time`,
      remedy: words.riseRemedy,
    });
  });
  return [...outside, ...rising];
}

/** A note about what was done to the soil before it was dispersed: nothing of it is silent. */
export function pretreatmentFindings(file: string, pretreatment?: Pretreatment): Finding[] {
  if (!pretreatment) return [];
  const { text, lossPct } = pretreatment;
  return [
    finding({ file, column: "pretreatment", value: text }, "note", "pretreatment", {
      message:
        lossPct === undefined
          ? say`The dispersed soil was treated before; the mass lost by it is not given.`
          : say`The dispersed soil was treated before and lost ${formatFixed(lossPct, 1)} % of its dry mass by it; no correction was made.`,
      expected: say`a dispersed dry mass that was taken after the treatment, as percentages are of it`,
      remedy: say`Check that the dry mass of the sheet was weighed after the treatment; the sieved sample was not treated.`,
    }),
  ];
}
