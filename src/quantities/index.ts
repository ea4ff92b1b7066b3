/** Units, sieve designations and the writing of numbers. @module */
export {
  type DisplayKind,
  displayUnit,
  displayValue,
  formatFixed,
  formatNumber,
  formatPlain,
  formatQuantity,
  inUnits,
  measured,
  type UnitSystem,
} from "./format.js";
export type { Interval } from "./interval.js";
export {
  acceptedUnits,
  type ParsedNumber,
  type ParsedQuantity,
  parseNumber,
  parseQuantity,
} from "./parseQuantity.js";
export { parseSieve, SIEVE_DESIGNATIONS, type SieveDesignation, sieveNumbers } from "./sieves.js";
export type { SourcedRange } from "./sourcedRange.js";
export {
  convertFromBase,
  convertToBase,
  type Dimension,
  type DimensionUnits,
  normaliseUnit,
  UNITS,
  type UnitScale,
} from "./units.js";
