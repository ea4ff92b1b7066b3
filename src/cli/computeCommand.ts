import type { Estimate } from "../blend/sandToAdd.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { STUDY_FILE } from "../findings/finding.js";
import { countFindings } from "../findings/format.js";
import type { GuidanceComparison } from "../guidance/comparison.js";
import { shortSource } from "../guidance/entry.js";
import {
  formatFixed,
  formatNumber,
  formatPlain,
  formatQuantity,
  type UnitSystem,
} from "../quantities/format.js";
import { moistureWindow } from "../soil/compaction/moistureWindow.js";
import { requirementNotShown } from "../study/doubts.js";
import { openStudy } from "../study/openStudy.js";
import { stageTitle } from "../study/stages.js";
import { blockMeans } from "../study/strength.js";
import { studyTitle } from "../study/study.js";
import type {
  BlendStudy,
  FirstMix,
  MaterialResult,
  StudyResult,
  UngradedMaterial,
} from "../study/studyResult.js";
import { testedAnotherBlend } from "../study/trials.js";
import { LOOSE_UNIT, looseVolume, massText } from "../tables/cell.js";
import { SYSTEMS } from "../tables/gradingUncertainty.js";
import { statisticName } from "../tables/strength.js";
import { joinTexts, say, soilNamed, type Text, wordFor } from "../words/message.js";
import { render } from "../words/render.js";
import { EXIT, parseCall } from "./call.js";
import { newFile, printOrWrite } from "./output.js";

/** `loambook compute`: the study result, as a summary or as JSON at full precision. */
export async function computeCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("compute", words, { flags: ["json"], texts: ["out"] }, "some");
  const out = newFile(call);
  const result = await openStudy(call.places);
  const output = call.flag("json")
    ? `${JSON.stringify(result, undefined, 2)}\n`
    : summariseResult(result);
  await printOrWrite(out, output);
  return EXIT.ok;
}

/** A study result in a page for the screen, in the study's language: what is known, and what would tell the rest. */
export function summariseResult(result: StudyResult): string {
  const { config, blend, testing, findings } = result;
  const lines: Text[] = [studyTitle(config)];
  if (config.invented) lines.push(say`(invented data)`);
  lines.push("");
  const graded = blend && config.materials.length > 1 ? [] : result.materials;
  for (const material of graded) lines.push(...materialLines(result, material), "");
  for (const material of result.ungraded ?? []) lines.push(...roughLines(material));
  if (result.firstMix) lines.push(...firstMixLines(result.firstMix, config.units), "");
  if (blend) lines.push(...blendLines(config, blend));
  if (testing) lines.push(testing.message);
  lines.push(...testLines(result));
  const open = openStages(result);
  if (open.length > 0) lines.push(...(lines.at(-1) === "" ? [] : [""]), ...open);
  if (!result.inputs.some(({ file }) => file === STUDY_FILE)) {
    lines.push(
      say`“loambook new <folder> --sheets …” makes a study of these sheets, to which the next ones are added.`,
    );
  }
  lines.push(
    "",
    say`Findings: ${countFindings(findings)} (loambook check shows them)`,
    say`The numbers do not replace a licensed engineer, a laboratory or the local code.`,
  );
  return `${lines.map((line) => render(line, config.language)).join("\n")}\n`;
}

/** What comes next in full, and by name what comes after it. */
export function openStages({ stages }: Pick<StudyResult, "stages">): Text[] {
  const open = stages.filter(({ known }) => !known);
  const [next, ...later] = open;
  if (!next?.needs) return [];
  return [
    say`Next: ${stageTitle(next.stage)}. ${next.needs}`,
    ...(later.length === 0
      ? []
      : [say`After that: ${joinTexts(later.map(({ stage }) => stageTitle(stage)))}.`]),
  ];
}

/** What is known of a material before a blend is sought: fractions, sizes, classes, and where guidance puts it. */
function materialLines(
  { soilGuidance = [] }: StudyResult,
  { id, name, fractions, sizes, limits, uncertainty }: MaterialResult,
): Text[] {
  const share = (what: Text, pct: number | undefined) =>
    pct === undefined ? undefined : say`${what} ${formatFixed(pct, 1)} %`;
  const size = (what: string, mm: number | undefined) =>
    mm === undefined ? undefined : say`${what} ${formatNumber(mm, 2)}`;
  const shares = joinTexts([
    share(say`clay`, fractions.clayPct),
    share(say`silt`, fractions.siltPct),
    fractions.clayPct === undefined ? share(say`fines`, fractions.finesPct) : undefined,
    share(say`sand`, fractions.sandPct),
    share(say`gravel`, fractions.gravelPct),
  ]);
  const { d10, d30, d50, d60, cu, cc } = sizes;
  const read = joinTexts([size("D10", d10), size("D30", d30), size("D50", d50), size("D60", d60)]);
  const shape = joinTexts([size("Cu", cu), size("Cc", cc)]);
  const classes = (uncertainty?.classes ?? []).flatMap(({ system, likelihoods: [first] }) =>
    first && first.label !== NOT_CLASSIFIED
      ? [say`${SYSTEMS[system]}: ${soilNamed(first.label)}`]
      : [],
  );
  const comparison = soilGuidance.find((one) => one.id === id)?.comparison;
  const lines: Text[] = [
    shares === "" ? say`${name}` : say`${name}: ${shares} (${fractions.boundaries.name})`,
  ];
  if (read !== "") lines.push(say`  ${read} mm`);
  if (shape !== "") lines.push(say`  ${shape}`);
  lines.push(...plasticityLine(limits));
  if (classes.length > 0) lines.push(say`  Classes: ${joinTexts(classes, "; ")}`);
  return comparison ? [...lines, ...guidanceLines(comparison)] : lines;
}

