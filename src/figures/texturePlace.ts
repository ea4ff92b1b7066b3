const HEIGHT = Math.sqrt(3) / 2;

/** A place in the texture triangle: clay upwards, silt to the right, sand to the left. */
export function texturePlace(clayPct: number, siltPct: number): { x: number; y: number } {
  return { x: siltPct + clayPct / 2, y: HEIGHT * clayPct };
}
