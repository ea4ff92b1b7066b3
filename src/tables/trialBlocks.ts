import type { TableBlock, TableColumn } from "../blocks/block.js";
import type { WorkshopTrial } from "../lab/trials.js";
import { displayUnit, displayValue, type UnitSystem } from "../quantities/format.js";
import type { TrialDifference } from "../strength/trials.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { BLANK, fixed, numberColumn, plain } from "./cell.js";
import { tableOf } from "./tableOf.js";

/** What was seen on trial blocks or samples, side by side, in the words of whoever looked; never a verdict. */
export function trialsTable(
  trials: readonly WorkshopTrial[],
  units: UnitSystem = "SI",
): TableBlock {
  const columns: readonly LookColumn[] = [
    { header: say`Trial`, cell: ({ id }) => id },
    { header: say`Mix`, cell: ({ mix }) => mix },
    { header: say`Texture`, cell: ({ texture }) => texture },
    { header: say`Edges`, cell: ({ edges }) => edges },
    { header: say`Cracks`, cell: ({ cracks }) => cracks },
    {
      header: say`Colour`,
      cell: ({ colour, munsell, lab }) =>
        textOrNone([colour, munsell, lab && say`${"L* a* b*"} ${colourNumbers(lab)}`]),
    },
    {
      header: say`Sample`,
      cell: ({ thicknessMm, dryToConstantMass }) =>
        joinTexts([
          thicknessMm === undefined ? undefined : thicknessText(thicknessMm, units),
          dryToConstantMass ? say`dry to constant mass` : say`not known to be dry`,
        ]),
    },
    {
      header: say`Seen by, on`,
      cell: ({ seenBy, seenOn, photograph }) => textOrNone([seenBy, seenOn, photograph]),
    },
    { header: say`Remark`, cell: ({ remark }) => remark },
  ];
  // What nobody wrote down has no column.
  const filled = columns.filter(({ cell }) => trials.some((trial) => cell(trial) !== undefined));
  return {
    kind: "table",
    caption: say`Trial blocks as they were seen`,
    columns: filled.map(({ cell: _, ...column }) => column),
    rows: trials.map((trial) => filled.map(({ cell }) => cell(trial) ?? BLANK)),
    notes: [
      say`Small thin samples dry in an hour or so; colour is judged when the mass stands still, strength on cured blocks.`,
    ],
  };
}

interface LookColumn extends TableColumn {
  /** Undefined where nothing was written. */
  readonly cell: (trial: WorkshopTrial) => Text | undefined;
}

function thicknessText(thicknessMm: number, units: UnitSystem): Text {
  const shown = plain(displayValue(thicknessMm, "depth", units), 3);
  return say`${shown} ${displayUnit("depth", units)}`;
}

/** The steps of a colour difference, as `compareTrials` calls them. */
const SEEN: Readonly<Record<TrialDifference["words"], Text>> = {
  "hardly seen": say`hardly seen`,
  "seen side by side": say`seen side by side`,
  "seen at a glance": say`seen at a glance`,
};

function textOrNone(texts: readonly (Text | undefined)[]): Text | undefined {
  return texts.some((text) => text !== undefined) ? joinTexts(texts) : undefined;
}

function colourNumbers({ l, a, b }: NonNullable<WorkshopTrial["lab"]>): Text {
  return joinTexts(
    [l, a, b].map((value) => plain(value, 3)),
    " ",
  );
}

/** Colour differences between trials, largest first. */
export function trialDifferencesTable(differences: readonly TrialDifference[]): TableBlock {
  return tableOf(
    say`Colour differences between trials`,
    differences,
    [
      [say`Trial`, ({ one }) => one],
      [say`Trial`, ({ other }) => other],
      [numberColumn("CIEDE2000"), ({ deltaE }) => fixed(deltaE, 1)],
      [say`In words`, ({ words }) => SEEN[words]],
    ],
    [
      say`The words are common practice, no source; photographs must share light, camera setting and grey card.`,
    ],
  );
}
