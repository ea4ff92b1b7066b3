import { say } from "../words/message.js";
import { type Check, group, list, names, optional, required } from "./groups.js";
import { earthDensity, type Kind, oneOf, percent, size, text } from "./kinds.js";
import { sheet } from "./sheets.js";
import type {
  CompareConfig,
  SpecifiedConfig,
  StudyConfig,
  TestedConfig,
  TrialConfig,
} from "./studyConfig.js";

/** The worth of rounding in shares that sum to 100 %. */
const SUM_SLACK_PCT = 0.05;

const total = (shares: readonly number[]) => shares.reduce((sum, share) => sum + share, 0);

/** Shares by material id, that must sum to 100 %. */
const SHARES_SUM: Check<{ readonly sharesPct?: Readonly<Record<string, number>> }> = {
  at: "shares",
  holds: ({ sharesPct }) => {
    if (sharesPct === undefined) return true;
    return Math.abs(total(Object.values(sharesPct)) - 100) <= SUM_SLACK_PCT;
  },
  message: say`The shares do not sum to 100 %.`,
  expected: say`shares that sum to 100 %`,
};

const shares = (example: string) => names(percent(example), "site-soil");
const SHARES =
  "Shares of the dry mass of soil and aggregate by material id; what is not named has none.";

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
    shares: optional("sharesPct", shares("55 %"), SHARES),
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
      shares: required("sharesPct", shares("60 %"), SHARES),
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
      shares("55 %"),
      `${SHARES} Left out, the blend that the target leads to.`,
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

/** `compare-mix`: shares and a cement content to hold the chosen mix against. */
export const compareMix: Kind<CompareConfig> = group(
  {
    name: required("name", text("site soil alone with 10 % cement"), "Name as it is printed."),
    shares: required("sharesPct", shares("100 %"), SHARES),
    cement: required(
      "cementPct",
      percent("10 %", 50),
      "Cement, of the dry mass of soil and aggregate.",
    ),
    density: optional(
      "densityKgM3",
      earthDensity("1850 kg/m3"),
      "Rammed dry density of its solids; left out, that of the chosen mix.",
    ),
    moisture: optional(
      "moisturePct",
      percent("11 %", 60),
      "Moisture at ramming; left out, that of the chosen mix.",
    ),
    basis: required(
      "basis",
      text("Mix of the neighbouring house, not tested"),
      "Where the mix comes from and whether it was tested, in your words.",
    ),
  },
  { name: "CompareConfig", checks: [SHARES_SUM] },
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
  const own = { ...tested, id: FIRST_TRIAL, compaction, blocks };
  return [
    ...(compaction === undefined && blocks === undefined
      ? []
      : [{ ...own, key: "tested", sheetKeys: FIRST_SHEET_KEYS }]),
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
  const sum = total(written);
  return written.map((share) => (sum === 100 ? share : (100 * share) / sum));
}
