import { checkThat } from "../../quantities/checkNumber.js";
import { formatFixed } from "../../quantities/format.js";
import { type Sentence, say, type Text } from "../../words/message.js";
import type { CurveLimits } from "./sizeClass.js";

export interface AashtoInput extends CurveLimits {
  readonly passing2Pct: number;
  readonly passing0425Pct: number;
  readonly passing0075Pct: number;
}

export interface AashtoClass {
  /** For example `A-7-6`; absent where the limits are missing. */
  readonly group?: string;
  /** Whole number, present form of M 145. */
  readonly groupIndex?: number;
  /** The older capped form, whole number, because it is still in print; never part of `label`. */
  readonly cappedGroupIndex?: number;
  /** Group and index as written, for example `A-4(3)`. */
  readonly label?: string;
  readonly path: readonly Text[];
}

/**
 * Classification for road subgrades: group, group index and the path of decisions.
 *
 * The groups are tried from the left of the table (A-1-a, A-1-b, A-3, A-2-4 …) and the first that fits
 * is taken. Values are rounded to whole numbers first, as the table is written in them.
 * Source: AASHTO M 145, table and index formula as reproduced (liquisearch.com and a worked solution,
 * read); rounding first, from memory.
 *
 * @returns without a group where the limits are missing.
 * @throws RangeError where a percentage is not 0 to 100 or the passings fall with size.
 *
 * @example
 * classifyAashto({ passing2Pct: 100, passing0425Pct: 80, passing0075Pct: 58, liquidLimitPct: 30, plasticityIndexPct: 10 }).label // => "A-4(3)"
 */
export function classifyAashto(input: AashtoInput): AashtoClass {
  checkPassings(input);
  const { passing2Pct, passing0425Pct, passing0075Pct, nonPlastic = false } = input;
  const { liquidLimitPct, plasticityIndexPct } = input;
  const [f10, f40, f200] = [passing2Pct, passing0425Pct, passing0075Pct].map(Math.round);
  const path = [say`Passing 2 mm ${f10} %, 0.425 mm ${f40} %, 0.075 mm ${f200} %.`];
  const known = liquidLimitPct !== undefined && plasticityIndexPct !== undefined;
  if (!nonPlastic && !known) {
    path.push(say`Without liquid limit and plasticity index the group cannot be determined.`);
    return { path };
  }
  // A non-plastic soil has no limits; below every bound it takes the silty groups.
  const liquid = nonPlastic ? 0 : Math.round(liquidLimitPct ?? 0);
  const index = nonPlastic ? 0 : Math.round(plasticityIndexPct ?? 0);
  path.push(nonPlastic ? say`Non-plastic.` : say`LL ${liquid}, PI ${index}.`);
  const values = { f10, f40, f200, liquid, index, nonPlastic };
  const { group, reason } = aashtoGroup(values);
  path.push(reason);
  const found = indices(group, values);
  path.push(...found.reasons);
  return {
    group,
    groupIndex: found.present,
    cappedGroupIndex: found.capped,
    label: `${group}(${found.present})`,
    path,
  };
}

function checkPassings({ passing2Pct, passing0425Pct, passing0075Pct }: AashtoInput): void {
  for (const [name, value] of Object.entries({ passing2Pct, passing0425Pct, passing0075Pct })) {
    checkThat(value >= 0 && value <= 100, { [name]: value }, "0 to 100");
  }
  if (passing0425Pct > passing2Pct || passing0075Pct > passing0425Pct) {
    throw new RangeError(
      `invalid \`passing0425Pct\`: ${passing0425Pct}; expected between \`passing0075Pct\` ${passing0075Pct} and \`passing2Pct\` ${passing2Pct}`,
    );
  }
}

/** Whole numbers, as the table is written in them. */
interface TableValues {
  /** Passing No. 10, No. 40 and No. 200. */
  readonly f10: number;
  readonly f40: number;
  readonly f200: number;
  readonly liquid: number;
  readonly index: number;
  readonly nonPlastic: boolean;
}

