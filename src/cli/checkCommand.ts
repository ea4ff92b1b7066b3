import { sheetsOf } from "../entries/sheets.js";
import { type Finding, hasErrors, STUDY_FILE } from "../findings/finding.js";
import { formatFindings } from "../findings/format.js";
import { jarFines } from "../grading/sedimentation/jar.js";
import { formatFixed, formatNumber } from "../quantities/format.js";
import { computeStudy } from "../study/computeStudy.js";
import { readStudy } from "../study/readStudy.js";
import { permitGaps } from "../study/review.js";
import type { MaterialResult, StudyResult } from "../study/studyResult.js";
import { say, type Text } from "../words/message.js";
import { render, renderAll } from "../words/render.js";
import { EXIT, parseCall } from "./call.js";
import { openStages } from "./computeCommand.js";

/** `loambook check`: all findings of a study, or of sheets alone; 3 where one of them is an error. */
export async function checkStudy(words: readonly string[]): Promise<number> {
  const call = parseCall("check", words, { flags: ["json"] }, "some");
  const { study, findings: reading, locale } = await readStudy(call.places);
  const computed = study ? computeStudy(study, reading) : { findings: reading, result: undefined };
  const { findings, result } = computed;
  if (call.flag("json")) {
    process.stdout.write(`${JSON.stringify(renderAll(findings, locale), undefined, 2)}\n`);
  } else {
    const next = result ? `\n${plain(whatNext(result, call.places.join(" ")))}\n` : "";
    process.stdout.write(`${formatFindings(findings, locale)}\n${next}`);
  }
  return hasErrors(findings) ? EXIT.badInput : EXIT.ok;
}

