import type { BlendMaterial } from "./blendMaterial.js";
import { type LimitRow, limitValue } from "./limitRows.js";

/** Whether shares (parts of one) keep the materials' bounds and all limits, but for rounding. */
export function keepsConditions(
  materials: readonly BlendMaterial[],
  rows: readonly LimitRow[],
  shares: readonly number[],
): boolean {
  for (let j = 0; j < shares.length; j += 1) {
    const sharePct = 100 * shares[j];
    const { minSharePct, maxSharePct } = materials[j];
    if (sharePct < minSharePct - 1e-9 || sharePct > maxSharePct + 1e-9) return false;
  }
  return rows.every((row) => {
    const over = limitValue(row, shares) - row.limit;
    const slight = 1e-9 * Math.max(1, Math.abs(row.limit));
    return (row.side === "largest" ? over : -over) <= slight;
  });
}
