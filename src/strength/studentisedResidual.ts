/**
 * Externally studentised residual: e / (s₍ᵢ₎ √(1 − h)), where s₍ᵢ₎ is the residual standard deviation
 * without that block, s₍ᵢ₎² = (RSS − e²/(1 − h)) / (df − 1). Under the model it follows t with df − 1
 * degrees of freedom. Null where h is 1 or df below 2; infinite where the other blocks lie exactly on
 * their fit, so that this one is all the scatter there is.
 */
export function studentisedResidual(of: {
  readonly residual: number;
  readonly leverage: number;
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
}): number | null {
  const { residual, leverage, residualSumOfSquares, degreesOfFreedom } = of;
  const free = 1 - leverage;
  if (free < 1e-10 || degreesOfFreedom < 2) return null;
  const left = residualSumOfSquares - residual ** 2 / free;
  if (residualSumOfSquares === 0) return null;
  if (left <= 1e-12 * residualSumOfSquares) return Math.sign(residual) * Infinity;
  return residual / Math.sqrt((left / (degreesOfFreedom - 1)) * free);
}
