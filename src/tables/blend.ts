import type { BlendDesign, BlendResult, LimitState } from "../blend/description.js";
import type { BucketChange, PracticalParts } from "../blend/parts.js";
import type { Relaxation } from "../blend/tradeoffs.js";
import type { TableBlock } from "../blocks/block.js";
import type { MaterialConfig, TargetConfig } from "../entries/studyConfig.js";
import { say, type Text, wordFor } from "../words/message.js";
import { digits, fixed, numberColumn, plain } from "./cell.js";
import { present, tableOf } from "./tableOf.js";

const BOUND_WORDS: Readonly<Record<"-1" | "0" | "1", Text>> = {
  "-1": say`at its smallest allowed`,
  "0": say`between its limits`,
  "1": say`at its largest allowed`,
};

/** Among blends that keep to a band, what was sought. */
export const OBJECTIVE_WORDS = {
  "most-site-soil": say`the most site soil`,
  "least-cost": say`the least cost`,
  "nearest-middle": say`the nearest to the middle of the band`,
} as const;

/** Absent where the shares are given and no target was sought. */
type Sought = Partial<Pick<BlendDesign, "target" | "rmsDifferencePct" | "worst">>;

/** The shares of the blend, what was sought with them, and which of them a limit of the user holds. */
export function blendSharesTable(
  blend: Pick<BlendDesign, "shares" | "status" | "unique"> & Sought,
  materials: readonly MaterialConfig[],
  target?: TargetConfig,
): TableBlock {
  const { status, unique } = blend;
  const given = !blend.target || areSet(blend.shares, materials);
  return {
    kind: "table",
    caption:
      given && status !== "infeasible"
        ? say`Shares of the blend, as the study gives them`
        : sharesCaption(blend, target),
    columns: [
      { header: say`Material` },
      numberColumn(say`Share of dry mass`, "%"),
      numberColumn(say`Allowed`, "%"),
      { header: say`Limit` },
    ],
    rows: blend.shares.map(({ id, sharePct, bound }) => {
      const material = materials.find((entry) => entry.id === id);
      const held = given ? say`given` : BOUND_WORDS[`${bound}`];
      return [
        material?.name ?? id,
        fixed(sharePct, 1),
        material ? say`${plain(material.minSharePct)} to ${plain(material.maxSharePct)}` : "",
        sharePct === 0 ? say`not used` : held,
      ];
    }),
    notes: present([
      say`Percentages of the dry mass of soil and aggregate, cement excluded.`,
      ...fitNotes(blend),
      !(unique || status !== "ok") &&
        say`Other shares would do equally well: two materials are alike at these sizes.`,
    ]),
  };
}

/** Points by which a share that was rounded may differ from its limit. */
const AT_LIMIT = 0.05;

/** Whether the shares were set: each is held, and not by what the study allows of its material. */
function areSet(
  shares: readonly Pick<BlendDesign["shares"][number], "id" | "sharePct" | "bound">[],
  materials: readonly MaterialConfig[],
): boolean {
  return shares.some(({ id, sharePct, bound }) => {
    const material = materials.find((one) => one.id === id);
    if (!material || bound === 0) return false;
    const limit = bound === -1 ? material.minSharePct : material.maxSharePct;
    return Math.abs(sharePct - limit) > AT_LIMIT;
  });
}

/** How near the blend comes to what it was to be. */
function fitNotes({ target, rmsDifferencePct, worst }: Sought): Text[] {
  if (!target || !worst) return [];
  return [
    target.kind === "band"
      ? say`Root mean square distance outside the band: ${fixed(rmsDifferencePct, 2)} points; largest: ${fixed(worst.differencePct, 1)} points at ${plain(worst.sizeMm)} mm.`
      : say`Root mean square difference from the target: ${fixed(rmsDifferencePct, 2)} points; largest: ${fixed(worst.differencePct, 1)} points at ${plain(worst.sizeMm)} mm.`,
  ];
}

/** What was computed: a blend that is not nearest to anything is not called so. */
function sharesCaption(
  { status, target: sought }: Pick<BlendDesign, "status"> & Sought,
  target: TargetConfig | undefined,
): Text {
  if (status === "infeasible")
    return say`Shares that break the limits least: no blend keeps them all`;
  if (sought?.kind !== "band") return say`Shares of the blend nearest to the target`;
  return target?.kind === "band"
    ? say`Shares of the blend that keeps to the band with ${OBJECTIVE_WORDS[target.objective]}`
    : say`Shares of the blend that keeps to the band`;
}

/** The blend against its target, size by size. */
export function blendFitTable(blend: Pick<BlendResult, "points">): TableBlock {
  return tableOf(say`The blend against its target`, blend.points, [
    [numberColumn(say`Size`, "mm"), ({ sizeMm }) => plain(sizeMm)],
    [numberColumn(say`Target`, "%"), ({ targetPct }) => fixed(targetPct, 1)],
    [numberColumn(say`Blend`, "%"), ({ blendPct }) => fixed(blendPct, 1)],
    [numberColumn(say`Difference`, say`points`), ({ differencePct }) => fixed(differencePct, 1)],
  ]);
}

