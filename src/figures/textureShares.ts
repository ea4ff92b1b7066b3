import { type UsdaParts, type UsdaTexture, usdaTexture } from "../soil/usdaTexture.js";

/** How many of the drawn parts fall into each texture class, most first; the shares add up to 1. */
export function textureShares(
  resampled: readonly UsdaParts[],
): { readonly texture: UsdaTexture; readonly share: number }[] {
  const counts = new Map<UsdaTexture, number>();
  for (const parts of resampled) {
    const { texture } = usdaTexture(parts);
    counts.set(texture, (counts.get(texture) ?? 0) + 1);
  }
  return [...counts]
    .map(([texture, count]) => ({ texture, share: count / resampled.length }))
    .sort((a, b) => b.share - a.share || (a.texture < b.texture ? -1 : 1));
}
