import type { BlendLimit, FixedOrRange } from "../blend/target.js";
import type { TargetConfig } from "../entries/studyConfig.js";
import { type Bench, type BenchMix, changeBench, newBench } from "./bench.js";

/**
 * A mix as the end of an address, so that it can be sent as a link and outlives a reload. It holds numbers
 * only, no text of the study.
 *
 * @example
 * const mix = { sharesPct: [60, 40], locked: [false, true], cementPct: 8, target: { kind: "power", exponent: 0.25, topSizeMm: 20 }, limits: [] };
 * mixOfLink(linkOf(mix), 2) // => { sharesPct: [60, 40], locked: [false, true], cementPct: 8, target: { kind: "power", exponent: 0.25, topSizeMm: 20 }, limits: [] }
 * mixOfLink(linkOf(mix), 3) // => undefined
 */
export function linkOf(mix: BenchMix): string {
  const { sharesPct, locked, cementPct, moisturePct, target, limits } = mix;
  return encodeURIComponent(
    JSON.stringify([
      sharesPct,
      locked.map(Number),
      cementPct ?? null,
      moisturePct ?? null,
      target,
      limits,
    ]),
  );
}

/** The most that a link may be long: no mix needs more. */
const MAX_LINK = 4000;

/**
 * The mix of a link; undefined where it is none, or of another number of materials.
 *
 * @param materials how many the study on the bench has.
 *
 * @example
 * mixOfLink("half a link", 2) // => undefined
 */
export function mixOfLink(link: string, materials: number): BenchMix | undefined {
  if (link.length > MAX_LINK) return undefined;
  let read: unknown;
  try {
    read = JSON.parse(decodeURIComponent(link));
  } catch {
    return undefined;
  }
  if (!Array.isArray(read) || read.length !== 6) return undefined;
  const [shares, locks, cement, moisture, target, limits] = read as unknown[];
  if (!isNumbers(shares, 0, 100) || shares.length !== materials) return undefined;
  if (!isNumbers(locks, 0, 1) || locks.length !== materials) return undefined;
  const total = shares.reduce((sum, share) => sum + share, 0);
  if (Math.abs(total - 100) > 1e-6) return undefined;
  const aim = targetOf(target);
  const conditions = limitsOf(limits);
  if (!aim || !conditions || !isPercentOrNone(cement) || !isPercentOrNone(moisture)) {
    return undefined;
  }
  return {
    sharesPct: shares,
    locked: locks.map(Boolean),
    ...(cement === null ? {} : { cementPct: cement }),
    ...(moisture === null ? {} : { moisturePct: moisture }),
    target: aim,
    limits: conditions,
  };
}

/** The steps of a bench with the mix kept aside, each as in a link: what a browser keeps over a reload. */
export interface BenchTrace {
  readonly past: readonly string[];
  readonly future: readonly string[];
  readonly kept?: string;
}

/**
 * The way a bench came, as plain data.
 *
 * @example
 * const mix = startingMix({ materials: [{ id: "soil" }, { id: "sand" }] }, {});
 * traceOf(newBench(mix)) // => { past: [], future: [] }
 */
export function traceOf({ past, future, kept }: Bench): BenchTrace {
  return {
    past: past.map(linkOf),
    future: future.map(linkOf),
    ...(kept ? { kept: linkOf(kept) } : {}),
  };
}

/**
 * The bench that starts with a mix as it was left: with the mix of the link, the steps to it and the mix kept
 * aside. Without a trace, or with one that is none of this study, the link is a step from the start; without a
 * sound link nothing is taken.
 *
 * @example
 * const start = startingMix({ materials: [{ id: "soil" }, { id: "sand" }] }, {});
 * const bench = changeBench(newBench(start), { kind: "share", index: 0, pct: 60 });
 * benchOfLink(start, linkOf(bench.now), traceOf(bench)) // => bench
 */
