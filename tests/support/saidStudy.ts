import { parseStudyYaml as parse } from "../../src/entries/parseStudyYaml.js";
import type { Finding } from "../../src/findings/finding.js";
import { computeStudy as compute } from "../../src/study/computeStudy.js";
import { readStudy as read } from "../../src/study/readStudy.js";
import type { Study } from "../../src/study/study.js";
import { renderAll } from "../../src/words/render.js";

/** As of the same names in `src/`, with findings as a person reads them in the study's language. */
export async function readStudy(...given: Parameters<typeof read>) {
  const { findings, locale, ...rest } = await read(...given);
  return { ...rest, locale, findings: renderAll(findings, locale) };
}

export function computeStudy(study: Study, reading: readonly Finding[] = []) {
  const { findings, ...rest } = compute(study, reading);
  return { ...rest, findings: renderAll(findings, study.config.language) };
}

export function parseStudyYaml(...given: Parameters<typeof parse>) {
  const { findings, locale, ...rest } = parse(...given);
  return { ...rest, locale, findings: renderAll(findings, locale) };
}
