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
    results: pairs(comparedResults(a), comparedResults(b), sameMoney),
    ...(a.madeWith === b.madeWith ? {} : { madeWith: [a.madeWith, b.madeWith] as const }),
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
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((key): EntryChange[] => {
    const [was, is] = [before.get(key), after.get(key)];
    if (was === is) return [];
    return [
      {
        key,
        ...(was === undefined ? {} : { before: was }),
        ...(is === undefined ? {} : { after: is }),
      },
    ];
  });
}

function sheetChanges(a: StudyResult, b: StudyResult): SheetChange[] {
  const sumOf = ({ inputs }: StudyResult) =>
    // The study file differs wherever an entry does, and comments are no change.
    new Map(
      inputs.flatMap(({ file, sha256 }) => (file === STUDY_FILE ? [] : [[file, sha256] as const])),
    );
  const [before, after] = [sumOf(a), sumOf(b)];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((file): SheetChange[] => {
    if (!before.has(file)) return [{ file, change: "added" }];
    if (!after.has(file)) return [{ file, change: "removed" }];
    return before.get(file) === after.get(file) ? [] : [{ file, change: "changed" }];
  });
}

function pairs(
  first: readonly ComparedNumber[],
  second: readonly ComparedNumber[],
  sameMoney: boolean,
): ResultPair[] {
  const after = new Map(second.map((one) => [one.key, one]));
  const keys = [...new Set([...first, ...second].map(({ key }) => key))];
  // Shares of materials that only one version has stand with the other shares.
  const shares = keys.filter((key) => key.startsWith("share."));
  const before = new Map(first.map((one) => [one.key, one]));
  return [...shares, ...keys.filter((key) => !key.startsWith("share."))].map((key) => {
    const was = before.get(key)?.value ?? null;
    const is = after.get(key)?.value ?? null;
    const { label, kind } = (after.get(key) ?? before.get(key))!;
    const comparable = was !== null && is !== null && (kind !== "money" || sameMoney);
    const difference = comparable ? is - was : null;
    const changed = difference === null ? was !== is : isDifferent(was!, is!);
    return { key, label, kind, before: was, after: is, difference, changed };
  });
}

/** Whether two results differ by more than another order of summing would. */
export function isDifferent(a: number, b: number): boolean {
  return Math.abs(a - b) > NO_DIFFERENCE * Math.max(Math.abs(a), Math.abs(b));
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
  const percent = (key: string, label: Text, value: number | null | undefined) =>
    line(key, label, "percent", value);
  return [
    ...config.materials.map(({ id, name }, index) =>
      percent(`share.${id}`, name, blend?.shares[index].sharePct),
    ),
    percent("clay", say`Clay of the blend`, blend?.fractions.clayPct),
    percent("silt", say`Silt of the blend`, blend?.fractions.siltPct),
    percent("fines", say`Fines of the blend`, blend?.fractions.finesPct),
    percent("optimum", say`Optimum moisture`, peak?.optimumWaterPct),
    line("max-density", say`Maximum dry density`, "density", peak?.maximumDryDensityKgM3),
    line("density", say`Dry density, rammed`, "density", mix?.density.valueKgM3),
    percent("least-cement", say`Least cement, not rounded`, leastCement?.cementPct),
    // Set by hand, the mix has more than the blocks need.
    percent("cement", say`Cement, as specified`, mix?.recipe.cementPct ?? chosenCementPct),
    line(
      "bound",
      say`Strength bound at the least cement, rounded up`,
      "stress",
      leastCement?.boundAtBatchableMpa,
    ),
    line(
      "line",
      say`Fitted strength at the least cement, rounded up`,
      "stress",
      leastCement?.lineAtBatchableMpa,
    ),
    line(
      "scatter",
      say`Scatter about the curve`,
      "stress",
      // The power model's scatter stands on a logarithm.
      fit?.model === "power" ? undefined : fit?.residualSd,
    ),
    line("made", say`Rammed volume to make`, "volume", times(mix?.quantities.madeVolumeM3, 1e6)),
    line(
      "cement-mass",
      say`Cement for the element`,
      "mass",
      times(mix?.quantities.mix.cement.dryMassKg, 1000),
    ),
    line("bags", say`Bags of cement, at most`, "whole", mix?.quantities.cementBags.high),
    line("cost-low", say`Cost, low`, "money", mix?.cost?.total.low),
    line("cost-high", say`Cost, high`, "money", mix?.cost?.total.high),
    line("carbon-low", say`Carbon (CO₂e), low`, "mass", times(mix?.carbon.total.low, 1000)),
    line("carbon-high", say`Carbon (CO₂e), high`, "mass", times(mix?.carbon.total.high, 1000)),
    line("warnings", say`Warnings of the checks`, "whole", countOf("warning")),
  ];

  function countOf(severity: string): number {
    return findings.filter((finding) => finding.severity === severity).length;
  }
}

function line(
  key: string,
  label: Text,
  kind: ComparedNumber["kind"],
  value: number | null | undefined,
): ComparedNumber {
  return { key, label, kind, value: value ?? null };
}

function times(value: number | undefined, factor: number): number | undefined {
  return value === undefined ? undefined : value * factor;
}

/** What stands at the end of a path of an entry. */
type FlatValue = string | number | boolean | null;

/**
 * Every value of a configuration by its path, such as `materials.gravel.moisturePct`. Things with an id go
 * by it, so that another order is no change; other lists go by position, from 1.
 */
export function flatConfig(value: unknown, path = ""): Map<string, FlatValue> {
  const flat = new Map<string, FlatValue>();
  const below = (key: string, part: unknown) => {
    for (const [at, end] of flatConfig(part, path === "" ? key : `${path}.${key}`)) {
      flat.set(at, end);
    }
  };
  if (value === undefined) return flat;
  if (Array.isArray(value)) {
    value.forEach((part, index) => {
      below(idOf(part) ?? String(index + 1), part);
    });
  } else if (typeof value === "object" && value !== null) {
    for (const [key, part] of Object.entries(value)) below(key, part);
  } else flat.set(path, value as FlatValue);
  return flat;
}

function idOf(part: unknown): string | undefined {
  return typeof part === "object" && part !== null && "id" in part ? String(part.id) : undefined;
}
