export type BurroughsClass = "favourable" | "unfavourable" | "not classified";

/**
 * Class of a soil for stabilisation with cement or lime, by shrinkage and plasticity together.
 *
 * Favourable (at least 80 % of the soils reached 2 MPa): linear shrinkage below 6.0 % and PI below 15;
 * or shrinkage 6.0 to 11.0 %, PI 15 to 30 and sand below 64 %. Unfavourable (below 60 % did): the same
 * ranges with sand of 64 % or more; or shrinkage above 11.0 % and PI above 30. Every other combination
 * is not classified in what was read, and is not guessed here.
 * Source: Burroughs 2008, J. Mater. Civ. Eng. 20(3), abstract (read); 104 soils, 4 to 8 % cement and
 * lime together. The abstract does not say which sizes it calls sand.
 *
 * @param sandPct left out where it is not known.
 *
 * @example
 * burroughsClass(4, 12) // => "favourable"
 * burroughsClass(8, 20, 70) // => "unfavourable"
 * burroughsClass(4, 20) // => "not classified"
 */
export function burroughsClass(
  linearShrinkagePct: number,
  plasticityIndexPct: number,
  sandPct?: number,
): BurroughsClass {
  for (const [name, value] of Object.entries({ linearShrinkagePct, plasticityIndexPct })) {
    if (Number.isNaN(value)) throw new RangeError(`invalid \`${name}\`: NaN; expected a number`);
  }
  if (linearShrinkagePct < 6 && plasticityIndexPct < 15) return "favourable";
  if (linearShrinkagePct > 11 && plasticityIndexPct > 30) return "unfavourable";
  const middle =
    linearShrinkagePct >= 6 &&
    linearShrinkagePct <= 11 &&
    plasticityIndexPct >= 15 &&
    plasticityIndexPct <= 30;
  if (!middle || sandPct === undefined) return "not classified";
  return sandPct < 64 ? "favourable" : "unfavourable";
}
