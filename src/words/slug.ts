/**
 * The words of a text in small Latin letters and digits, joined by hyphens: for ids and file names.
 * Accents go; of a text in another script nothing may be left.
 *
 * @param maxLength default 60
 *
 * @example
 * slug("Grava é arena, 2 mm") // => "grava-e-arena-2-mm"
 */
export function slug(text: string, maxLength = 60): string {
  const plain = text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  const words = plain.match(/[a-z0-9]+/g) ?? [];
  return words.join("-").slice(0, maxLength).replace(/-+$/, "");
}
