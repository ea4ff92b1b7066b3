import { formatFixed } from "../../quantities/format.js";
import { say, type Text } from "../../words/message.js";

export interface AashtoInput {
  readonly passing2Pct: number;
  readonly passing0425Pct: number;
  readonly passing0075Pct: number;
  readonly liquidLimitPct?: number;
  readonly plasticityIndexPct?: number;
  readonly nonPlastic?: boolean;
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
  const { passing2Pct, passing0425Pct, passing0075Pct, nonPlastic = false } = input;
  for (const [name, value] of Object.entries({ passing2Pct, passing0425Pct, passing0075Pct })) {
    if (!(value >= 0 && value <= 100)) {
      throw new RangeError(`invalid \`${name}\`: ${value}; expected 0 to 100`);
    }
  }
  if (passing0425Pct > passing2Pct || passing0075Pct > passing0425Pct) {
    throw new RangeError(
      `invalid \`passing0425Pct\`: ${passing0425Pct}; expected between \`passing0075Pct\` ${passing0075Pct} and \`passing2Pct\` ${passing2Pct}`,
    );
  }
  const [f10, f40, f200] = [passing2Pct, passing0425Pct, passing0075Pct].map(Math.round);
  const head = say`Passing 2 mm ${f10} %, 0.425 mm ${f40} %, 0.075 mm ${f200} %.`;
  const limits =
    input.liquidLimitPct === undefined || input.plasticityIndexPct === undefined
      ? undefined
      : [Math.round(input.liquidLimitPct), Math.round(input.plasticityIndexPct)];
  if (!nonPlastic && !limits) {
    return { path: [head, say`Without liquid limit and plasticity index no group can be told.`] };
  }
  // A non-plastic soil has no limits; below every bound it takes the silty groups.
  const [liquid, index] = nonPlastic ? [0, 0] : (limits ?? []);
  const told = nonPlastic ? say`Non-plastic.` : say`LL ${liquid}, PI ${index}.`;
  const path = [head, told];

  const granular = (): string | undefined => {
    if (f10 <= 50 && f40 <= 30 && f200 <= 15 && index <= 6) return "A-1-a";
    if (f40 <= 50 && f200 <= 25 && index <= 6) return "A-1-b";
    if (f40 >= 51 && f200 <= 10 && nonPlastic) return "A-3";
    return undefined;
  };
  const column = liquid <= 40 ? (index <= 10 ? 4 : 6) : index <= 10 ? 5 : 7;
  const plasticity = say`LL ${liquid <= 40 ? say`up to 40` : say`41 or more`} and PI ${index <= 10 ? say`up to 10` : say`11 or more`}`;
  let group = f200 <= 35 ? granular() : undefined;
  if (group) path.push(say`First group from the left whose limits are all met: ${group}.`);
  else if (f200 <= 35) {
    group = `A-2-${column}`;
    path.push(say`Not A-1 or A-3, at most 35 % fines, ${plasticity}: ${group}.`);
  } else {
    const split = column === 7 ? (index <= liquid - 30 ? "-5" : "-6") : "";
    group = `A-${column}${split}`;
    path.push(
      say`36 % fines or more, ${plasticity}${split ? say`, PI ${index <= liquid - 30 ? say`up to` : say`above`} LL − 30` : ""}: ${group}.`,
    );
  }

  const values = { passing0075Pct: f200, liquidLimitPct: liquid, plasticityIndexPct: index };
  const byRule = /^A-(1|3|2-4|2-5)/.test(group) || nonPlastic;
  const raw = byRule ? 0 : groupIndex(values, /^A-2/.test(group) ? "plasticityOnly" : "present");
  const whole = Math.round(raw);
  path.push(
    byRule
      ? say`Group index 0 by rule.`
      : say`Group index ${formatFixed(raw, 2)}, rounded ${whole}, by the present formula without caps.`,
  );
  const capped = byRule ? 0 : Math.round(groupIndex(values, "capped"));
  if (capped !== whole) {
    path.push(say`The older form, still in print, caps its terms and would give ${capped}.`);
  }
  return {
    group,
    groupIndex: whole,
    cappedGroupIndex: capped,
    label: `${group}(${whole})`,
    path,
  };
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
    const held = (value: number, most: number) => Math.min(most, Math.max(0, value));
    const [a, b] = [held(fines - 35, 40), held(fines - 15, 40)];
    const [c, d] = [held(liquid - 40, 20), held(index - 10, 20)];
    return 0.2 * a + 0.005 * a * c + 0.01 * b * d;
  }
  const byPlasticity = 0.01 * (fines - 15) * (index - 10);
  const byLiquid = (fines - 35) * (0.2 + 0.005 * (liquid - 40));
  return Math.max(0, form === "plasticityOnly" ? byPlasticity : byLiquid + byPlasticity);
}
