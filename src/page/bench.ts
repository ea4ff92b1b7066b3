import { sumSimple } from "simple-statistics";
import type { BlendLimit } from "../blend/target.js";
import type { StudyConfig, TargetConfig } from "../entries/studyConfig.js";

/** What a person may change on the bench: a mix with its aim. Plain data, so that it goes into a link. */
export interface BenchMix {
  /** In the order of the materials, percent of the dry mass of soil and aggregate; they sum to 100. */
  readonly sharesPct: readonly number[];
  /** Materials whose share stays when another is moved. */
  readonly locked: readonly boolean[];
  /** Of the dry mass of soil and aggregate; absent until one is chosen: no block tests, no content. */
  readonly cementPct?: number;
  /** At ramming, of the dry mass of all solids; absent until one is chosen. */
  readonly moisturePct?: number;
  readonly target: TargetConfig;
  readonly limits: readonly BlendLimit[];
}

/** The mix on the bench with the way it came, so that every step can be taken back. */
export interface Bench {
  readonly now: BenchMix;
  /** The study's own. */
  readonly start: BenchMix;
  /** Latest last. */
  readonly past: readonly BenchMix[];
  /** Next first. */
  readonly future: readonly BenchMix[];
  /** Put aside to compare with. */
  readonly kept?: BenchMix;
  /** What is being dragged: its moves are one step. */
  readonly moving?: string;
}

/** While the hand is still on a slider, what follows belongs to the same step. */
type Dragged = { readonly during?: boolean } & (
  | { readonly kind: "share"; readonly index: number; readonly pct: number }
  | { readonly kind: "cement" | "moisture"; readonly pct: number }
  | { readonly kind: "target"; readonly target: TargetConfig }
);

/** `settle`: what was moved has come to rest; the next move is a step of its own. */
export type BenchAction =
  | Dragged
  | { readonly kind: "shares"; readonly sharesPct: readonly number[] }
  | { readonly kind: "lock"; readonly index: number }
  | { readonly kind: "limits"; readonly limits: readonly BlendLimit[] }
  | { readonly kind: "mix"; readonly mix: BenchMix }
  | { readonly kind: "undo" | "redo" | "reset" | "keep" | "drop-kept" | "swap-kept" | "settle" };

/** Steps that can be taken back; more nobody remembers. */
const MAX_PAST = 200;

/**
 * A bench that starts with a mix.
 *
 * @example
 * const mix = startingMix({ materials: [{ id: "soil" }, { id: "sand" }] }, {});
 * newBench(mix).past // => []
 */
export function newBench(start: BenchMix): Bench {
  return { now: start, start, past: [], future: [] };
}

/**
 * The bench after an action; the same bench where the action changes nothing.
 *
 * @example
 * const mix = { sharesPct: [60, 30, 10], locked: [false, false, true], cementPct: 8, moisturePct: 10, target: { kind: "power", exponent: 0.25, topSizeMm: 20 }, limits: [] };
 * const moved = changeBench(newBench(mix), { kind: "share", index: 0, pct: 50 });
 * moved.now.sharesPct // => [50, 40, 10]
 * changeBench(moved, { kind: "undo" }).now.sharesPct // => [60, 30, 10]
 */
export function changeBench(bench: Bench, action: BenchAction): Bench {
  const { now, past, future, start, kept } = bench;
  switch (action.kind) {
    case "undo": {
      const before = past[past.length - 1];
      if (!before) return bench;
      return settled(bench, { now: before, past: past.slice(0, -1), future: [now, ...future] });
    }
    case "redo": {
      const [next, ...rest] = future;
      if (!next) return bench;
      return settled(bench, { now: next, past: [...past, now], future: rest });
    }
    case "keep":
      return settled(bench, { kept: now });
    case "drop-kept": {
      const { kept: _, ...rest } = bench;
      return rest;
    }
    case "swap-kept":
      return kept ? settled(step(bench, kept), { kept: now }) : bench;
    case "settle":
      return settled(bench, {});
    case "reset":
      return step(bench, start);
    case "mix":
      return step(bench, action.mix);
    case "shares":
      return step(bench, { ...now, sharesPct: action.sharesPct });
    case "lock": {
      const locked = now.locked.map((is, index) => (index === action.index ? !is : is));
      return step(bench, { ...now, locked });
    }
    case "limits":
      return step(bench, { ...now, limits: action.limits });
    case "share": {
      const sharesPct = withShare(now, action.index, action.pct);
      return move(bench, `share ${action.index}`, { ...now, sharesPct }, action.during);
    }
    case "cement": {
      const cementPct = Math.max(0, action.pct);
      return move(bench, "cement", { ...now, cementPct }, action.during);
    }
    case "moisture": {
      const moisturePct = Math.max(0, action.pct);
      return move(bench, "moisture", { ...now, moisturePct }, action.during);
    }
    case "target":
      return move(bench, "target", { ...now, target: action.target }, action.during);
  }
}

