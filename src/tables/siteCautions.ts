import { CAUTIONS } from "../guidance/cautions.js";
import { sayOf } from "../words/say.js";
import type { CautionsBlock } from "./reportBlock.js";

/**
 * The cautions that matter at one place of the work, in the order asked for.
 *
 * @throws RangeError for an id that no caution has. Source: with each caution.
 *
 * @example
 * siteCautions(["cement-burns"]).items.map(({ title }) => title) // => ["Wet cement burns"]
 */
export function siteCautions(ids: readonly string[]): CautionsBlock {
  return {
    kind: "cautions",
    items: ids.map((id) => {
      const caution = CAUTIONS.find((one) => one.id === id);
      if (!caution) {
        const known = CAUTIONS.map((one) => one.id).join(", ");
        throw new RangeError(`invalid caution: ${id}; expected one of ${known}`);
      }
      const { title, text, source } = caution;
      return { title: sayOf(title), text: sayOf(text), source: sayOf(source) };
    }),
  };
}