const SIDES = { min: say`at least`, max: say`at most` };

/** Where the blend stands against each limit, and which of them hold it. */
export function blendLimitsTable(design: Pick<BlendDesign, "limits">): TableBlock {
  const estimates = design.limits.some(({ estimate }) => estimate);
  return tableOf(
    say`The limits of the blend`,
    design.limits,
    [
      [say`Quantity`, ({ label, estimate }) => (estimate ? say`${label} (estimate)` : label)],
      [
        numberColumn(say`Limit`),
        ({ side, limit, unit }) => say`${SIDES[side]} ${plain(limit)} ${wordFor(unit)}`,
      ],
      [numberColumn(say`Blend`), ({ value, unit }) => say`${digits(value)} ${wordFor(unit)}`],
      [
        say`Status`,
        ({ side, limit, value, active }) => limitStatus({ side, limit, value, active }),
      ],
    ],
    estimates
      ? [
          say`Estimates are means of the materials' own tests, weighted by what passes 0.425 mm: to be confirmed by a test of the blend.`,
        ]
      : [],
  );
}

function limitStatus({
  side,
  limit,
  value,
  active,
}: Pick<LimitState, "side" | "limit" | "value" | "active">): Text {
  if (active) return say`on the limit`;
  const inside = side === "min" ? value > limit : value < limit;
  return inside ? say`inside` : say`outside`;
}

/** What a little more room at each limit that binds would buy. */
export function blendRelaxTable(design: Sought, relaxed: readonly Relaxation[]): TableBlock {
  return tableOf(
    say`What relaxing each binding limit would buy`,
    relaxed,
    [
      [say`Limit`, ({ label }) => label],
      [
        numberColumn(say`Now`),
        ({ side, limit, unit }) => say`${SIDES[side]} ${plain(limit)} ${wordFor(unit)}`,
      ],
      [
        numberColumn(say`Relaxed to`),
        ({ relaxedTo, unit }) => say`${plain(relaxedTo)} ${wordFor(unit)}`,
      ],
      [numberColumn(say`Nearer to the target`, say`points`), ({ gainPct }) => fixed(gainPct, 2)],
      [numberColumn(say`Site soil`, "%"), ({ siteSoilPct }) => fixed(siteSoilPct, 1)],
      [numberColumn(say`Cost`, say`per t`), ({ costPerT }) => digits(costPerT)],
    ],
    [
      say`Each is solved again by itself. Now: ${fixed(design.rmsDifferencePct, 2)} points from the target.`,
    ],
  );
}

/** Parts for the bucket list, with the dry-mass shares that they give. */
export function blendPartsTable(
  parts: PracticalParts,
  nameOf: (id: string) => Text = (id) => id,
): TableBlock {
  return tableOf(
    parts.by === "volume"
      ? say`Whole parts by loose volume, cement not included`
      : say`Whole parts by dry mass, cement not included`,
    parts.materials
      // what has no part here and no share in the best blend is not used
      .filter(({ parts: count, changePct }) => count > 0 || changePct !== 0),
    [
      [say`Material`, ({ id }) => nameOf(id)],
      [numberColumn(say`Parts`), ({ parts: count }) => `${count}`],
      [numberColumn(say`Share of dry mass`, "%"), ({ sharePct }) => fixed(sharePct, 1)],
      [
        numberColumn(say`Against the best blend`, say`points`),
        ({ changePct }) => fixed(changePct, 1),
      ],
    ],
    [
      parts.message,
      parts.status === "ok" &&
        say`Whole parts differ from the target by ${fixed(parts.rmsDifferencePct, 2)} points, the best blend by ${fixed(parts.optimumRmsDifferencePct, 2)}.`,
    ],
  );
}

/** What a miscounted bucket does. */
export function bucketTable(
  changes: readonly BucketChange[],
  nameOf: (id: string) => Text = (id) => id,
): TableBlock {
  return tableOf(say`What one bucket more or less does`, changes, [
    [
      say`Miscount`,
      ({ id, change }) =>
        change > 0 ? say`one more of ${nameOf(id)}` : say`one less of ${nameOf(id)}`,
    ],
    [
      numberColumn(say`Difference from the target`, say`points`),
      ({ rmsDifferencePct }) => fixed(rmsDifferencePct, 2),
    ],
    [
      numberColumn(say`Worst size`),
      ({ worst }) => say`${plain(worst.sizeMm)} mm (${fixed(worst.differencePct, 1)} points)`,
    ],
    [say`Limits`, ({ keepsLimits }) => (keepsLimits ? say`kept` : say`broken`)],
  ]);
}
