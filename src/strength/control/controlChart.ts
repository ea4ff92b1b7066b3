import { mean } from "simple-statistics";
import { checkThat } from "../../quantities/checkNumber.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { meanAndSd } from "../characteristicStrength.js";

type ControlSignal = "outside-limits" | "run-of-eight" | "spread-outside-limits";

export interface ControlPoint {
  readonly label: string;
  /** Mean of the lot's blocks, or the single block. */
  readonly valueMpa: number;
  /** Within the lot; null for single blocks. */
  readonly sdMpa: number | null;
  readonly signals: readonly ControlSignal[];
}

export interface ControlChart {
  readonly status: "ok" | "too-few-lots" | "uneven-lots" | "no-scatter";
  readonly message: Text;
  readonly kind: "means" | "single blocks";
  readonly centreMpa: number | null;
  readonly lowMpa: number | null;
  readonly highMpa: number | null;
  /** Upper limit of the standard deviation within a lot; null for single blocks. */
  readonly spreadHighMpa: number | null;
  readonly points: readonly ControlPoint[];
}

const RUN = 8;

/**
 * Control chart of site lots: limits that a steady process leaves about three times in a thousand.
 *
 * Lots of n ≥ 2 blocks: mean of the lots' means ± 3 s̄/(c₄ √n), and s̄ (1 + 3 √(1 − c₄²)/c₄) for the
 * spread; c₄ = √(2/(n−1)) Γ(n/2)/Γ((n−1)/2). Single blocks: mean ± 3 MR/1.1284, MR the mean of the
 * differences of neighbours. Signals: a point outside, or eight in a row on one side of the centre.
 * A signal asks for a look at the work; it is not the acceptance rule. Batches that truly differ make
 * the limits of means, which know only the scatter within lots, too narrow: then chart single means.
 *
 * @param lots in order of making; all of one number of blocks.
 * @throws RangeError for a strength that is not finite. Source: Shewhart charts, e.g. Montgomery,
 * Statistical Quality Control (from memory; c₄ and 1.1284 = 2/√π calculated here).
 *
 * @example
 * const lot = (label, ...strengthsMpa) => ({ label, strengthsMpa });
 * const { centreMpa, lowMpa, highMpa } = controlChart([lot("1", 2.4, 2.6), lot("2", 2.5, 2.3), lot("3", 2.7, 2.5), lot("4", 2.4, 2.4), lot("5", 2.6, 2.3)]);
 * [centreMpa, lowMpa, highMpa] // => [2.47, 2.1316, 2.8084]
 */
export function controlChart(
  lots: readonly { readonly label: string; readonly strengthsMpa: readonly number[] }[],
): ControlChart {
  lots.forEach(({ strengthsMpa }, lot) => {
    strengthsMpa.forEach((value, block) => {
      const name = `lots[${lot}].strengthsMpa[${block}]`;
      checkThat(Number.isFinite(value), { [name]: value }, "a number");
    });
  });
  const n = lots[0]?.strengthsMpa.length ?? 0;
  const kind = n > 1 ? "means" : "single blocks";
  const limits = { centreMpa: null, lowMpa: null, highMpa: null, spreadHighMpa: null };
  const without = (status: ControlChart["status"], message: Text): ControlChart => {
    return { status, message, kind, ...limits, points: [] };
  };
  if (lots.length < 5 || n === 0) {
    return without(
      "too-few-lots",
      say`Limits need five lots at least; twenty or more make them steady (common practice, no source).`,
    );
  }
  if (lots.some(({ strengthsMpa }) => strengthsMpa.length !== n)) {
    return without(
      "uneven-lots",
      say`The lots have different numbers of blocks; chart those of one number.`,
    );
  }
  const parts = lots.map(({ label, strengthsMpa }) => ({ label, ...meanAndSd(strengthsMpa) }));
  const centreMpa = mean(parts.map((lot) => lot.mean));
  const c = c4(Math.max(2, n));
  const steps = parts.slice(1).map((lot, index) => Math.abs(lot.mean - parts[index].mean));
  const s = n > 1 ? mean(parts.map(({ sd }) => sd!)) : 0;
  const sigma = n > 1 ? s / (c * Math.sqrt(n)) : (mean(steps) * Math.sqrt(Math.PI)) / 2;
  if (sigma <= 1e-12 * Math.abs(centreMpa)) {
    return without("no-scatter", say`All readings are the same: enter each block's own reading.`);
  }
  const [lowMpa, highMpa] = [centreMpa - 3 * sigma, centreMpa + 3 * sigma];
  const spreadHighMpa = n > 1 ? s * (1 + (3 * Math.sqrt(1 - c * c)) / c) : null;
  let [side, run] = [0, 0];
  const points = parts.map(({ label, mean, sd }): ControlPoint => {
    const here = Math.sign(mean - centreMpa);
    run = here !== 0 && here === side ? run + 1 : Math.abs(here);
    side = here;
    const signals: ControlPoint["signals"][number][] = [];
    if (mean < lowMpa || mean > highMpa) signals.push("outside-limits");
    if (run >= RUN) signals.push("run-of-eight");
    if (spreadHighMpa !== null && sd! > spreadHighMpa) signals.push("spread-outside-limits");
    return { label, valueMpa: mean, sdMpa: sd, signals };
  });
  const named = points.filter(({ signals }) => signals.length > 0).map(({ label }) => label);
  return {
    status: "ok",
    kind,
    centreMpa,
    lowMpa,
    highMpa,
    spreadHighMpa,
    points,
    message:
      named.length === 0
        ? say`No lot gives a signal: the work is steady, as far as the chart can tell.`
        : say`Look at the work of ${named.join(", ")}: something other than the usual scatter is likely.`,
  };
}

/** Γ(n/2)/Γ((n−1)/2) by steps of two: from √π/… for n = 2, 3. */
function c4(n: number): number {
  let ratio = n % 2 === 0 ? 1 / Math.sqrt(Math.PI) : Math.sqrt(Math.PI) / 2;
  for (let m = n % 2 === 0 ? 4 : 5; m <= n; m += 2) ratio *= (m - 2) / (m - 3);
  return ratio * Math.sqrt(2 / (n - 1));
}

const SIGNALS: Readonly<Record<ControlSignal, Text>> = {
  "outside-limits": say`outside the limits`,
  "run-of-eight": say`eight in a row on one side`,
  "spread-outside-limits": say`spread outside its limit`,
};

/** The signals of a lot in words; empty where it has none. */
export function signalWords(signals: readonly ControlSignal[]): Text {
  return joinTexts(signals.map((signal) => SIGNALS[signal]));
}
