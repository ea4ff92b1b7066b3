import { BaseSequencer, type TestSpecification } from "vitest/node";

/** The files that take longest, the longest first: one begun last would run when all else has ended. */
const LONGEST = [
  "workshop/classroom",
  "page/mixPage",
  "notebook/runNotebook",
  "workshop/notebooks",
  "notebook/allNotebooks",
  "cli/appendix",
  "notebook/browser",
  "notebook/runHere",
  "report/sitePrint",
];

/** Starts the longest files first, also on a machine that has not measured them yet. */
export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification) => {
      const at = LONGEST.findIndex((name) => moduleId.endsWith(`tests/${name}.slow.test.ts`));
      return at < 0 ? LONGEST.length : at;
    };
    const sorted = await super.sort(files);
    return sorted.sort((a, b) => rank(a) - rank(b));
  }
}
