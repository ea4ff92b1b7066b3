import type { MixStudy } from "../study/studyResult.js";
import { say, sayOf } from "../words/say.js";
import { basisMark } from "./basisMark.js";
import type { ReferencesBlock } from "./reportBlock.js";

/** Where the factors of cement and carbon come from, each source once. */
export function mixReferences({ comparison, carbon }: MixStudy): ReferencesBlock["items"] {
  const factors = carbon.lines.flatMap(({ factor, haul }) =>
    factor ? (haul && carbon.haulFactor ? [factor, carbon.haulFactor] : [factor]) : [],
  );
  const items = [
    ...[comparison.carbonFactor, ...factors].map(({ name, source, basis }) => ({
      text: say`${source}: carbon of ${sayOf(name)}`,
      mark: basisMark(basis),
    })),
    {
      text: say`${sayOf(comparison.concreteCement.source)}: cement in concrete`,
      mark: basisMark(comparison.concreteCement.basis),
    },
  ];
  return [...new Map(items.map((item) => [item.text, item])).values()];
}
