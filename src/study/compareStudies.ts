import { STUDY_FILE } from "../findings/finding.js";
import type { DisplayKind } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import type { StudyResult } from "./studyResult.js";
import { compareBlends } from "./testedBlend.js";

/** An entry of `study.yaml` that differs, by the path of its value in the result's `config`. */
export interface EntryChange {
  readonly key: string;
  /** Absent where that version has no such entry. */
  readonly before?: FlatValue;
  readonly after?: FlatValue;
}

export interface SheetChange {
  readonly file: string;
  readonly change: "added" | "removed" | "changed";
}

/** A result of both versions. */
export interface ResultPair extends Omit<ComparedNumber, "value"> {
  readonly before: number | null;
  readonly after: number | null;
  /** After less before; null where one is missing, or where the money is of two currencies. */
  readonly difference: number | null;
  readonly changed: boolean;
}

/** Two versions of a study, the second against the first. */
export interface StudyComparison {
  readonly entries: readonly EntryChange[];
  /** By the checksum of the bytes. */
  readonly sheets: readonly SheetChange[];
  readonly results: readonly ResultPair[];
  /** What is to be known where one of the blends was not tested. */
  readonly states: readonly Text[];
  /** One version was computed by another version of the program. */
  readonly madeWith?: readonly [string, string];
}

/** A relative difference that another order of summing makes is none. */
const NO_DIFFERENCE = 1e-9;

/**
 * Holds two versions of a study against each other: which entries and sheets changed, and what that did to
 * the results.
 *
 * Entries are compared by the path of their value, materials by their id; sheets by the SHA-256 of their
 * bytes; results as numbers in base units. A sheet that was only saved anew with the same bytes is no change.
 *
 * Source: own arithmetic.
 */
export function compareStudies(a: StudyResult, b: StudyResult): StudyComparison {
  const sameMoney = a.config.currency === b.config.currency;
  return {
    entries: entryChanges(flatConfig(a.config), flatConfig(b.config)),
    sheets: sheetChanges(a, b),
    states: stateWords(a, b),
    results: resultPairs(comparedResults(a), comparedResults(b), sameMoney),
    madeWith: a.madeWith === b.madeWith ? undefined : [a.madeWith, b.madeWith],
  };
}

/** A blend that changed has no strength before it was tested, whatever its sheets say of another. */
function stateWords(a: StudyResult, b: StudyResult): Text[] {
  if (!a.blend || !b.blend) {
    return [
      ...(a.blend ? [] : [say`The first version has no blend.`]),
      ...(b.blend ? [] : [say`The second version has no blend.`]),
    ];
  }
  const [wasProposed, isProposed] = [a, b].map(({ testing }) => testing?.state === "proposed");
  const { close } = compareBlends(
    b.materials,
    b.materials.map(({ id }) => shareOf(b, id)),
    b.materials.map(({ id }) => shareOf(a, id)),
  );
  return [
    ...(isProposed && !close
      ? [
          say`The blend changed and was not tested: its strength, density, moisture, cement and cost are not known.`,
        ]
      : []),
    ...(isProposed && close ? [say`The second version's blend was not tested.`] : []),
    ...(wasProposed ? [say`The first version's blend was not tested.`] : []),
  ];
}

function shareOf({ blend }: StudyResult, id: string): number {
  return blend?.shares.find((share) => share.id === id)?.sharePct ?? 0;
}

function entryChanges(
  before: ReadonlyMap<string, FlatValue>,
  after: ReadonlyMap<string, FlatValue>,
): EntryChange[] {
  return keysOf(before, after).flatMap((key): EntryChange[] => {
    const [was, is] = [before.get(key), after.get(key)];
    return was === is ? [] : [{ key, before: was, after: is }];
  });
}

function keysOf(...maps: readonly ReadonlyMap<string, unknown>[]): string[] {
  return [...new Set(maps.flatMap((map) => [...map.keys()]))];
}

function sheetChanges(a: StudyResult, b: StudyResult): SheetChange[] {
  const sumOf = ({ inputs }: StudyResult) =>
    // The study file differs wherever an entry does, and comments are no change.
    new Map(
      inputs.flatMap(({ file, sha256 }) => (file === STUDY_FILE ? [] : [[file, sha256] as const])),
    );
  const [before, after] = [sumOf(a), sumOf(b)];
  return keysOf(before, after).flatMap((file): SheetChange[] => {
    if (!before.has(file)) return [{ file, change: "added" }];
    if (!after.has(file)) return [{ file, change: "removed" }];
    return before.get(file) === after.get(file) ? [] : [{ file, change: "changed" }];
  });
}

