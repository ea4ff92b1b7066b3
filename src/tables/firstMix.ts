import type { NoteBlock, TableBlock } from "../blocks/block.js";
import type { StudyResult } from "../study/studyResult.js";
import { say, type Text } from "../words/message.js";
import { BLANK, digits, fixed, LOOSE_UNIT, looseVolume, massText, numberColumn } from "./cell.js";
import { note, warning } from "./tableOf.js";

/**
 * How much sand a soil asks for, where `add-sand` asks: parts by dry mass and by loose volume and the batch
 * to try, each with the range that the error of the fines leaves.
 */
export function firstMixTable({
  config,
  firstMix,
}: Pick<StudyResult, "config" | "firstMix">): TableBlock | NoteBlock {
  if (!firstMix) {
    const text = say`No first mix is asked for: “add-sand” names a sand and a share of fines.`;
    return note(text);
  }
  const { byMass, byVolume, batch, message, basis } = firstMix;
  const { units } = config;
  if (!byMass || !byVolume || !batch) return warning(message);
  const name = (id: string) => config.materials.find((one) => one.id === id)?.name ?? id;
  const [soil, sand] = [name(firstMix.soil), name(firstMix.sand)];
  const loose = (litres: number) => say`${looseVolume(litres, units)} ${LOOSE_UNIT[units]}`;
  const row = (
    what: Text,
    value: { readonly low: number; readonly middle: number; readonly high: number },
    words: (value: number) => Text,
  ): Text[] => [what, words(value.middle), words(value.low), words(value.high)];
  const one = (value: number) => digits(value, 2);
  return {
    kind: "table",
    caption: say`A first mix: ${sand} added to ${soil}`,
    columns: [
      { header: say`Quantity` },
      numberColumn(say`To begin with`),
      numberColumn(say`At least`),
      numberColumn(say`At most`),
    ],
    rows: [
      row(say`Parts of sand to one of soil, by dry mass`, byMass, one),
      row(say`Parts of sand to one of soil, by loose volume`, byVolume, one),
      [say`Batch to try: dry soil`, massText(batch.soilKg, units), BLANK, BLANK],
      [say`Batch to try: dry sand`, massText(batch.sandKg, units), BLANK, BLANK],
      row(say`Soil of that batch, loose`, batch.soilL, loose),
      row(say`Sand of that batch, loose`, batch.sandL, loose),
      [
        say`Fines of that batch`,
        say`${fixed(firstMix.targetPct, 0)} %`,
        say`${fixed(batch.finesPct.low, 0)} %`,
        say`${fixed(batch.finesPct.high, 0)} %`,
      ],
    ],
    notes: [message, basis],
  };
}
