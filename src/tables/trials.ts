import type { NoteBlock, TableBlock } from "../blocks/block.js";
import type { Interval } from "../quantities/interval.js";
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
import {
  BLANK,
  fixed,
  massText,
  numberColumn,
  plain,
  quantity,
  quantityColumn,
  yesOrNo,
} from "./cell.js";
import { present, warning } from "./tableOf.js";

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
  const known = trials.flatMap(({ name, difference }) =>
    difference ? [{ name, difference }] : [],
  );
  const size = (sizeMm: number) => say`Passing ${plain(sizeMm, 3)} mm, the largest difference`;
  return {
    kind: "table",
    caption: say`The proposed blend beside the tested ones`,
    columns: [
      { header: say`Tested blend` },
      { header: say`Share or passing` },
      numberColumn(say`Proposed`, "%"),
      numberColumn(say`Tested`, "%"),
      numberColumn(say`Difference`, say`points`),
      { header: say`Close` },
    ],
    rows: known.flatMap(({ name, difference }) => [
      ...difference.shares
        .filter(({ proposedPct, testedPct }) => proposedPct > 0 || testedPct > 0)
        .map((share): Text[] => [
          name,
          share.name,
          fixed(share.proposedPct, 1),
          fixed(share.testedPct, 1),
          fixed(share.differencePoints, 1),
          yesOrNo(isWithin(share.differencePoints, CLOSE_SHARE_POINTS)),
        ]),
      [
        name,
        size(difference.maxPassing.sizeMm),
        fixed(difference.maxPassing.proposedPct, 1),
        fixed(difference.maxPassing.testedPct, 1),
        fixed(difference.maxPassing.differencePoints, 1),
        yesOrNo(isWithin(difference.maxPassing.differencePoints, CLOSE_PASSING_POINTS)),
      ],
    ]),
    notes: [
      say`Close: every share within ${CLOSE_SHARE_POINTS} points of the dry mass of soil and aggregate, and the passing within ${CLOSE_PASSING_POINTS} points at every size. Common practice, no source. Where a blend is not close, nothing that was tested holds for it.`,
    ],
  };
}

/** The tested blends side by side, each with its least cement and what the element takes of it. */
export function testedBlendsTable({
  config,
  trials,
  testing,
}: Pick<StudyResult, "config" | "trials" | "testing">): TableBlock {
  const { units, currency } = config;
  const whole = ({ low, high }: Interval, write: (value: number) => Text): Text =>
    low === high ? write(low) : say`${write(low)} to ${write(high)}`;
  const row = ({ name, id, crushed, pair, compaction }: TrialStudy): Text[] => [
    id === testing?.trial && testing.state === "tested" ? say`${name} (this mix)` : name,
    crushed ?? say`not told`,
    quantity(compaction?.peak?.maximumDryDensityKgM3, "density", units, 4),
    ...(pair
      ? [
          fixed(pair.siteSoilPct, 1),
          plain(pair.cementPct),
          massText(pair.cementKg, units),
          pair.cost ? whole(pair.cost, (value) => fixed(value, 0)) : BLANK,
          whole(pair.carbonKg, (value) => massText(value, units)),
        ]
      : [BLANK, say`none`, BLANK, BLANK, BLANK]),
  ];
  return {
    kind: "table",
    caption: say`Tested blends side by side`,
    columns: [
      { header: say`Blend` },
      { header: say`Blocks crushed` },
      quantityColumn(say`Maximum dry density`, "density", units),
      numberColumn(say`Site soil`, "%"),
      numberColumn(say`Least cement`, "%"),
      numberColumn(say`Cement for the element`),
      numberColumn(say`Cost`, currency ?? ""),
      numberColumn(say`Carbon (CO₂e)`),
    ],
    rows: trials.map(row),
    notes: [
      ...bestWords(trials),
      say`Each blend with the least cement that its own blocks give by the bound of the study. Nothing is computed between the blends.`,
    ],
  };
}

/** Which pair of blend and cement meets the requirement with the least cement, and with the least cost. */
function bestWords(trials: readonly TrialStudy[]): Text[] {
  const found = trials.flatMap(({ name, pair }) => (pair ? [{ name, pair }] : []));
  if (found.length < 2) return [];
  const minBy = (value: (pair: TrialPair) => number) =>
    found.reduce((best, one) => (value(one.pair) < value(best.pair) ? one : best));
  const cement = minBy(({ cementKg }) => cementKg);
  const priced = found.every(({ pair }) => pair.cost !== undefined);
  const middle = ({ cost }: TrialPair) => (cost ? (cost.low + cost.high) / 2 : 0);
  const cheapest = minBy(middle);
  return present([
    say`Least cement that meets the requirement: ${cement.name} with ${plain(cement.pair.cementPct)} %.`,
    priced &&
      say`Least cost, by the middle of its range: ${cheapest.name} with ${plain(cheapest.pair.cementPct)} % cement.`,
  ]);
}