/** Names come from the study: what would steer the terminal is shown, not sent. */
function plain(text: string): string {
  return text.replace(
    /(?!\n)\p{Cc}/gu,
    (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}

/**
 * What to do after a check without errors, drawn from this study: which warnings bear on which result, what
 * comes next, what would make an open number known, and what a reader of a permit would miss.
 *
 * @param place the study, or the sheets, as named on the command line.
 */
export function whatNext(result: StudyResult, place: string): string {
  const { config, strength, testing } = result;
  const said = (text: Text) => render(text, config.language);
  const group = (title: Text, lines: readonly Text[]) =>
    lines.length === 0 ? [] : [said(title), ...lines.map((line) => `  - ${said(line)}`)];
  const { chosenCementPct, leastCement } = strength ?? {};
  // Of a blend that was not tested it would be another's.
  const least = testing?.state === "tested" && leastCement ? [leastCement.message] : [];
  const [found, noContent] = chosenCementPct === undefined ? [[], least] : [least, []];
  const state = group(say`The mix`, [...(testing ? [testing.message] : []), ...found]);
  const proposed = testing?.state === "proposed";
  // Every card prints the same.
  const cautions = result.mix?.record.doubts ?? [];
  // Why there is none, where it cannot be read from the least cement.
  const noMix = result.findings.flatMap(({ code, message }) =>
    code === "no-mix" ? [message] : [],
  );
  const first = [...noContent, ...noMix, ...cautions];
  return [
    ...group(say`Known so far`, knownLines(result)),
    ...(proposed ? state : []),
    ...group(say`Look at these first`, [...first, ...touchedResults(result, first)]),
    ...group(say`What comes next`, openStages(result)),
    ...group(say`What would reduce the uncertainty`, missingKnowledge(result)),
    ...(proposed ? [] : state),
    // Before blocks are crushed nobody reads it for a permit.
    ...group(say`What a permit reviewer would miss`, strength ? permitGaps(result) : []),
    ...group(say`Then`, thenLines(result, place)),
    "",
    said(say`The numbers do not replace a licensed engineer, a laboratory or the local code.`),
  ].join("\n");
}

/** What a study that sought no blend knows already: that is what its user waits for. */
function knownLines({ blend, firstMix, materials, ungraded = [] }: StudyResult): Text[] {
  if (blend?.target) return [];
  return [
    ...materials.map(({ name, fractions: { finesPct } }) =>
      finesPct === undefined
        ? say`The curve of ${name}.`
        : say`The curve of ${name}, with ${formatFixed(finesPct, 1)} % fines.`,
    ),
    ...ungraded.flatMap(({ name, jar }) => {
      if (!jar) return [];
      const { low, high } = jarFines(jar);
      return [
        say`${name} has ${formatFixed(low, 0)} to ${formatFixed(high, 0)} % fines, by the jar: a first guide.`,
      ];
    }),
    ...(firstMix ? [firstMix.message] : []),
  ];
}

function thenLines({ config, inputs }: StudyResult, place: string): Text[] {
  const isFolder = inputs.some(({ file }) => file === STUDY_FILE);
  const next = isFolder
    ? say`loambook appendix ${place} makes the technical appendix.`
    : say`loambook new <folder> --sheets ${place} makes a study of it, to which the next sheets are added.`;
  if (!config.invented) return [next];
  return [
    say`This study is marked “invented: true”: its numbers are not real, and every page says so.`,
    next,
  ];
}

/** Up to so many warnings that no result takes are told in full. */
const FEW = 3;

/**
 * One sentence for each result that warnings touch, the one that moves the mix most first: the strength of
 * the blocks, then the materials by their shares.
 *
 * @param told messages that are said already.
 */
function touchedResults(result: StudyResult, told: readonly Text[]): Text[] {
  const { config, blend, strength } = result;
  const said = told.map((text) => render(text, config.language));
  let left = result.findings.filter(
    ({ severity, message }) =>
      severity === "warning" && !said.includes(render(message, config.language)),
  );
  const take = (isTouched: (finding: Finding) => boolean): Text | undefined => {
    const before = left.length;
    left = left.filter((finding) => !isTouched(finding));
    const taken = before - left.length;
    return taken > 0 ? say`${taken}{0, plural, one { warning} other { warnings}}` : undefined;
  };
  const sentences: Text[] = [];
  const [blocks] = sheetsOf(config.strength.sheet);
  const inBlocks = take(({ file }) => file === blocks);
  const chosenCementPct = strength?.chosenCementPct;
  if (inBlocks) {
    sentences.push(
      chosenCementPct === undefined
        ? say`${blocks} (${inBlocks}): the least cement rests on it.`
        : say`${blocks} (${inBlocks}): the least cement, now ${formatFixed(chosenCementPct, 1)} %, rests on it.`,
    );
  }
  const shareOf = (id: string) => blend?.shares.find((share) => share.id === id)?.sharePct ?? 0;
  const materials = [...config.materials].sort((a, b) => shareOf(b.id) - shareOf(a.id));
  for (const { id, name, sieve, hydrometer, pipette, limits, jar } of materials) {
    const sharePct = shareOf(id);
    const files = sheetsOf(sieve, hydrometer, pipette, limits, jar);
    const inSheets = take(({ file }) => files.includes(file));
    if (!inSheets) continue;
    if (!blend) {
      sentences.push(say`Sheets of ${name} (${inSheets}): what is known of it rests on them.`);
      continue;
    }
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
  // Few of them speak for themselves.
  if (left.length <= FEW) return [...sentences, ...left.map(({ message }) => message)];
  const elsewhere = take(() => true);
  return elsewhere === undefined
    ? sentences
    : [...sentences, say`Elsewhere (${elsewhere}): read these before the numbers are used.`];
}

/** Points of the blend below which an assumed tail of a curve is not worth a test. */
const WORTH_A_TEST = 1;

/** What the study does not know, what that leaves open, and which sheet or entry would tell. */
function missingKnowledge(result: StudyResult): Text[] {
  const { config, blend, materials, mix } = result;
  const sharePct = (id: string) => blend?.shares.find((share) => share.id === id)?.sharePct;
  // Before there is a blend each material counts by itself.
  const used = materials.filter(({ id }) => !blend || (sharePct(id) ?? 0) >= 0.05);
  // Where such a sheet could not be analysed, its finding says what it lacks.
  const settled = new Set(
    config.materials.filter((one) => one.hydrometer ?? one.pipette).map(({ id }) => id),
  );
  const lines = [...leastCementLine(result)];
  for (const material of used) {
    if (!settled.has(material.id)) lines.push(...tailLine(material, sharePct(material.id)));
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
      say`With usual reading errors the fines of ${fines.name} lie between ${formatFixed(fines.low, 1)} and ${formatFixed(fines.high, 1)} %. Enter those of your laboratory under “reading-errors”: the interval then holds for its work.`,
    );
  }
  if (blend && !blend.robustness) {
    lines.push(
      say`How often the blend keeps to its limits from load to load is not known: say under “variability” how its materials change.`,
    );
  }
  if (mix && !mix.cost)
    lines.push(say`Nothing has a price: with “price” entries the cost is added up.`);
  return lines;
}

function leastCementLine({ strength }: StudyResult): Text[] {
  if (!strength?.leastCement) return [];
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
function tailLine({ name, curve }: MaterialResult, sharePct: number | undefined): Text[] {
  const [{ sizeMm, passingPct }] = curve.points;
  if (passingPct < WORTH_A_TEST) return [];
  if (sharePct === undefined) {
    return [
      say`${name} has no hydrometer or pipette sheet: what its ${formatFixed(passingPct, 1)} % below ${formatNumber(sizeMm, 2)} mm are, clay or silt, is not known. Such a sheet would show it.`,
    ];
  }
  const pointsOfBlend = (sharePct * passingPct) / 100;
  if (pointsOfBlend < WORTH_A_TEST) return [];
  return [
    say`${name} has no hydrometer or pipette sheet: below ${formatNumber(sizeMm, 2)} mm ${formatFixed(pointsOfBlend, 1)} points of the blend's curve are assumed, and its clay and silt are not distinguished.`,
  ];
}

function soilLines({ name, limits }: MaterialResult): Text[] {
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
