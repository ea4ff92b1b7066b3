import { formatFixed, formatNumber } from "../quantities/formatNumber.js";
import type { MaterialResult, StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";

/** Points of the blend below which an assumed tail of a curve is not worth a test. */
const WORTH_A_TEST = 1;

/** What the study does not know, what that leaves open, and which sheet or entry would tell. */
export function missingKnowledge(result: StudyResult): string[] {
  const { config, blend, materials, mix } = result;
  const sharePct = (id: string) => blend.shares.find((share) => share.id === id)?.sharePct ?? 0;
  const used = materials.filter(({ id }) => sharePct(id) >= 0.05);
  const lines = [...leastCementLine(result)];
  for (const material of used) {
    lines.push(...tailLine(material, sharePct(material.id)));
    if (material.role === "soil") lines.push(...soilLines(material));
  }
  const stated = Object.keys(config.readingErrors).length > 0;
  const fines = used
    .flatMap(({ name, uncertainty }) => {
      const found = uncertainty?.quantities.find(({ quantity }) => quantity === "finesPct");
      return found ? [{ name, ...found }] : [];
    })
    .sort((a, b) => b.high - b.low - (a.high - a.low))[0];
  if (fines && !stated) {
    lines.push(
      say`Usual reading errors put the fines of ${fines.name} between ${formatFixed(fines.low, 1)} and ${formatFixed(fines.high, 1)} %: your laboratory's own, under “reading-errors”, make that interval its own.`,
    );
  }
  if (!blend.robustness) {
    lines.push(
      say`How often the blend keeps to its limits from load to load is not known: say under “varies” how its materials change.`,
    );
  }
  if (!config.compaction) {
    lines.push(
      say`There is no compaction sheet: without it there is no water content to aim at, and so no mix.`,
    );
  }
  if (mix && !mix.cost)
    lines.push(say`Nothing has a price: with “price” entries the cost is added up.`);
  return lines;
}

function leastCementLine({ strength }: StudyResult): string[] {
  const { interval, nextBlocks, status } = strength.leastCement;
  // Where there is no content at all, its message has said this already.
  if (nextBlocks) return status === "above-range" ? [] : [nextBlocks.reason];
  if (status !== "ok" || !interval) return [];
  const { lowPct, highPct } = interval;
  const [low, high] = [formatFixed(lowPct, 1), formatFixed(highPct, 1)];
  return [
    say`The blocks leave the cement content open between ${low} and ${high} %: more blocks of those contents (loambook plan) narrow that.`,
  ];
}

/** Below its finest sieve a curve without a sedimentation test is assumed. */
function tailLine(material: MaterialResult, sharePct: number): string[] {
  const { name, sedimentation, pipette, curve } = material;
  const finest = curve.points.reduce((least, point) =>
    point.sizeMm < least.sizeMm ? point : least,
  );
  const pointsOfBlend = (sharePct * finest.passingPct) / 100;
  if (sedimentation || pipette || pointsOfBlend < WORTH_A_TEST) return [];
  return [
    say`${name} has no hydrometer or pipette sheet: below ${formatNumber(finest.sizeMm, 2)} mm ${formatFixed(pointsOfBlend, 1)} points of the blend's curve are assumed, and its clay and silt are not told apart.`,
  ];
}

function soilLines({ name, limits }: MaterialResult): string[] {
  if (!limits) {
    return [
      say`${name} has no limits sheet: its plasticity index, and the classes and limits that ask for it, stay open.`,
    ];
  }
  if (limits.linearShrinkagePct === undefined) {
    return [say`The limits sheet of ${name} has no shrinkage bar: linear shrinkage is not judged.`];
  }
  return [];
}
