import { savingTrap } from "../batch/savingTrap.js";
import { formatQuantity } from "../quantities/displayUnits.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { fixed } from "./cell.js";
import { noMix } from "./noMix.js";
import type { NoteBlock } from "./reportBlock.js";

/**
 * The trap of the cement saving in words, with the numbers of a study's element: for a workshop.
 *
 * Cement in earth set against whole concrete seems to save nineteen twentieths; cement against cement it
 * is near a half. Uses the concrete that the study names, else one of the same volume.
 *
 * Source: `savingTrap`.
 */
export function savingTrapBlock({ config, mix }: StudyResult): NoteBlock {
  if (!mix) return noMix();
  const { netVolumeM3, cementKgM3 } = mix.quantities;
  const { concreteVolumeM3 = netVolumeM3, concreteCement } = config.carbon;
  const earthCementKg = cementKgM3 * netVolumeM3;
  const trap = savingTrap({ earthCementKg, concreteVolumeM3, concreteCement });
  const mass = (kilograms: number) => formatQuantity(1000 * kilograms, "mass", config.units);
  const whole = (percent: number) => fixed(percent, 0);
  const { low, high } = trap.concreteCementKg;
  return {
    kind: "note",
    tone: "note",
    text: say`${mass(earthCementKg)} of cement stand where ${mass(trap.concreteMassKg)} of concrete would have stood. To call that ${whole(trap.falseSavingPct)} % less cement sets cement against stone: the concrete would have held ${mass(low)} to ${mass(high)} of cement, so the saving is ${whole(trap.savingPct.low)} to ${whole(trap.savingPct.high)} %.`,
  };
}
