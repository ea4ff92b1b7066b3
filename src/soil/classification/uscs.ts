import { characteristicSizes } from "../../grading/characteristics.js";
import { type GradingCurve, passingAtSize } from "../../grading/curve.js";
import { formatFixed } from "../../quantities/format.js";
import { say, type Text } from "../../words/message.js";
import { aLine } from "../consistency/plasticityChart.js";

/** What the classification of ASTM D2487 asks for; percentages of the material under 75 mm. */
export interface UscsInput {
  /** Retained on 4.75 mm. */
  readonly gravelPct: number;
  /** Between 4.75 and 0.075 mm. */
  readonly sandPct: number;
  /** Passing 0.075 mm. */
  readonly finesPct: number;
  /** Coefficient of uniformity; asked for below 12 % fines. */
  readonly cu?: number;
  /** Coefficient of curvature. */
  readonly cc?: number;
  /** Of the part under 0.425 mm; asked for from 5 % fines. */
  readonly liquidLimitPct?: number;
  readonly plasticityIndexPct?: number;
  readonly nonPlastic?: boolean;
  /** Liquid limit after oven drying below 0.75 of that before. */
  readonly organic?: boolean;
}

export interface UscsClass {
  /** Absent where a value that decides is missing. */
  readonly symbol?: string;
  readonly groupName?: string;
  /** The decisions in their order, in plain sentences. */
  readonly path: readonly Text[];
  /** Values that were asked for and not given. */
  readonly missing: readonly Text[];
}

/**
 * Unified classification: symbol, group name and the path of decisions.
 *
 * Fines of 50 % or more: fine-grained, by the plasticity chart. Else gravel where gravel exceeds sand,
 * else sand. Below 5 % fines W (GW: Cu ≥ 4, SW: Cu ≥ 6, both 1 ≤ Cc ≤ 3) or P; 5 to 12 % dual; above
 * 12 % M or C by the fines. Source: ASTM D2487, from memory; consistent with the worked examples read.
 *
 * @returns without a symbol where a value that decides is missing; `missing` names it.
 * @throws RangeError where a percentage is not 0 to 100 or the three do not add up to 100 (within 0.5).
 *
 * @example
 * const { symbol, groupName } = classifyUscs({ gravelPct: 38, sandPct: 62, finesPct: 0, cu: 15, cc: 0.74 });
 * [symbol, groupName] // => ["SP", "poorly graded sand with gravel"]
 */
export function classifyUscs(input: UscsInput): UscsClass {
  const { gravelPct, sandPct, finesPct } = input;
  checkParts(input);
  const pct = (value: number) => say`${formatFixed(value, 1)} %`;
  const fines = plasticityGroup(input);
  const missingLimits = fines.group ? [] : [say`liquid limit and plasticity index`];

  if (finesPct >= 50) {
    const path = [say`${pct(finesPct)} fines, 50 % or more: fine-grained.`, fines.reason];
    if (!fines.group) return { path, missing: missingLimits };
    const groupName = fineGroupName(fines.group, gravelPct, sandPct);
    return { symbol: fines.group, groupName, path, missing: [] };
  }

  const main = gravelPct > sandPct ? "gravel" : "sand";
  const letter = main === "gravel" ? "G" : "S";
  const otherPct = main === "gravel" ? sandPct : gravelPct;
  const path = [
    say`${pct(finesPct)} fines, less than 50 %: coarse-grained.`,
    say`${pct(gravelPct)} gravel ${main === "gravel" ? say`exceeds` : say`does not exceed`} ${pct(sandPct)} sand: ${main}.`,
  ];
  if (finesPct > 12) {
    path.push(say`Fines above 12 %: named by the fines. ${fines.reason}`);
    if (!fines.group) return { path, missing: missingLimits };
    const symbol =
      fines.group === "CL-ML"
        ? `${letter}C-${letter}M`
        : `${letter}${fines.group.startsWith("C") ? "C" : "M"}`;
    return {
      symbol,
      groupName: coarseGroupName({ main, group: fines.group }, otherPct),
      path,
      missing: [],
    };
  }

  const graded = grading(input, main);
  path.push(graded.reason);
  if (finesPct < 5) {
    path.push(say`Fines below 5 %: clean.`);
    if (!graded.letter) return { path, missing: [say`D10, D30 and D60`] };
    const groupName = coarseGroupName({ main, grading: graded.name }, otherPct);
    return { symbol: letter + graded.letter, groupName, path, missing: [] };
  }
  path.push(say`Fines from 5 to 12 %: dual symbol. ${fines.reason}`);
  if (!graded.letter || !fines.group) {
    return { path, missing: [...(graded.letter ? [] : [say`D10, D30 and D60`]), ...missingLimits] };
  }
  const second = fines.group.startsWith("C") ? "C" : "M";
  return {
    symbol: `${letter}${graded.letter}-${letter}${second}`,
    groupName: coarseGroupName({ main, grading: graded.name, group: fines.group }, otherPct),
    path,
    missing: [],
  };
}