/** One step further; what was taken back before is gone. */
function step(bench: Bench, mix: BenchMix): Bench {
  if (isSameMix(bench.now, mix)) return settled(bench, {});
  const past = [...bench.past, bench.now].slice(-MAX_PAST);
  return settled(bench, { now: mix, past, future: [] });
}

/** A step, or more of the step that the hand is making. */
function move(bench: Bench, what: string, mix: BenchMix, during = false): Bench {
  if (bench.moving !== what) {
    const stepped = step(bench, mix);
    return during && stepped.now !== bench.now ? { ...stepped, moving: what } : stepped;
  }
  const moved = { ...bench, now: mix };
  return during ? moved : settled(moved, {});
}

function settled(bench: Bench, change: Partial<Bench>): Bench {
  const { moving: _, ...rest } = bench;
  return { ...rest, ...change };
}

/**
 * Whether two mixes are the same in all that a person may change.
 *
 * @example
 * const mix = startingMix({ materials: [{ id: "soil" }, { id: "sand" }] }, {});
 * isSameMix(mix, { ...mix, sharesPct: [50, 50] }) // => true
 * isSameMix(mix, { ...mix, sharesPct: [51, 49] }) // => false
 */
export function isSameMix(one: BenchMix, other: BenchMix): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

/** Shares are moved in tenths of a percent: finer than anything that is weighed on site. */
const STEPS_PER_PCT = 10;

/**
 * Shares with one of them set anew. The unlocked others give or take in proportion to what they have (alike
 * where they have none), rounded to tenths of a percent; the locked ones stay; the sum is 100.
 *
 * @returns the same shares where no other material may move.
 * Source: own arithmetic.
 *
 * @example
 * const mix = { sharesPct: [60, 30, 10], locked: [false, false, false] };
 * withShare(mix, 0, 70) // => [70, 22.5, 7.5]
 * withShare({ ...mix, locked: [false, true, true] }, 0, 70) // => [60, 30, 10]
 */
export function withShare(
  { sharesPct, locked }: Pick<BenchMix, "sharesPct" | "locked">,
  index: number,
  pct: number,
): readonly number[] {
  const others = sharesPct.map((_, at) => at).filter((at) => at !== index && !locked[at]);
  if (others.length === 0 || !Number.isFinite(pct)) return sharesPct;
  const held = sumSimple(sharesPct.filter((_, at) => at !== index && locked[at]));
  const room = Math.max(0, 100 - held);
  const wanted = Math.min(Math.max(pct, 0), room);
  const had = sumSimple(others.map((at) => sharesPct[at]));
  const left = room - wanted;
  const shares = [...sharesPct];
  shares[index] = wanted;
  let given = 0;
  others.forEach((at, place) => {
    const exact = had > 0 ? (left * sharesPct[at]) / had : left / others.length;
    const last = place === others.length - 1;
    // The last takes what rounding leaves, so that the sum stays.
    const share = last ? left - given : Math.min(left - given, tenths(exact));
    shares[at] = Math.max(0, clean(share));
    given += shares[at];
  });
  return shares;
}

function tenths(value: number): number {
  return Math.round(value * STEPS_PER_PCT) / STEPS_PER_PCT;
}

/** Without the last binary digits that a subtraction leaves. */
function clean(value: number): number {
  return Number(value.toPrecision(12));
}

/** Aim of a study that states none; exponent from memory, see `powerTarget`. */
const FALLBACK_TARGET = { kind: "power", exponent: 0.25, topSizeMm: 20 } as const;

/**
 * The mix that a bench starts with: the study's own as far as it has one, else equal shares and a power curve of
 * exponent 0.25 up to 20 mm (from memory, see `powerTarget`).
 *
 * @example
 * const materials = [{ id: "soil" }, { id: "sand" }];
 * startingMix({ materials }, {}).sharesPct // => [50, 50]
 * startingMix({ materials }, { sharesPct: [70, 30], cementPct: 6 }).cementPct // => 6
 */
export function startingMix(
  config: Pick<StudyConfig, "materials"> & Partial<Pick<StudyConfig, "target" | "limits">>,
  known: Pick<Partial<BenchMix>, "sharesPct" | "cementPct" | "moisturePct">,
): BenchMix {
  const { materials, target = FALLBACK_TARGET, limits = [] } = config;
  const { sharesPct = materials.map(() => 100 / materials.length), ...tested } = known;
  return { sharesPct, locked: materials.map(() => false), ...tested, target, limits };
}
