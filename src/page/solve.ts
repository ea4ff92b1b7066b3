import { checkBlend } from "../blend/check.js";
import type { BlendConflict } from "../blend/description.js";
import { designBlend } from "../blend/design.js";
import { practicalParts } from "../blend/parts.js";
import { hasErrors } from "../findings/finding.js";
import { formatFixed } from "../quantities/format.js";
import { joinTexts, say, type Text } from "../words/message.js";
import type { BenchMix } from "./bench.js";
import { benchInput, type OpenStudy } from "./tune.js";

/** What a person may ask the bench to find. */
export type Wish = "target" | "most-site-soil" | "least-cost" | "whole-buckets";

/** Shares that were found, or why there are none. */
export interface Solved {
  /** In the order of the materials; absent where nothing was found. */
  readonly sharesPct?: readonly number[];
  /** What was found, or why nothing, in whole sentences. */
  readonly messages: readonly Text[];
}

/**
 * Finds shares with the solvers of the study: nearest to the target on the bench, inside the band of the
 * guidance with most soil of the site or at least cost, or in whole buckets. Locked shares stay as they are,
 * except for whole buckets, which can seldom hold an exact share.
 */
export function solveBench(open: OpenStudy, mix: BenchMix, wish: Wish): Solved {
  const { result } = open;
  const banded = wish === "most-site-soil" || wish === "least-cost";
  const base = benchInput(
    open,
    banded ? { ...mix, target: { kind: "band", objective: wish } } : mix,
  );
  const locks = wish !== "whole-buckets";
  const materials = base.materials.map((material, index) =>
    locks && mix.locked[index]
      ? { ...material, minSharePct: mix.sharesPct[index], maxSharePct: mix.sharesPct[index] }
      : material,
  );
  if (base.target.kind === "band" && base.target.points.length === 0) {
    return {
      messages: [
        say`There is no band to keep inside: the study names no envelope, and no recommendation that limits passing.`,
      ],
    };
  }
  const input = { ...base, materials };
  const findings = checkBlend(input);
  if (hasErrors(findings)) {
    const errors = findings.filter(({ severity }) => severity === "error");
    return { messages: errors.map(({ message }) => message) };
  }
  const design = designBlend(input);
  if (design.status !== "ok") {
    return { messages: [design.message, ...conflictWords(design.conflict)] };
  }
  if (wish !== "whole-buckets") {
    const sharesPct = design.shares.map(({ sharePct }) => sharePct);
    return { sharesPct, messages: [foundWords(result, sharesPct)] };
  }
  const bought = result.materials.map(({ id }) =>
    result.config.materials.find((material) => material.id === id),
  );
  const untold = bought.filter((material) => material?.looseBulkDensityKgM3 === undefined);
  if (untold.length > 0) {
    return {
      messages: [
        say`Whole buckets need a loose bulk density of each material: ${untold.map((material) => material?.name).join(", ")}.`,
      ],
    };
  }
  const parts = practicalParts(input, design, {
    looseDryDensityKgM3: bought.map((material) => material!.looseBulkDensityKgM3!),
    bulkingPct: bought.map((material) => material!.bulkingPct ?? 0),
  });
  if (parts.status !== "ok") return { messages: [parts.message] };
  return {
    sharesPct: parts.materials.map(({ sharePct }) => sharePct),
    messages: [
      parts.message,
      say`Buckets: ${parts.materials.map(({ parts: count }) => count).join(" : ")}.`,
      ...(mix.locked.some(Boolean)
        ? [say`Locks were set aside: whole buckets can seldom hold an exact share.`]
        : []),
    ],
  };
}

/** The shares that were found, by name; those that are none are left out. */
function foundWords({ materials }: OpenStudy["result"], sharesPct: readonly number[]): Text {
  const named = materials.flatMap(({ name }, index) =>
    sharesPct[index] > 0 ? [say`${name} ${formatFixed(sharesPct[index], 1)} %`] : [],
  );
  return say`Found: ${joinTexts(named)}.`;
}

function conflictWords(conflict: BlendConflict | null): Text[] {
  return (conflict?.together ?? []).map((limit) => say`Conflicting limit: ${limit}.`);
}
