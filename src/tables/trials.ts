import type { NoteBlock, TableBlock } from "../blocks/block.js";
import { notKnownYet } from "../study/stages.js";
import type {
  MixStudy,
  MixTesting,
  StudyResult,
  TrialPair,
  TrialStudy,
} from "../study/studyResult.js";
import { CLOSE_PASSING_POINTS, CLOSE_SHARE_POINTS, isWithin } from "../study/testedBlend.js";
import { say, type Text } from "../words/message.js";
import { BLANK, ends, fixed, massText, numberColumn, plain, yesOrNo } from "./cell.js";
import { present, quantityCells, tableOf, warning } from "./tableOf.js";

/** The state of a mix in two or three words, for the head of a page. */
export function stateInShort({ state }: MixTesting): Text {
  return state === "tested" ? say`tested mix` : say`proposed blend, for test blocks only`;
}

/** Whether the blend was tested, and on what its mix rests; for the first page. */
export function mixStateNote(result: Pick<StudyResult, "testing" | "stages">): NoteBlock {
  const { testing } = result;
  if (!testing) return notKnownYet(result, "blend");
  return {
    kind: "note",
    tone: testing.state === "tested" ? "note" : "warning",
    text: testing.message,
  };
}

/** What stands in the place of a table about the mix where the tests do not give one. */
export function noMix(): NoteBlock {
  return warning(say`The tests do not give a mix: see the findings.`);
}

/** What speaks against building from the mix, a warning each, for the head of every card and sheet. */
export function doubtNotes({ mix }: { readonly mix?: Pick<MixStudy, "record"> }): NoteBlock[] {
  return (mix?.record.doubts ?? []).map((text) => warning(text));
}

/** The proposed blend beside the tested ones: shares, and the size at which the passing differs most. */
export function blendDifferenceTable({ trials }: Pick<StudyResult, "trials">): TableBlock {
  const rows = trials.flatMap(({ name, difference }) => {
    if (!difference) return [];
    const { shares, maxPassing } = difference;
    return [
      ...shares
        .filter(({ proposedPct, testedPct }) => proposedPct > 0 || testedPct > 0)
        .map((share) => ({ ...share, blend: name, what: share.name, limit: CLOSE_SHARE_POINTS })),
      {
        ...maxPassing,
        blend: name,
        what: say`Passing ${plain(maxPassing.sizeMm, 3)} mm, the largest difference`,
        limit: CLOSE_PASSING_POINTS,
      },
    ];
  });
  return tableOf(
    say`The proposed blend beside the tested ones`,
    rows,
    [
      [say`Tested blend`, ({ blend }) => blend],
      [say`Share or passing`, ({ what }) => what],
      [numberColumn(say`Proposed`, "%"), ({ proposedPct }) => fixed(proposedPct, 1)],
      [numberColumn(say`Tested`, "%"), ({ testedPct }) => fixed(testedPct, 1)],
      [numberColumn(say`Difference`, say`points`), (row) => fixed(row.differencePoints, 1)],
      [say`Close`, ({ differencePoints, limit }) => yesOrNo(isWithin(differencePoints, limit))],
    ],
    [
      say`Close: every share within ${CLOSE_SHARE_POINTS} points of the dry mass of soil and aggregate, and the passing within ${CLOSE_PASSING_POINTS} points at every size. Common practice, no source. Where a blend is not close, nothing that was tested holds for it.`,
    ],
  );
}

/** The tested blends side by side, each with its least cement and what the element takes of it. */
export function testedBlendsTable({
  config,
  trials,
  testing,
}: Pick<StudyResult, "config" | "trials" | "testing">): TableBlock {
  const { units, currency } = config;
  return tableOf(
    say`Tested blends side by side`,
    trials,
    [
      [
        say`Blend`,
        ({ name, id }) =>
          id === testing?.trial && testing.state === "tested" ? say`${name} (this mix)` : name,
      ],
      [say`Blocks crushed`, ({ crushed }) => crushed ?? say`not told`],
      quantityCells(
        say`Maximum dry density`,
        "density",
        units,
        ({ compaction }) => compaction?.peak?.maximumDryDensityKgM3,
        4,
      ),
      [numberColumn(say`Site soil`, "%"), ({ pair }) => fixed(pair?.siteSoilPct, 1)],
      [
        numberColumn(say`Least cement`, "%"),
        ({ pair }) => (pair ? plain(pair.cementPct) : say`none`),
      ],
      [
        numberColumn(say`Cement for the element`),
        ({ pair }) => (pair ? massText(pair.cementKg, units) : BLANK),
      ],
      [numberColumn(say`Cost`, currency), ({ pair }) => ends(pair?.cost, (cost) => fixed(cost, 0))],
      [
        numberColumn(say`Carbon (CO₂e)`),
        ({ pair }) => ends(pair?.carbonKg, (mass) => massText(mass, units)),
      ],
    ],
    [
      ...bestWords(trials),
      say`Each blend with the least cement that its own blocks give by the bound of the study. Nothing is computed between the blends.`,
    ],
  );
}

/** Which pair of blend and cement meets the requirement with the least cement, and with the least cost. */
function bestWords(trials: readonly TrialStudy[]): Text[] {
  const found = trials.flatMap(({ name, pair }) => (pair ? [{ name, pair }] : []));
  if (found.length < 2) return [];
  const minBy = (value: (pair: TrialPair) => number) =>
    found.reduce((best, one) => (value(one.pair) < value(best.pair) ? one : best));
  const cement = minBy(({ cementKg }) => cementKg);
  const priced = found.every(({ pair }) => pair.cost !== undefined);
  const cheapest = minBy(({ cost }) => (cost ? (cost.low + cost.high) / 2 : 0));
  return present([
    say`Least cement that meets the requirement: ${cement.name} with ${plain(cement.pair.cementPct)} %.`,
    priced &&
      say`Least cost, by the middle of its range: ${cheapest.name} with ${plain(cheapest.pair.cementPct)} % cement.`,
  ]);
}
