import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { plasticityGroup } from "./plasticityGroup.js";
import { coarseGroupName, fineGroupName } from "./uscsGroupName.js";
import type { UscsClass, UscsInput } from "./uscsInput.js";

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
  const pct = (value: number) => `${formatFixed(value, 1)} %`;
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
  readonly reason: string;
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
