import { differenceCiede2000 } from "culori";
import { type Finding, findingIf } from "../findings/finding.js";
import type { WorkshopTrial } from "../lab/trials.js";
import { say, type Text } from "../words/message.js";

const MUNSELL =
  /^(N ?\d+(\.\d+)?\/?|\d+(\.\d+)? ?(R|YR|Y|GY|G|BG|B|PB|P|RP) \d+(\.\d+)?\/\d+(\.\d+)?)$/;

/**
 * What is amiss with a log of workshop trials: colours taken before the sample was dry, colours that are
 * none, names that stand twice; and the caution that a small sample says little of strength.
 *
 * Small thin samples feel dry after an hour or so, but colour and strength are judged dry and cured.
 *
 * @param file named in the findings. Source: common practice, no source.
 *
 * @example
 * const trial = { id: "T1", mix: "3 soil : 1 sand", thicknessMm: 12, dryingHours: 1, munsell: "7.5YR 6/4", row: 2 };
 * trialFindings([trial], "trials.csv").map(({ code, severity }) => [code, severity]) // => [["colour-before-dry", "warning"], ["trial-not-strength", "note"]]
 */
export function trialFindings(trials: readonly WorkshopTrial[], file: string): Finding[] {
  const ofTrials = trials.flatMap(({ id, row, lab, colour, munsell, dryToConstantMass }) => {
    const at = (column: string, value?: Text) => ({ file, row, column, value });
    const { row: first } = trials.find((trial) => trial.id === id)!;
    const isMunsell = munsell === undefined || MUNSELL.test(munsell);
    const isLab =
      !lab || (lab.l >= 0 && lab.l <= 100 && Math.abs(lab.a) <= 128 && Math.abs(lab.b) <= 128);
    const taken = munsell ?? colour ?? (lab && `L* ${lab.l}`);
    const moist = taken !== undefined && !dryToConstantMass;
    return [
      ...findingIf(first !== row, at("trial", id), "error", "repeated-trial", {
        message: say`This trial's name is already used in row ${first}.`,
        expected: say`each trial once`,
        remedy: say`Correct the name, or take the copy out.`,
      }),
      ...findingIf(!isMunsell, at("munsell", munsell), "error", "unknown-colour", {
        message: say`This is not a Munsell colour.`,
        expected: say`hue, value and chroma, for example 7.5YR 6/4, or N 5/ for a grey`,
        remedy: say`Read it from the chart again, in shade, beside the dry sample.`,
      }),
      ...findingIf(!isLab, at("L*", `${lab?.l}, ${lab?.a}, ${lab?.b}`), "error", "unknown-colour", {
        message: say`These numbers are not a CIELAB colour.`,
        expected: say`L* 0 to 100, a* and b* −128 to 128`,
        remedy: say`Check the colour space of the picture program: L*a*b*, not RGB.`,
      }),
      ...findingIf(moist, at("colour", taken), "warning", "colour-before-dry", {
        message: say`The colour of trial ${id} was taken without knowing that it was dry; moist earth looks darker.`,
        expected: say`a mass that stands still between two weighings a day apart`,
        remedy: say`Let it dry, weigh it twice, and take the colour again.`,
      }),
    ];
  });
  return [
    ...ofTrials,
    ...findingIf(trials.length > 0, { file }, "note", "trial-not-strength", {
      message: say`Small thin samples dry in an hour or so. They show colour, texture and edges; strength is that of blocks, cured and crushed.`,
      expected: say`blocks of the chosen mix, cured to the age of the requirement`,
      remedy: say`Choose the mixes worth testing here, then make blocks of them.`,
    }),
  ];
}

export interface TrialDifference {
  readonly one: string;
  readonly other: string;
  /** CIEDE2000. */
  readonly deltaE: number;
  readonly words: "hardly seen" | "seen side by side" | "seen at a glance";
}

/**
 * Colour differences between all pairs of trials that have a CIELAB value, largest first.
 *
 * CIEDE2000 with all weights 1. Below about 1 hardly seen, to about 5 seen side by side, beyond that at
 * a glance: common practice, no source. A photograph's colours hold only among pictures of one light,
 * one camera setting and one grey card.
 *
 * @throws RangeError for a colour that is not finite. Source: Sharma, Wu & Dalal 2005, by the package
 * culori; their test pairs (from memory) are in `tests/strength`.
 *
 * @example
 * const trial = (id, l, a, b) => ({ id, mix: id, row: 2, lab: { l, a, b } });
 * const [pair] = compareTrials([trial("A", 50, 2.6772, -79.7751), trial("B", 50, 0, -82.7485)]);
 * pair.deltaE // => 2.0425
 */
export function compareTrials(trials: readonly WorkshopTrial[]): TrialDifference[] {
  const difference = differenceCiede2000();
  const coloured = trials.flatMap(({ id, lab }) => {
    if (!lab) return [];
    for (const [name, value] of Object.entries(lab)) {
      if (!Number.isFinite(value)) {
        throw new RangeError(`invalid \`lab.${name}\` of ${id}: ${value}; expected a number`);
      }
    }
    // Named lab65 so that the numbers go into the formula as they are, not adapted to another white.
    return [{ id, colour: { mode: "lab65", ...lab } as const }];
  });
  const pairs = coloured.flatMap(({ id, colour }, index) =>
    coloured.slice(index + 1).map((other): TrialDifference => {
      const deltaE = difference(colour, other.colour);
      return { one: id, other: other.id, deltaE, words: differenceWords(deltaE) };
    }),
  );
  return pairs.sort((a, b) => b.deltaE - a.deltaE);
}

function differenceWords(deltaE: number): TrialDifference["words"] {
  if (deltaE < 1) return "hardly seen";
  return deltaE < 5 ? "seen side by side" : "seen at a glance";
}