function aashtoGroup(values: TableValues): { readonly group: string; readonly reason: Sentence } {
  const { f200, liquid, index } = values;
  const clean = cleanGroup(values);
  if (clean) {
    return {
      group: clean,
      reason: say`First group from the left whose limits are all met: ${clean}.`,
    };
  }
  const silty = index <= 10;
  const low = liquid <= 40;
  const plasticity = say`LL ${low ? say`up to 40` : say`41 or more`} and PI ${silty ? say`up to 10` : say`11 or more`}`;
  const column = (low ? 4 : 5) + (silty ? 0 : 2);
  if (f200 <= 35) {
    const group = `A-2-${column}`;
    return { group, reason: say`Not A-1 or A-3, at most 35 % fines, ${plasticity}: ${group}.` };
  }
  if (column < 7) {
    const group = `A-${column}`;
    return { group, reason: say`36 % fines or more, ${plasticity}: ${group}.` };
  }
  const within = index <= liquid - 30;
  const group = within ? "A-7-5" : "A-7-6";
  const side = within ? say`up to` : say`above`;
  return { group, reason: say`36 % fines or more, ${plasticity}, PI ${side} LL − 30: ${group}.` };
}

/** The groups that limits on their passings alone set apart; silty and clayey ones follow. */
function cleanGroup({ f10, f40, f200, index, nonPlastic }: TableValues): string | undefined {
  if (f10 <= 50 && f40 <= 30 && f200 <= 15 && index <= 6) return "A-1-a";
  if (f40 <= 50 && f200 <= 25 && index <= 6) return "A-1-b";
  if (f40 >= 51 && f200 <= 10 && nonPlastic) return "A-3";
  return undefined;
}

function indices(
  group: string,
  { f200, liquid, index, nonPlastic }: TableValues,
): { readonly present: number; readonly capped: number; readonly reasons: readonly Sentence[] } {
  if (nonPlastic || /^A-(1|3|2-4|2-5)/.test(group)) {
    return { present: 0, capped: 0, reasons: [say`Group index 0 by rule.`] };
  }
  const values = { passing0075Pct: f200, liquidLimitPct: liquid, plasticityIndexPct: index };
  const raw = groupIndex(values, group.startsWith("A-2") ? "plasticityOnly" : "present");
  const present = Math.round(raw);
  const capped = Math.round(groupIndex(values, "capped"));
  const reasons = [
    say`Group index ${formatFixed(raw, 2)}, rounded ${present}, by the present formula without caps.`,
  ];
  if (capped !== present) {
    reasons.push(say`The older form, still in print, caps its terms and would give ${capped}.`);
  }
  return { present, capped, reasons };
}

export interface GroupIndexInput {
  readonly passing0075Pct: number;
  readonly liquidLimitPct: number;
  readonly plasticityIndexPct: number;
}

/**
 * Group index of AASHTO M 145, not yet rounded and not below 0.
 *
 * Formula: (F − 35)(0.2 + 0.005 (LL − 40)) + 0.01 (F − 15)(PI − 10), the present form (read, worked
 * solution); `plasticityOnly`, for A-2-6 and A-2-7, the second term alone. The older `capped` form holds
 * F − 35 and F − 15 within 0 to 40, LL − 40 and PI − 10 within 0 to 20; it still is in print and gives
 * other values.
 *
 * @param form default `present`.
 *
 * @example
 * groupIndex({ passing0075Pct: 60, liquidLimitPct: 65, plasticityIndexPct: 25 }) // => 14.875
 * groupIndex({ passing0075Pct: 60, liquidLimitPct: 65, plasticityIndexPct: 25 }, "capped") // => 13.5
 */
export function groupIndex(
  { passing0075Pct: fines, liquidLimitPct: liquid, plasticityIndexPct: index }: GroupIndexInput,
  form: "present" | "plasticityOnly" | "capped" = "present",
): number {
  if (form === "capped") {
    const held = (value: number, max: number) => Math.min(max, Math.max(0, value));
    const [a, b] = [held(fines - 35, 40), held(fines - 15, 40)];
    const [c, d] = [held(liquid - 40, 20), held(index - 10, 20)];
    return 0.2 * a + 0.005 * a * c + 0.01 * b * d;
  }
  const byPlasticity = 0.01 * (fines - 15) * (index - 10);
  const byLiquid = (fines - 35) * (0.2 + 0.005 * (liquid - 40));
  return Math.max(0, form === "plasticityOnly" ? byPlasticity : byLiquid + byPlasticity);
}
