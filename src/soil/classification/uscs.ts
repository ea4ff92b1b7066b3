import { formatFixed } from "../../quantities/format.js";
import { type Sentence, say, soilNamed, type Text } from "../../words/message.js";
import { aLine } from "../consistency/plasticityChart.js";
import {
  type CurveLimits,
  checkSizeShares,
  NO_LIMITS,
  pct,
  type SizeClass,
  type SizeClassInput,
} from "./sizeClass.js";

/**
 * What the classification of ASTM D2487 asks for; percentages of the material under 75 mm: gravel is retained
 * on 4.75 mm, fines pass 0.075 mm. Cu and Cc are asked for below 12 % fines, limits from 5 %.
 */
export type UscsInput = Omit<SizeClassInput, "clayPct">;

export interface UscsClass extends Pick<SizeClass, "symbol" | "path" | "missing"> {
  readonly groupName?: string;
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
  checkSizeShares(input);
  return input.finesPct >= 50 ? fineSoil(input) : coarseSoil(input);
}

function fineSoil(input: UscsInput): UscsClass {
  const { group, reason } = plasticityGroup(input);
  const path = [say`${pct(input.finesPct)} fines, 50 % or more: fine-grained.`, reason];
  if (!group) return { path, missing: [NO_LIMITS] };
  const groupName = fineGroupName(group, input.gravelPct, input.sandPct);
  return { symbol: group, groupName, path, missing: [] };
}

function coarseSoil(input: UscsInput): UscsClass {
  const { gravelPct, sandPct, finesPct } = input;
  const { group, reason } = plasticityGroup(input);
  const gravel = gravelPct > sandPct;
  const main = gravel ? "gravel" : "sand";
  const letter = gravel ? "G" : "S";
  const second = group?.startsWith("C") ? "C" : "M";
  const path = [
    say`${pct(finesPct)} fines, less than 50 %: coarse-grained.`,
    say`${pct(gravelPct)} gravel ${gravel ? say`exceeds` : say`does not exceed`} ${pct(sandPct)} sand: ${soilNamed(main)}.`,
  ];
  const missing: Text[] = [];
  const result = (symbol: string, parts: Omit<CoarseSoil, "main" | "otherPct">): UscsClass => {
    if (missing.length > 0) return { path, missing };
    const otherPct = gravel ? sandPct : gravelPct;
    return { symbol, groupName: coarseGroupName({ main, otherPct, ...parts }), path, missing };
  };
  if (finesPct > 12) {
    path.push(say`Fines above 12 %: named by the fines. ${reason}`);
    if (!group) missing.push(NO_LIMITS);
    return result(group === "CL-ML" ? `${letter}C-${letter}M` : letter + second, { group });
  }
  const graded = grading(input, main);
  path.push(graded.reason);
  if (!graded.letter) missing.push(say`D10, D30 and D60`);
  if (finesPct < 5) {
    path.push(say`Fines below 5 %: clean.`);
    return result(`${letter}${graded.letter}`, { grading: graded.name });
  }
  path.push(say`Fines from 5 to 12 %: dual symbol. ${reason}`);
  if (!group) missing.push(NO_LIMITS);
  return result(`${letter}${graded.letter}-${letter}${second}`, { grading: graded.name, group });
}

function grading(
  { cu, cc }: UscsInput,
  main: "gravel" | "sand",
): {
  readonly letter?: "W" | "P";
  readonly name?: "well-graded" | "poorly graded";
  readonly reason: Sentence;
} {
  if (cu === undefined || cc === undefined) {
    return {
      reason: say`Whether the soil is well or poorly graded cannot be determined without D10, D30 and D60.`,
    };
  }
  const minCu = main === "gravel" ? 4 : 6;
  const coefficients = say`Cu ${formatFixed(cu, 2)}, Cc ${formatFixed(cc, 2)}`;
  if (cu >= minCu && cc >= 1 && cc <= 3) {
    const reason = say`${coefficients}: Cu ${minCu} or more and Cc 1 to 3, well-graded.`;
    return { letter: "W", name: "well-graded", reason };
  }
  const reason = say`${coefficients}: not both Cu ${minCu} or more and Cc 1 to 3, poorly graded.`;
  return { letter: "P", name: "poorly graded", reason };
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
}: CurveLimits & Pick<UscsInput, "organic">): {
  readonly group?: PlasticityGroup;
  readonly reason: Sentence;
} {
  if (nonPlastic) return { group: "ML", reason: say`The fines are non-plastic: silt, ML.` };
  if (liquid === undefined || index === undefined) {
    return { reason: say`The fines cannot be named without liquid limit and plasticity index.` };
  }
  const line = aLine(liquid);
  const above = index >= line;
  const place = say`LL ${formatFixed(liquid, 1)} is ${liquid >= 50 ? say`50 or more` : say`below 50`}; PI ${formatFixed(index, 1)} lies ${above ? say`on or above` : say`below`} the A-line (${formatFixed(line, 1)})`;
  const { group, why } = chartGroup(liquid, index, above, organic);
  return { group, reason: say`${place}${why}: ${group}.` };
}

function chartGroup(
  liquid: number,
  index: number,
  above: boolean,
  organic: boolean,
): { readonly group: PlasticityGroup; readonly why: Text } {
  const high = liquid >= 50;
  if (organic) return { group: high ? "OH" : "OL", why: say` and the fines are organic` };
  if (high) return { group: above ? "CH" : "MH", why: "" };
  if (above && index > 7) return { group: "CL", why: say` and is above 7` };
  if (above && index >= 4) return { group: "CL-ML", why: say` and is 4 to 7` };
  return { group: "ML", why: index < 4 ? say` and is below 4` : "" };
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

interface CoarseSoil {
  readonly main: "gravel" | "sand";
  readonly grading?: "well-graded" | "poorly graded";
  readonly group?: PlasticityGroup;
  /** Sand in a gravel, gravel in a sand. */
  readonly otherPct: number;
}

/** Group name of a coarse-grained soil (ASTM D2487, from memory). */
function coarseGroupName({ main, grading, group, otherPct }: CoarseSoil): string {
  const other = main === "gravel" ? "sand" : "gravel";
  const hasOther = otherPct >= 15;
  const clayey = group?.startsWith("C") ?? false;
  if (grading !== undefined && group !== undefined) {
    let fines = clayey ? "clay" : "silt";
    if (group === "CL-ML") fines = "silty clay";
    return `${grading} ${main} with ${fines}${hasOther ? ` and ${other}` : ""}`;
  }
  let adjective: string = grading ?? (clayey ? "clayey" : "silty");
  if (grading === undefined && group === "CL-ML") adjective = "silty, clayey";
  return `${adjective} ${main}${hasOther ? ` with ${other}` : ""}`;
}
