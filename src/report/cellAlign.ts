const NUMERIC = /^[-+−–±<>≤≥≈~ ]*\d[\d\s.,'’]*(?:[–-]\s*\d[\d\s.,]*)?\s*(?:%|‰)?$/;

/**
 * Side on which a column stands: as asked, or right when each filled cell is a number
 * (with sign, range or percent) so that digits stand under digits, or left.
 */
export function cellAlign(
  asked: "left" | "right" | "center" | undefined,
  cells: readonly string[],
): "left" | "right" | "center" {
  if (asked !== undefined) return asked;
  const filled = cells.map((cell) => cell.trim()).filter((cell) => !/^[-–—]?$/.test(cell));
  return filled.length > 0 && filled.every((cell) => NUMERIC.test(cell)) ? "right" : "left";
}
