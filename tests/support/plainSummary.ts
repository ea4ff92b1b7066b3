import type { Reporter, TestCase, TestModule } from "vitest/node";

/** Ends the run with one plain line, so that any script can read how it went. */
export default class PlainSummary implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    const tests = modules.flatMap((module) => [...module.children.allTests()]);
    const count = (state: ReturnType<TestCase["result"]>["state"]) =>
      tests.filter((test) => test.result().state === state).length;
    // A file that does not load has no tests to count, but it has failed.
    const broken = modules.filter((module) => module.errors().length > 0).length;
    const failed = count("failed") + broken + errors.length;
    const skipped = count("skipped");
    process.stdout.write(
      `\n${count("passed")} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}\n`,
    );
  }
}
