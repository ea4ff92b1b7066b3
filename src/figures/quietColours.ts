/**
 * Tints between the palette's manganese and white for what must not compete with the curves: borders of
 * classes, names along an axis. Letters keep a contrast of at least 4.5 : 1 on white (tested).
 */
export const QUIET = {
  letters: "#6b5d50",
  border: "#8a7a69",
  faint: "#b9aa98",
} as const;