function checkParts({ gravelPct, sandPct, finesPct }: UscsInput): void {
  for (const [name, value] of Object.entries({ gravelPct, sandPct, finesPct })) {
    if (!(value >= 0 && value <= 100)) {
      throw new RangeError(`invalid \`${name}\`: ${value}; expected 0 to 100`);
    }
  }
  const sum = gravelPct + sandPct + finesPct;
  if (Math.abs(sum - 100) > 0.5) {
    throw new RangeError(`invalid sum of gravel, sand and fines: ${sum}; expected 100`);
  }
}

function grading(
  { cu, cc }: UscsInput,
  main: "gravel" | "sand",
): {
  readonly letter?: "W" | "P";
  readonly name?: "well-graded" | "poorly graded";
  readonly reason: Text;
} {
  const least = main === "gravel" ? 4 : 6;
  if (cu === undefined || cc === undefined) {
    return { reason: say`Well or poorly graded cannot be told without D10, D30 and D60.` };
  }
  const well = cu >= least && cc >= 1 && cc <= 3;
  const told = say`Cu ${formatFixed(cu, 2)}, Cc ${formatFixed(cc, 2)}`;
  return well
    ? {
        letter: "W",
        name: "well-graded",
        reason: say`${told}: Cu ${least} or more and Cc 1 to 3, well-graded.`,
      }
    : {
        letter: "P",
        name: "poorly graded",
        reason: say`${told}: not both Cu ${least} or more and Cc 1 to 3, poorly graded.`,
      };
}

type PlasticityGroup = "ML" | "CL" | "CL-ML" | "MH" | "CH" | "OL" | "OH";

/**
 * The fine part's place on the plasticity chart of ASTM D2487 (from memory).
 *
 * LL < 50: CL where PI > 7 on or above the A-line, CL-ML where PI is 4 to 7 on or above it, else ML.
 * LL ≥ 50: CH on or above the A-line, else MH. Organic fines OL or OH. Non-plastic fines ML.
 *
 * @returns the group with the sentence that says why; no group where a limit is missing.
 */
export function plasticityGroup({
  liquidLimitPct: liquid,
  plasticityIndexPct: index,
  nonPlastic = false,
  organic = false,
}: Pick<UscsInput, "liquidLimitPct" | "plasticityIndexPct" | "nonPlastic" | "organic">): {
  readonly group?: PlasticityGroup;
  readonly reason: Text;
} {
  if (nonPlastic) return { group: "ML", reason: say`The fines are non-plastic: silt, ML.` };
  if (liquid === undefined || index === undefined) {
    return { reason: say`The fines cannot be named without liquid limit and plasticity index.` };
  }
  const high = liquid >= 50;
  const line = aLine(liquid);
  const above = index >= line;
  const place = say`LL ${formatFixed(liquid, 1)} is ${high ? say`50 or more` : say`below 50`}; PI ${formatFixed(index, 1)} lies ${above ? say`on or above` : say`below`} the A-line (${formatFixed(line, 1)})`;
  const named = (group: PlasticityGroup, why: Text) => ({
    group,
    reason: say`${place}${why}: ${group}.`,
  });
  if (organic) return named(high ? "OH" : "OL", say` and the fines are organic`);
  if (high) return named(above ? "CH" : "MH", "");
  if (above && index > 7) return named("CL", say` and is above 7`);
  if (above && index >= 4) return named("CL-ML", say` and is 4 to 7`);
  return named("ML", index < 4 ? say` and is below 4` : "");
}

