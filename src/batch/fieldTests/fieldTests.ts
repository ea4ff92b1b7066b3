import { BALL_AND_DROP } from "./ballAndDrop.js";
import type { FieldTest } from "./fieldTest.js";
import { JAR_TEST } from "./jarTest.js";
import { PLASTIC_BALL } from "./plasticBall.js";
import { RIBBON_TEST } from "./ribbonTest.js";
import { SHRINKAGE_BOX } from "./shrinkageBox.js";
import { WASH_AND_SMELL } from "./washAndSmell.js";

/**
 * The field tests, in the order in which a soil meets them. They choose what goes to the laboratory; they
 * do not take its place. The two tests that drop a ball stand apart: one asks about moisture, one about clay.
 *
 * @example
 * FIELD_TESTS.map(({ id }) => id) // => ["wash-and-smell", "jar", "ribbon", "plastic-ball", "shrinkage-box", "ball-and-drop"]
 */
export const FIELD_TESTS: readonly FieldTest[] = [
  WASH_AND_SMELL,
  JAR_TEST,
  RIBBON_TEST,
  PLASTIC_BALL,
  SHRINKAGE_BOX,
  BALL_AND_DROP,
];
