/** A palette colour with some of the ground showing through, for areas behind curves. */
export function translucent(hex: string, opacity: number): string {
  const part = (from: number) => Number.parseInt(hex.slice(from, from + 2), 16);
  return `rgba(${part(1)},${part(3)},${part(5)},${opacity})`;
}
