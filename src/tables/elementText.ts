import { formatQuantity, type UnitSystem } from "../quantities/displayUnits.js";
import type { ElementConfig } from "../study/elementConfig.js";
import { say } from "../words/say.js";

/** The element's kind and measures in words, without its name. */
export function elementText(element: ElementConfig, units: UnitSystem): string {
  const length = (metres: number) => formatQuantity(metres * 1000, "length", units);
  const depth = (metres: number) => formatQuantity(metres * 1000, "depth", units);
  const high = length(element.heightM);
  if (element.kind === "pier") {
    const { section, count = 1 } = element;
    return section.shape === "round"
      ? say`${count} round piers, diameter ${depth(section.diameterM)}, ${high} high`
      : say`${count} piers of ${depth(section.widthM)} by ${depth(section.depthM)}, ${high} high`;
  }
  const thick = depth(element.thicknessM);
  const openings = openingsText(element.openings ?? [], units);
  if (element.kind === "ring") {
    const { plan } = element;
    return plan.shape === "round"
      ? say`round ring, outside diameter ${length(plan.diameterM)}, ${high} high, ${thick} thick, ${openings}`
      : say`closed ring, outside ${length(plan.lengthM)} by ${length(plan.widthM)}, ${high} high, ${thick} thick, ${openings}`;
  }
  const long = length(element.lengthM);
  return element.kind === "bench"
    ? say`bench ${long} long, ${high} high, ${thick} deep, ${openings}`
    : say`${long} long, ${high} high, ${thick} thick, ${openings}`;
}

function openingsText(
  openings: readonly {
    readonly widthM: number;
    readonly heightM: number;
    readonly count?: number;
  }[],
  units: UnitSystem,
): string {
  if (openings.length === 0) return say`without openings`;
  const length = (metres: number) => formatQuantity(metres * 1000, "length", units);
  const list = openings.map(
    ({ count = 1, widthM, heightM }) => say`${count} × ${length(widthM)} by ${length(heightM)}`,
  );
  return say`openings ${list.join(", ")}`;
}
