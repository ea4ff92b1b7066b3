/** A price in any one currency, as a range: low and high are the same where it is firm. */
export interface PriceRange {
  readonly low: number;
  readonly high: number;
  /** Tonne as weighed with its water, cubic metre loose, or bag. Missing: the price cannot be used. */
  readonly per?: "t" | "m3" | "bag";
}

/** How a material gets to the site. */
export interface HaulPrice {
  /** For each tonne as weighed with its water, each loose cubic metre, or each load. */
  readonly low: number;
  readonly high: number;
  readonly per?: "t" | "m3" | "load";
}

/** What one material costs to buy and to bring. */
export interface MaterialPriceRange {
  readonly price?: PriceRange;
  readonly haul?: HaulPrice;
  /** Lost in the heap and on the way, percent of what goes into the mix; default 0. */
  readonly wastePct?: number;
  /** For a price of a bag. */
  readonly bagMassKg?: number;
  /** For haul by load: count them with `lorryLoads`. */
  readonly loads?: number;
}