const FINE_NAMES: Readonly<Record<PlasticityGroup, string>> = {
  ML: "silt",
  CL: "lean clay",
  "CL-ML": "silty clay",
  MH: "elastic silt",
  CH: "fat clay",
  OL: "organic soil",
  OH: "organic soil",
};

/** Group name of a fine-grained soil (ASTM D2487, from memory). */
function fineGroupName(group: PlasticityGroup, gravelPct: number, sandPct: number): string {
  const name = FINE_NAMES[group];
  const coarse = gravelPct + sandPct;
  const sandier = sandPct >= gravelPct;
  if (coarse < 15) return name;
  if (coarse < 30) return `${name} with ${sandier ? "sand" : "gravel"}`;
  const lesser = sandier ? gravelPct : sandPct;
  const tail = lesser >= 15 ? ` with ${sandier ? "gravel" : "sand"}` : "";
  return `${sandier ? "sandy" : "gravelly"} ${name}${tail}`;
}

/** Group name of a coarse-grained soil (ASTM D2487, from memory). */
function coarseGroupName(
  soil: {
    readonly main: "gravel" | "sand";
    readonly grading?: "well-graded" | "poorly graded";
    readonly group?: PlasticityGroup;
  },
  otherPct: number,
): string {
  const { main, grading, group } = soil;
  const other = otherPct >= 15 ? (main === "gravel" ? "sand" : "gravel") : undefined;
  const clayey = group?.startsWith("C");
  if (grading === undefined) {
    const fines = group === "CL-ML" ? "silty, clayey" : clayey ? "clayey" : "silty";
    return `${fines} ${main}${other ? ` with ${other}` : ""}`;
  }
  if (group === undefined) return `${grading} ${main}${other ? ` with ${other}` : ""}`;
  const fines = group === "CL-ML" ? "silty clay" : clayey ? "clay" : "silt";
  return `${grading} ${main} with ${fines}${other ? ` and ${other}` : ""}`;
}

/**
 * The grading part of what the unified classification asks for, read off a curve: everything coarser
 * than 75 mm is left out and the rest is taken as 100.
 *
 * @returns `undefined` where the curve does not reach 0.075 or 4.75 mm, or does not pass 75 mm.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.075, passingPct: 20, origin: "sieve" }, { sizeMm: 4.75, passingPct: 70, origin: "sieve" }, { sizeMm: 75, passingPct: 100, origin: "sieve" }] };
 * const { gravelPct, sandPct, finesPct } = uscsFromCurve(curve);
 * [gravelPct, sandPct, finesPct] // => [30, 50, 20]
 */
export function uscsFromCurve(
  curve: GradingCurve,
): Pick<UscsInput, "gravelPct" | "sandPct" | "finesPct" | "cu" | "cc"> | undefined {
  const [fines, sand, whole] = [0.075, 4.75, 75].map((size) => passingAtSize(curve, size));
  if (fines === undefined || sand === undefined || !whole) return undefined;
  const part = (pct: number) => (100 * pct) / whole;
  const under75 = {
    points: curve.points
      .filter(({ sizeMm }) => sizeMm <= 75)
      .map((point) => ({ ...point, passingPct: Math.min(100, part(point.passingPct)) })),
  };
  const { cu, cc } = characteristicSizes(under75);
  return {
    gravelPct: part(whole - sand),
    sandPct: part(sand - fines),
    finesPct: part(fines),
    ...(cu === undefined ? {} : { cu }),
    ...(cc === undefined ? {} : { cc }),
  };
}
