import { type Finding, type FindingPlace, finding, findingIf } from "../../findings/finding.js";
import type { HydrometerRecord } from "../../lab/hydrometer.js";
import { formatFixed } from "../../quantities/format.js";
import { say, type Text, wordFor } from "../../words/message.js";
import type { GradingPoint } from "../curve.js";
import { waterProperties } from "./settling.js";

/** Rows of a sedimentation as points of a curve: increasing size, held within 0 and the separating sieve's passing. */
export function sedimentationPoints(
  rows: readonly { readonly sizeMm: number; readonly passingPct: number }[],
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

/** A percentage in suspension below 0 or over 100 by more than the method explains; within that it is held at the limit. */
export function percentFindings(
  place: FindingPlace,
  finerPct: number,
  words: { readonly slackPct: number; readonly below: Text; readonly remedy: Text },
): Finding[] {
  const isOutside = Math.max(finerPct - 100, -finerPct) > words.slackPct;
  const over = finerPct > 100;
  const at = { ...place, value: say`${formatFixed(finerPct, 1)} %` };
  return findingIf(isOutside, at, "error", over ? "finer-over-100" : "finer-below-0", {
    message: over ? say`More is in suspension than was put in.` : words.below,
    expected: say`0 to 100 % of the dispersed mass, within ${words.slackPct} (common practice, no source)`,
    remedy: words.remedy,
  });
}

/** A percentage in suspension that rises with time. */
export function riseFindings(
  place: FindingPlace,
  finerPct: number,
  beforePct: number,
  words: { readonly before: "reading" | "sample"; readonly remedy: Text },
): Finding[] {
  const rise = finerPct - beforePct;
  const at = { ...place, value: say`${formatFixed(finerPct, 1)} %` };
  return findingIf(rise > 1e-9, at, "warning", "finer-rises", {
    message: say`The percentage in suspension rises by ${formatFixed(rise, 1)} points from the ${wordFor(words.before)} before, which settling cannot cause.`,
    expected: say`percentages that never increase with time`,
    remedy: words.remedy,
  });
}

/** A note about what was done to the soil before it was dispersed: nothing of it is silent. */
export function pretreatmentFindings({
  file,
  pretreatment,
}: Pick<HydrometerRecord, "file" | "pretreatment">): Finding[] {
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
