import { parseStudyYaml as parse } from "../../src/entries/parseStudyYaml.js";
import type { Finding } from "../../src/findings/finding.js";
import type { GradingCurve } from "../../src/grading/curve.js";
import { computeStudy as compute } from "../../src/study/computeStudy.js";
import { readStudy as read } from "../../src/study/readStudy.js";
import { sampleMaterial } from "../../src/study/sampledCurves.js";
import { readingSheets, type Study } from "../../src/study/study.js";
import { renderAll } from "../../src/words/render.js";
import type { FullResult } from "./exampleResult.js";

/** As of the same names in `src/`, with findings as a person reads them in the study's language. */
export async function readStudy(...given: Parameters<typeof read>) {
  const { findings, locale, ...rest } = await read(...given);
  return { ...rest, locale, findings: renderAll(findings, locale) };
}

const drawn = new Map<string, readonly GradingCurve[]>();

/** Draws are a sixth of a study's time, and most changes of a study leave its grading sheets as they are. */
function drawnOnce({ materials, config }: Study): (readonly GradingCurve[])[] {
  return materials.map((material) => {
    const key = JSON.stringify([readingSheets(material), config.seed, config.readingErrors]);
    const curves = drawn.get(key) ?? sampleMaterial(material, config);
    drawn.set(key, curves);
    return curves;
  });
}

/** The result is typed as that of an example; a test of a study with less says so itself. */
export function computeStudy(study: Study, reading: readonly Finding[] = []) {
  const { findings, result } = compute(study, reading, drawnOnce(study));
  return {
    ...(result ? { result: result as FullResult } : {}),
    findings: renderAll(findings, study.config.language),
  };
}

export function parseStudyYaml(...given: Parameters<typeof parse>) {
  const { findings, locale, ...rest } = parse(...given);
  return { ...rest, locale, findings: renderAll(findings, locale) };
}
