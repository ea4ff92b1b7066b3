import type { Finding } from "../lab/finding.js";
import { ownPlaces } from "../lab/ownPlaces.js";
import type { MappedSheet, SheetSource } from "../lab/sheetMapping.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import type { StudyConfig } from "./studyConfig.js";

/** Findings of computing, with the user's own header cells where a sheet has a layout of its own. */
export function ownFindings(config: StudyConfig, findings: readonly Finding[]): Finding[] {
  const { materials, envelope, compaction, strength, quality } = config;
  const sources: readonly (SheetSource | undefined)[] = [
    ...materials.flatMap(({ sieve, hydrometer, pipette, jar, limits }) => [
      ...[sieve, hydrometer, pipette, jar, limits],
    ]),
    ...[envelope, compaction, strength.sheet, quality?.siteBlocks],
  ];
  const mapped = sources.filter((source): source is MappedSheet => typeof source === "object");
  return findings.map((finding) => {
    const source = mapped.find(({ sheet }) => sheet === finding.file);
    return source ? ownPlaces(finding, source, { file: STUDY_FILE, key: source.sheet }) : finding;
  });
}