/** The results of two versions side by side. @param sameMoney whether both are of one currency. */
export function resultPairs(
  first: readonly ComparedNumber[],
  second: readonly ComparedNumber[],
  sameMoney = true,
): ResultPair[] {
  const [before, after] = [first, second].map((all) => new Map(all.map((one) => [one.key, one])));
  const keys = keysOf(before, after);
  // Shares of materials that only one version has stand with the other shares.
  const shares = keys.filter((key) => key.startsWith("share."));
  return [...new Set([...shares, ...keys])].map((key) => {
    const [was, is] = [before, after].map((all) => all.get(key)?.value ?? null);
    const { label, kind } = (after.get(key) ?? before.get(key))!;
    if (was === null || is === null || (kind === "money" && !sameMoney)) {
      return { key, label, kind, before: was, after: is, difference: null, changed: was !== is };
    }
    // Another order of summing makes no change.
    const changed = Math.abs(is - was) > NO_DIFFERENCE * Math.max(Math.abs(was), Math.abs(is));
    return { key, label, kind, before: was, after: is, difference: is - was, changed };
  });
}

/** A number of a study that two versions are held against each other by. */
export interface ComparedNumber {
  /** Stable, for programs. */
  readonly key: string;
  /** A phrase to be said; of shares, the material's own name. */
  readonly label: Text;
  /** `percent` and `money` are shown as they are, `whole` without decimals. */
  readonly kind: DisplayKind | "percent" | "money" | "whole";
  /** In base units; null where the study does not give it. */
  readonly value: number | null;
}

/** The results of a study that matter to whoever builds or reviews, in the order of the appendix. */
export function comparedResults(result: StudyResult): ComparedNumber[] {
  const { config, blend, mix, findings, testing } = result;
  // What was tested belongs to the tested blend alone.
  const tested = testing?.state === "tested" ? result : undefined;
  const { leastCement, fit, chosenCementPct } = tested?.strength ?? {};
  const { peak } = tested?.compaction ?? {};
  const isPower = fit?.model === "power";
  const used = mix?.quantities.mix;
  const warnings = findings.filter(({ severity }) => severity === "warning");
  return [
    ...config.materials.map(({ id, name }, index) =>
      line(`share.${id}`, "percent", name, blend?.shares[index].sharePct),
    ),
    line("clay", "percent", say`Clay of the blend`, blend?.fractions.clayPct),
    line("silt", "percent", say`Silt of the blend`, blend?.fractions.siltPct),
    line("fines", "percent", say`Fines of the blend`, blend?.fractions.finesPct),
    line("optimum", "percent", say`Optimum moisture`, peak?.optimumWaterPct),
    line("max-density", "density", say`Maximum dry density`, peak?.maximumDryDensityKgM3),
    line("density", "density", say`Dry density, rammed`, mix?.density.valueKgM3),
    line("least-cement", "percent", say`Least cement, not rounded`, leastCement?.cementPct),
    // Set by hand, the mix has more than the blocks need.
    line("cement", "percent", say`Cement, as specified`, mix?.recipe.cementPct ?? chosenCementPct),
    line(
      "bound",
      "stress",
      say`Strength bound at the least cement, rounded up`,
      leastCement?.boundAtBatchableMpa,
    ),
    line(
      "line",
      "stress",
      say`Fitted strength at the least cement, rounded up`,
      leastCement?.lineAtBatchableMpa,
    ),
    // The power model's scatter stands on a logarithm.
    line("scatter", "stress", say`Scatter about the curve`, isPower ? null : fit?.residualSd),
    line("made", "volume", say`Rammed volume to make`, mix?.quantities.madeVolumeM3, 1e6),
    line("cement-mass", "mass", say`Cement for the element`, used?.cement.dryMassKg, 1000),
    line("bags", "whole", say`Bags of cement, at most`, mix?.quantities.cementBags.high),
    line("cost-low", "money", say`Cost, low`, mix?.cost?.total.low),
    line("cost-high", "money", say`Cost, high`, mix?.cost?.total.high),
    line("carbon-low", "mass", say`Carbon (CO₂e), low`, mix?.carbon.total.low, 1000),
    line("carbon-high", "mass", say`Carbon (CO₂e), high`, mix?.carbon.total.high, 1000),
    line("warnings", "whole", say`Warnings of the checks`, warnings.length),
  ];
}

/** @param factor to base units. */
function line(
  key: string,
  kind: ComparedNumber["kind"],
  label: Text,
  value: number | null = null,
  factor = 1,
): ComparedNumber {
  return { key, label, kind, value: value === null ? null : value * factor };
}

/** What stands at the end of a path of an entry. */
type FlatValue = string | number | boolean | null;

/**
 * Every value of a configuration by its path, such as `materials.gravel.moisturePct`. Things with an id go
 * by it, so that another order is no change; other lists go by position, from 1.
 */
export function flatConfig(value: unknown, path = ""): Map<string, FlatValue> {
  if (value === undefined) return new Map();
  if (typeof value !== "object" || value === null) return new Map([[path, value as FlatValue]]);
  const parts: (readonly [string, unknown])[] = Array.isArray(value)
    ? value.map((part, index) => [idOf(part) ?? String(index + 1), part])
    : Object.entries(value);
  return new Map(
    parts.flatMap(([key, part]) => [...flatConfig(part, path === "" ? key : `${path}.${key}`)]),
  );
}

function idOf(part: unknown): string | undefined {
  return typeof part === "object" && part !== null && "id" in part ? String(part.id) : undefined;
}
