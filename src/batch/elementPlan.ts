import type { EarthElement } from "./earthElement.js";

/** The element seen from above, and what its forms have to cover, openings not yet taken off. */
export interface ElementPlan {
  readonly planAreaM2: number;
  /** Length of all formed faces in plan: both sides of a wall and its ends. */
  readonly formedLengthM: number;
  /** Length along the middle of a wall or ring: openings are cut from it. Null of piers. */
  readonly centreLengthM: number | null;
}

/** Works out the plan; a ring's corners are counted once. Piers are all counted together. */
export function elementPlan(element: EarthElement): ElementPlan {
  if (element.kind === "pier") {
    const { section, count = 1 } = element;
    const [area, girth] =
      section.shape === "round"
        ? [(Math.PI / 4) * section.diameterM ** 2, Math.PI * section.diameterM]
        : [section.widthM * section.depthM, 2 * (section.widthM + section.depthM)];
    return { planAreaM2: count * area, formedLengthM: count * girth, centreLengthM: null };
  }
  const { thicknessM } = element;
  if (element.kind === "ring") {
    const { plan } = element;
    const outsideM =
      plan.shape === "round" ? Math.PI * plan.diameterM : 2 * (plan.lengthM + plan.widthM);
    const insideM = outsideM - (plan.shape === "round" ? 2 * Math.PI : 8) * thicknessM;
    const centreLengthM = (outsideM + insideM) / 2;
    return {
      planAreaM2: centreLengthM * thicknessM,
      formedLengthM: outsideM + insideM,
      centreLengthM,
    };
  }
  return {
    planAreaM2: element.lengthM * thicknessM,
    formedLengthM: 2 * (element.lengthM + thicknessM),
    centreLengthM: element.lengthM,
  };
}
