import { parseStudyYaml as parse } from "../../src/entries/parseStudyYaml.js";
import type { Finding } from "../../src/findings/finding.js";
import { computeStudy as compute } from "../../src/study/computeStudy.js";
import { readStudy as read } from "../../src/study/readStudy.js";
import type { Study } from "../../src/study/study.js";
import { renderAll } from "../../src/words/render.js";
import type { FullResult } from "./exampleResult.js";

/** As of the same names in `src/`, with findings as a person reads them in the study's language. */
export async function readStudy(...given: Parameters<typeof read>) {
  const { findings, locale, ...rest } = await read(...given);
  return { ...rest, locale, findings: renderAll(findings, locale) };
}

/** The result is typed as that of an example; a test of a study with less says so itself. */
export function computeStudy(study: Study, reading: readonly Finding[] = []) {
  const { findings, result } = compute(study, reading);
  return {
    ...(result ? { result: result as FullResult } : {}),
    findings: renderAll(findings, study.config.language),
  };
}

export function parseStudyYaml(...given: Parameters<typeof parse>) {
  const { findings, locale, ...rest } = parse(...given);
  return { ...rest, locale, findings: renderAll(findings, locale) };
}
