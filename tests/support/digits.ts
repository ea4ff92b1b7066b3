/** Digits that agree: log10 of the inverse relative error (absolute where `certified` is 0), at most 15. */
export function digits(found: number, certified: number): number {
  if (found === certified) return 15;
  const error = certified === 0 ? Math.abs(found) : Math.abs((found - certified) / certified);
  return Math.min(15, -Math.log10(error));
}
