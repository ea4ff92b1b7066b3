import type { Finding } from "../lab/finding.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { sheetsOf } from "./sheetsOf.js";

function warnings(count: number): string {
  return count === 1 ? say`1 warning` : say`${count} warnings`;
}

/**
 * One sentence for each result that warnings touch, the one that moves the mix most first: the strength of
 * the blocks, then the materials by their shares.
 */
export function touchedResults(result: StudyResult): string[] {
  const { config, blend, strength } = result;
  let left = result.findings.filter(({ severity }) => severity === "warning");
  const take = (of: (finding: Finding) => boolean): string | undefined => {
    const taken = left.filter(of);
    left = left.filter((finding) => !taken.includes(finding));
    return taken.length > 0 ? warnings(taken.length) : undefined;
  };
  const sentences: string[] = [];
  const [blocks] = sheetsOf(config.strength.sheet);
  const inBlocks = take(({ file }) => file === blocks);
  const { chosenCementPct } = strength;
  if (inBlocks && chosenCementPct !== undefined) {
    sentences.push(
      say`${blocks} (${inBlocks}): the least cement, now ${formatFixed(chosenCementPct, 1)} %, rests on it.`,
    );
  } else if (inBlocks) {
    sentences.push(say`${blocks} (${inBlocks}): the least cement rests on it.`);
  }
  const shareOf = (id: string) => blend.shares.find((share) => share.id === id)?.sharePct ?? 0;
  const materials = config.materials.map((material) => ({
    ...{ name: material.name, sharePct: shareOf(material.id) },
    files: sheetsOf(
      material.sieve,
      material.hydrometer,
      material.pipette,
      material.limits,
      material.jar,
    ),
  }));
  materials.sort((a, b) => b.sharePct - a.sharePct);
  for (const { name, sharePct, files } of materials) {
    const inSheets = take(({ file }) => files.includes(file));
    if (!inSheets) continue;
    sentences.push(
      sharePct >= 0.05
        ? say`Sheets of ${name} (${inSheets}): it is ${formatFixed(sharePct, 1)} % of the blend.`
        : say`Sheets of ${name} (${inSheets}): it takes no part in the blend, so nothing in the mix rests on them.`,
    );
  }
  const compaction = sheetsOf(config.compaction);
  const inCompaction = take(({ file }) => compaction.includes(file));
  if (inCompaction) {
    sentences.push(say`Compaction test (${inCompaction}): the water of the mix rests on it.`);
  }
  const elsewhere = take(() => true);
  if (elsewhere)
    sentences.push(say`Elsewhere (${elsewhere}): read them before the numbers are used.`);
  return sentences;
}
