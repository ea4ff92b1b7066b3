import type { Finding } from "../lab/finding.js";
import { say } from "../words/say.js";
import type { HaulPrice, PriceRange } from "./priceRange.js";

/** Says why a price cannot be used: none, none with a unit, or one whose amount is not known. */
export function priceFinding(of: {
  readonly id: string;
  readonly name: string;
  readonly kind: "price" | "haul";
  readonly range: PriceRange | HaulPrice | undefined;
  readonly file: string;
}): Finding {
  const { id, name, kind, range, file } = of;
  const place = {
    severity: "warning" as const,
    file,
    column: `${id === "cement" ? "cement" : `materials.${id}`}.${kind}`,
  };
  if (range === undefined) {
    return {
      ...place,
      code: "price-missing",
      message: say`${name} has no price, so it is not in the total.`,
      expected: say`a price with its unit, 0 where it costs nothing`,
      wayOut: say`Add the price to the study.`,
    };
  }
  const value = range.low === range.high ? `${range.low}` : say`${range.low} to ${range.high}`;
  if (range.per === undefined) {
    return {
      ...place,
      code: "price-without-unit",
      value,
      message: say`${name}: the ${kind} has no unit, so nobody knows what it is for.`,
      expected: say`per t, per m3, per bag, or per load for haul`,
      wayOut: say`Write the unit beside the ${kind}.`,
    };
  }
  const missing = {
    t: say`the mass`,
    m3: say`a loose bulk density`,
    bag: say`the mass of a bag`,
    load: say`what a lorry takes`,
  }[range.per];
  return {
    ...place,
    code: "price-without-amount",
    value: say`${value} per ${range.per}`,
    message: say`${name}: the ${kind} is per ${range.per}, but ${missing} is missing.`,
    expected: missing,
    wayOut: say`Give ${missing}, or a ${kind} per tonne.`,
  };
}
