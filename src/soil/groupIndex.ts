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
