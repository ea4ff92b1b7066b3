import { say } from "../words/message.js";
import { type Check, group, list, names, optional, required } from "./groups.js";
import { type Kind, oneOf, percent, size, text } from "./kinds.js";
import { sheet } from "./sheets.js";
import type { SpecifiedConfig, StudyConfig, TestedConfig, TrialConfig } from "./studyConfig.js";

/** The worth of rounding in shares that sum to 100 %. */
const SUM_SLACK_PCT = 0.05;

/** Shares by material id, that must sum to 100 %. */
export const SHARES_SUM: Check<{ readonly sharesPct?: Readonly<Record<string, number>> }> = {
  at: "shares",
  holds: ({ sharesPct }) => {
    if (sharesPct === undefined) return true;
    const sum = Object.values(sharesPct).reduce((total, share) => total + share, 0);
    return Math.abs(sum - 100) <= SUM_SLACK_PCT;
  },
  message: say`The shares do not sum to 100 %.`,
  expected: say`shares that sum to 100 %`,
};

/** How blocks are when they are crushed; `moist` is at the moisture of curing. */
export const crushed = oneOf("dry", "moist", "soaked");

const made = {
  "screened-at": optional(
    "screenedAtMm",
    size("20 mm", "3/4 in"),
    "Sieve on which coarse grains were taken out before the blend was compacted in the mould; its densities and water contents are then corrected for them.",
  ),
  crushed: optional(
    "crushed",
    crushed,
    "How the blocks were when they were crushed; moist is at the moisture of curing.",
  ),
  curing: optional(
    "curing",
    text("wrapped for 7 days, then in the laboratory's air"),
    "How the blocks were cured, in your words.",
  ),
  shape: optional("shape", oneOf("cube", "prism", "cylinder"), "Shape of the blocks."),
  looks: optional(
    "looks",
    sheet("sheets/looks.csv"),
    "Sheet of what was seen on the trial's blocks: texture, edges, cracks, colour when dry.",
  ),
};

/** `tested`: of what blend the study's own compaction and block sheets are, and how the blocks were crushed. */
export const tested: Kind<TestedConfig> = group(
  {
    name: optional("name", text("First trial blend"), "Name as it is printed."),
    shares: optional(
      "sharesPct",
      names(percent("55 %"), "site-soil"),
      "Shares of the dry mass of soil and aggregate by material id; what is not named has none.",
    ),
    ...made,
  },
  { name: "TestedConfig", checks: [SHARES_SUM] },
);

/** `trials`: further blends that blocks were made of. */
export const trials: Kind<readonly TrialConfig[]> = list(
  group(
    {
      id: required("id", text("less-sand"), "Short name that “mix-from” uses."),
      name: optional("name", text("With less sand"), "Name as it is printed; left out, the id."),
      shares: required(
        "sharesPct",
        names(percent("60 %"), "site-soil"),
        "Shares of the dry mass of soil and aggregate by material id; what is not named has none.",
      ),
      compaction: optional(
        "compaction",
        sheet("sheets/less-sand-compaction.csv"),
        "Sheet of the compaction test of this blend; without it no mix follows from it.",
      ),
      blocks: optional(
        "blocks",
        sheet("sheets/less-sand-blocks.csv"),
        "Sheet of the crushed blocks of this blend; left out while none is crushed.",
      ),
      ...made,
    },
    {
      name: "TrialConfig",
      checks: [
        SHARES_SUM,
        {
          holds: ({ compaction, blocks }) => compaction !== undefined || blocks !== undefined,
          message: say`This trial names no sheet.`,
          expected: say`a compaction sheet, a sheet of blocks, or both`,
        },
      ],
    },
  ),
  { max: 12, unique: "id" },
);

/** `mix`: what the designer sets by hand in place of what is computed. */
export const specified: Kind<SpecifiedConfig> = group(
  {
    shares: optional(
      "sharesPct",
      names(percent("55 %"), "site-soil"),
      "Shares of the dry mass of soil and aggregate by material id; what is not named has none. Left out, the blend that the target leads to.",
    ),
    cement: optional(
      "cementPct",
      percent("8 %", 50),
      "Cement, of the dry mass of soil and aggregate; never less than what the blocks show to be needed. Left out, the least cement.",
    ),
    moisture: optional(
      "moisturePct",
      percent("10 %", 60),
      "Moisture at ramming, inside the window of the compaction test. Left out, its optimum.",
    ),
  },
  { name: "SpecifiedConfig", checks: [SHARES_SUM] },
);

/** The id of the trial that the study's own compaction and block sheets are of. */
export const FIRST_TRIAL = "tested";

/** Where `study.yaml` names the sheets of the first trial. */
export const FIRST_SHEET_KEYS = { compaction: "compaction", blocks: "strength.sheet" } as const;

/** A blend that was tested, wherever the study names it. */
export interface TrialEntry extends Omit<TrialConfig, "sharesPct"> {
  /** Absent where the study does not say what was tested. */
  readonly sharesPct?: Readonly<Record<string, number>>;
  /** Where `study.yaml` has it: `tested` or `trials.0`. */
  readonly key: string;
  /** Where `study.yaml` names its sheets. */
  readonly sheetKeys: { readonly compaction: string; readonly blocks: string };
}

/** The study's own compaction and block sheets as the first trial, where it has any; then those of `trials`. */
export function trialEntries({
  tested = {},
  trials = [],
  compaction,
  strength,
}: Pick<StudyConfig, "tested" | "trials" | "compaction" | "strength">): TrialEntry[] {
  const blocks = strength.sheet;
  const own =
    compaction === undefined && blocks === undefined
      ? []
      : [
          {
            ...tested,
            id: FIRST_TRIAL,
            ...(compaction === undefined ? {} : { compaction }),
            ...(blocks === undefined ? {} : { blocks }),
            key: "tested",
            sheetKeys: FIRST_SHEET_KEYS,
          },
        ];
  return [
    ...own,
    ...trials.map((trial, index) => ({
      ...trial,
      key: `trials.${index}`,
      sheetKeys: { compaction: `trials.${index}.compaction`, blocks: `trials.${index}.blocks` },
    })),
  ];
}

/** Shares of a trial in the order of the materials, scaled to 100 within the rounding that is allowed. */
export function trialShares(
  { materials }: Pick<StudyConfig, "materials">,
  { sharesPct }: Pick<TrialEntry, "sharesPct">,
): number[] | undefined {
  if (sharesPct === undefined) return undefined;
  const written = materials.map(({ id }) => sharesPct[id] ?? 0);
  const sum = written.reduce((total, share) => total + share, 0);
  return written.map((share) => (sum === 100 ? share : (100 * share) / sum));
}