function plasticityLine(limits: MaterialResult["limits"]): Text[] {
  const pct = limits?.plasticityIndexPct;
  return pct === undefined ? [] : [say`  plasticity index ${formatFixed(pct, 1)} %`];
}

/** Which recommendations a soil meets, by their sources. */
function guidanceLines({ checks }: GuidanceComparison): Text[] {
  const [inside, outside] = ["inside", "outside"].map((wanted) =>
    joinTexts(
      checks.filter(({ verdict }) => verdict === wanted).map(({ entry }) => shortSource(entry)),
    ),
  );
  const lines: Text[] = [];
  if (inside !== "") lines.push(say`  Meets all measured criteria of: ${inside}`);
  if (outside !== "") lines.push(say`  Does not meet: ${outside}`);
  return lines;
}

/** What is known of a material without a sieve sheet. */
function roughLines({ name, jar, limits }: UngradedMaterial): Text[] {
  const shares = jar?.shares.map(
    ({ name: layer, lowPct, highPct }) =>
      say`${wordFor(layer)} ${formatFixed(lowPct, 0)} to ${formatFixed(highPct, 0)} %`,
  );
  return [
    shares
      ? say`${name}, by the jar, of the dry mass: ${joinTexts(shares)}`
      : say`${name}: its grading is not known`,
    ...plasticityLine(limits),
  ];
}

function firstMixLines({ message, byVolume, batch, basis }: FirstMix, units: UnitSystem): Text[] {
  const lines = [message];
  if (byVolume && byVolume.middle > 0) {
    const { low, middle, high } = byVolume;
    lines.push(
      say`  by loose volume ${formatNumber(middle, 2)} (${formatNumber(low, 2)} to ${formatNumber(high, 2)}) to one`,
    );
  }
  if (batch && batch.sandKg > 0) {
    const { soilKg, sandKg, soilL, sandL, finesPct } = batch;
    const loose = ({ middle }: Estimate) => say`${looseVolume(middle, units)} ${LOOSE_UNIT[units]}`;
    lines.push(
      say`  to try: ${massText(soilKg, units)} of dry soil (about ${loose(soilL)} loose) and ${massText(sandKg, units)} of dry sand (about ${loose(sandL)} loose); its fines may be ${formatFixed(finesPct.low, 0)} to ${formatFixed(finesPct.high, 0)} %`,
    );
  }
  return [...lines, basis];
}

/** What a class is called that the curve or the limits do not tell. */
const NOT_CLASSIFIED = "not classified";

function blendLines({ materials, language }: StudyConfig, blend: BlendStudy): Text[] {
  const nameOf = (id: string) => materials.find((material) => material.id === id)?.name ?? id;
  return [
    say`Blend, percent of the dry mass of soil and aggregate:`,
    ...blend.shares.map(({ id, sharePct }) => {
      if (sharePct === 0) return say`  not used  ${nameOf(id)}`;
      return `  ${render(formatFixed(sharePct, 1), language).padStart(5)} %  ${nameOf(id)}`;
    }),
    ...(blend.rmsDifferencePct === undefined
      ? []
      : [
          say`  differs from the target by ${formatFixed(blend.rmsDifferencePct, 1)} points (root mean square)`,
        ]),
    "",
  ];
}

/** What compaction and blocks tell of the mix. */
function testLines(result: StudyResult): Text[] {
  const { config, compaction, strength, blocks, testing, mix } = result;
  const { units } = config;
  const { requirement } = config.strength;
  const lines: Text[] = [];
  const tested = testing?.state === "tested";
  const others = testedAnotherBlend(result);
  if (!others && compaction?.peak) {
    const { maximumDryDensityKgM3, optimumWaterPct } = compaction.peak;
    lines.push(
      say`Compaction: ${formatQuantity(maximumDryDensityKgM3, "density", units, 4)} dry at ${formatFixed(optimumWaterPct, 1)} % water`,
    );
    const window = moistureWindow(compaction);
    if (window) {
      lines.push(
        say`  between ${formatFixed(window.driestPct, 1)} and ${formatFixed(window.wettestPct, 1)} % water it keeps ${window.relativePct} % of that density`,
      );
    }
  }
  const ofCurve = others || !strength ? [] : blockMeans(strength.specimens);
  for (const { cementPct, ageDays, blocks: count, meanMpa } of blocks?.means ?? ofCurve) {
    lines.push(
      say`Blocks with ${formatPlain(cementPct, 3)} % cement at ${ageDays} days: mean ${formatQuantity(meanMpa, "stress", units)} (${count} crushed)`,
    );
  }
  if (!requirement) return lines;
  const { strengthMpa, ageDays, statistic, confidence } = requirement;
  lines.push(
    say`Required: ${formatQuantity(strengthMpa, "stress", units)} at ${ageDays} days, to be met by ${statisticName(statistic, confidence)}`,
    tested && strength?.leastCement
      ? say`Least cement: ${strength.leastCement.message}`
      : say`Least cement: not known before this blend is tested`,
  );
  const otherwise = tested ? requirementNotShown(result) : undefined;
  const doubts = mix?.record.doubts ?? (otherwise ? [otherwise] : []);
  lines.push(...doubts.map((doubt) => say`Caution: ${doubt}`));
  return lines;
}