export function benchOfLink(start: BenchMix, link: string | undefined, trace?: BenchTrace): Bench {
  const read = (each: string) => mixOfLink(each, start.sharesPct.length);
  const fresh = newBench(start);
  const now = link === undefined ? undefined : read(link);
  if (!now) return fresh;
  const [past, future] = [trace?.past ?? [], trace?.future ?? []].map((side) => side.map(read));
  const kept = trace?.kept === undefined ? undefined : read(trace.kept);
  const sound = [...past, ...future].every((mix) => mix !== undefined);
  if (!trace || !sound) return changeBench(fresh, { kind: "mix", mix: now });
  return {
    ...fresh,
    now,
    past: past.filter((mix) => mix !== undefined),
    future: future.filter((mix) => mix !== undefined),
    ...(kept ? { kept } : {}),
  };
}

/** Whether data that came from outside are the trace of a bench; its links are read by `benchOfLink`. */
export function isTrace(value: unknown): value is BenchTrace {
  const { past, future, kept } = (value ?? {}) as Record<string, unknown>;
  const areLinks = (side: unknown) =>
    Array.isArray(side) && side.every((link) => typeof link === "string");
  return areLinks(past) && areLinks(future) && (kept === undefined || typeof kept === "string");
}

function isNumber(value: unknown, low: number, high: number): value is number {
  return typeof value === "number" && value >= low && value <= high;
}

function isNumbers(value: unknown, low: number, high: number): value is number[] {
  return Array.isArray(value) && value.every((each) => isNumber(each, low, high));
}

function isPercentOrNone(value: unknown): value is number | null {
  return value === null || isNumber(value, 0, 100);
}

function fixedOrRange(value: unknown, low: number, high: number): FixedOrRange | undefined {
  if (isNumber(value, low, high)) return value;
  const { min, max } = (value ?? {}) as Record<string, unknown>;
  if (!isNumber(min, low, high) || !isNumber(max, low, high)) return undefined;
  return min < max ? { min, max } : undefined;
}

const OBJECTIVES = ["most-site-soil", "least-cost", "nearest-middle"] as const;

function targetOf(value: unknown): TargetConfig | undefined {
  const { kind, exponent, topSizeMm, objective } = (value ?? {}) as Record<string, unknown>;
  if (kind === "power") {
    const [power, top] = [fixedOrRange(exponent, 0.05, 1), fixedOrRange(topSizeMm, 1, 100)];
    if (power === undefined || top === undefined) return undefined;
    return { kind, exponent: power, topSizeMm: top };
  }
  const known = OBJECTIVES.find((each) => each === objective);
  return kind === "band" && known ? { kind, objective: known } : undefined;
}

const PERCENTS = ["minPct", "maxPct"];
const FRACTION = [...PERCENTS, "clayMm", "siltMm"];

/** Limits with the number that each kind must hold, and those that it may. */
const NUMBERS: Readonly<
  Record<BlendLimit["kind"], { readonly must?: string; readonly may?: readonly string[] }>
> = {
  passing: { must: "sizeMm", may: PERCENTS },
  clay: { may: FRACTION },
  silt: { may: FRACTION },
  fines: { may: FRACTION },
  "plasticity-index": { may: PERCENTS },
  "linear-shrinkage": { may: PERCENTS },
  "top-size": { must: "sizeMm" },
  "site-soil": { may: PERCENTS },
  cost: { must: "maxPerT" },
  carbon: { must: "maxKgPerT" },
};

function limitsOf(value: unknown): BlendLimit[] | undefined {
  if (!Array.isArray(value) || value.length > 30) return undefined;
  const limits: BlendLimit[] = [];
  for (const each of value as unknown[]) {
    const { kind, ...numbers } = (each ?? {}) as Record<string, unknown>;
    if (typeof kind !== "string" || !Object.hasOwn(NUMBERS, kind)) return undefined;
    const known = kind as BlendLimit["kind"];
    const { must, may = [] } = NUMBERS[known];
    const sound = Object.entries(numbers).every(
      ([name, number]) => (name === must || may.includes(name)) && isNumber(number, 0, 1e6),
    );
    if (!sound || (must !== undefined && numbers[must] === undefined)) return undefined;
    limits.push({ kind: known, ...numbers } as BlendLimit);
  }
  return limits;
}
