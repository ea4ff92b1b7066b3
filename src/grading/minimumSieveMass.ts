/** Nominal maximum size in mm and the least mass in kg. */
const LEAST_KG: readonly (readonly [number, number])[] = [
  [4.75, 0.5],
  [6.3, 1],
  [9.5, 1],
  [12.5, 2],
  [16, 2],
  [19, 3],
  [25, 6],
  [31.5, 7.5],
  [37.5, 9],
  [50, 10],
  [63, 12],
  [75, 15],
  [90, 20],
];

/**
 * Least dry mass that represents a material of a nominal maximum grain size; a size between two lines
 * of the table takes the larger mass.
 *
 * Source: AASHTO T 27 as adopted by WSDOT (T 27/T 11, read).
 *
 * @returns kg, or `undefined` above 90 mm, where the table ends.
 *
 * @example
 * minimumSieveMass(19) // => 3
 * minimumSieveMass(20) // => 6
 * minimumSieveMass(120) // => undefined
 */
export function minimumSieveMass(nominalSizeMm: number): number | undefined {
  return LEAST_KG.find(([sizeMm]) => sizeMm >= nominalSizeMm)?.[1];
}
