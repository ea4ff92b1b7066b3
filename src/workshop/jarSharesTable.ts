import type { TableBlock } from "../blocks/block.js";
import { checkThat } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import { say } from "../words/message.js";

/** One group's heights in mm: tops of sand, silt and clay above the bottom of the jar. */
type Heights = readonly [number, number, number];

/**
 * The jars of all groups side by side, as shares of the settled height, with how far they lie apart: the
 * same soil, other hands.
 *
 * @param text three heights a group, groups apart by semicolons: tops of sand, silt and clay in mm.
 * @throws RangeError, with the text quoted, where a group has not three heights that rise.
 *
 * @example
 * renderAll(jarSharesTable("60 80 100; 58 80 100").rows) // => [["1", "60", "20", "20"], ["2", "58", "22", "20"], ["lowest to highest", "58 to 60", "20 to 22", "20 to 20"]]
 */
export function jarSharesTable(text: string): TableBlock {
  const groups = text
    .split(";")
    .map((part) => part.trim())
    .filter((part) => part !== "")
    .map(heightsOf);
  checkThat(groups.length !== 0, { text: JSON.stringify(text) }, "at least one group");
  const shares = groups.map(([sand, silt, clay]) =>
    [sand, silt - sand, clay - silt].map((height) => (100 * height) / clay),
  );
  const whole = (value: number) => formatFixed(value, 0);
  const ends = [0, 1, 2].map((layer) => {
    const own = shares.map((share) => share[layer]);
    return say`${whole(Math.min(...own))} to ${whole(Math.max(...own))}`;
  });
  return {
    kind: "table",
    caption: say`The jars of all groups`,
    columns: [
      { header: say`Group` },
      { header: say`Sand and gravel`, unit: say`% of the height`, align: "right" },
      { header: say`Silt`, unit: say`% of the height`, align: "right" },
      { header: say`Clay`, unit: say`% of the height`, align: "right" },
    ],
    rows: [
      ...shares.map((share, index) => [String(index + 1), ...share.map(whole)]),
      [say`lowest to highest`, ...ends],
    ],
  };
}

function heightsOf(part: string): Heights {
  const heights = part.split(/[\s,]+/).map(Number);
  const [sand, silt, clay] = heights;
  if (heights.length !== 3 || !(sand > 0 && silt >= sand && clay >= silt)) {
    throw new RangeError(
      `invalid \`text\`: ${JSON.stringify(part)}; expected the tops of sand, silt and clay in mm, rising`,
    );
  }
  return [sand, silt, clay];
}
