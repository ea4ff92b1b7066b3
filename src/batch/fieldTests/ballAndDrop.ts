import { phrase } from "../../words/say.js";
import type { FieldTest } from "./fieldTest.js";

/**
 * Squeeze and drop of the moist mix: is it wet enough to ram.
 *
 * @example
 * BALL_AND_DROP.notToBeMistakenFor.includes("plastic") // => true
 */
export const BALL_AND_DROP: FieldTest = {
  id: "ball-and-drop",
  name: phrase`Ball and drop: moisture of the mix`,
  asks: phrase`Is the mix moist enough, and not too moist, to ram?`,
  tools: phrase`A hand in a glove, a hard clean floor`,
  steps: [
    phrase`Take a handful of the mix as it will be rammed and squeeze it hard into a ball.`,
    phrase`Look at the glove: is there water on it?`,
    phrase`Hold the ball at shoulder height and let it fall on the floor.`,
  ],
  readings: [
    { label: phrase`Batch` },
    { label: phrase`Water on the glove?` },
    { label: phrase`Height of fall`, unit: "m" },
    { label: phrase`One lump, a few pieces, or crumbs` },
  ],
  conclusions: [
    { seen: phrase`No water, and it just breaks up`, means: phrase`Right: ram`, basis: "read" },
    { seen: phrase`Water on the glove`, means: phrase`Too wet`, basis: "read" },
    { seen: phrase`It stays one flattened lump`, means: phrase`Too wet`, basis: "common practice" },
    {
      seen: phrase`No ball, or it bursts into crumbs`,
      means: phrase`Too dry`,
      basis: "common practice",
    },
  ],
  doesNotTell: phrase`The moisture in percent, or the best moisture of another soil or rammer; clayey and sandy mixes break differently at their optimum.`,
  settledBy: phrase`Oven drying of a sample (moisture), and a compaction test with the effort of the work (optimum)`,
  notToBeMistakenFor: phrase`the dropped ball of plastic soil, 200 g from 2 m, which asks how well the clay binds`,
  source: phrase`Intermediate Technology Development Group, How to make stabilised soil blocks, Technical Advice Note 2: shoulder height, should just break up, no water when squeezed (read); about 1.5 m and a few pieces in NZS 4298 and SAZS 724 (from memory)`,
};
