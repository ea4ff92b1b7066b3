import type { SizeClassInput } from "./sizeClassInput.js";

/** Refuses shares that are no shares, or that do not add up to 100 (within 0.5). */
export function checkSizeShares({ gravelPct, sandPct, finesPct, clayPct }: SizeClassInput): void {
  for (const [name, value] of Object.entries({ gravelPct, sandPct, finesPct, clayPct })) {
    if (value !== undefined && !(value >= 0 && value <= 100)) {
      throw new RangeError(`invalid \`${name}\`: ${value}; expected 0 to 100`);
    }
  }
  const sum = gravelPct + sandPct + finesPct;
  if (Math.abs(sum - 100) > 0.5) {
    throw new RangeError(`invalid sum of gravel, sand and fines: ${sum}; expected 100`);
  }
  if (clayPct !== undefined && clayPct > finesPct + 1e-9) {
    throw new RangeError(
      `invalid \`clayPct\`: ${clayPct}; expected at most the fines, ${finesPct}`,
    );
  }
}
