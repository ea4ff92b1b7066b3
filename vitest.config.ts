import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";
import LongestFirst from "./tests/support/longestFirst.js";

/** Browsers, kernels, installations, whole appendices, long simulations: left out of the quick run. */
export const SLOW = "tests/**/*.slow.test.ts";

/** A sequencer of our own would put the files of a shuffled run back in order, without a word. */
const isShuffled = process.argv.some((word) => word.startsWith("--sequence.shuffle"));

export default defineConfig({
  test: {
    reporters: ["default", "./tests/support/plainSummary.ts"],
    sequence: isShuffled ? {} : { sequencer: LongestFirst },
    // Machine code made meanwhile on other threads takes more of the processor's time than a test is long.
    execArgv:
      Number.parseInt(process.versions.node, 10) <= 24 ? ["--interrupt-budget=1000000"] : [],
    projects: [
      {
        extends: true,
        test: {
          name: "rooms",
          include: ["tests/**/*.test.ts"],
          exclude: [SLOW],
          // One process a core, which loads the sources once for all its files.
          isolate: false,
          // Studies leave much behind: with room for it, a tenth less time goes into sorting it out.
          execArgv: ["--min-semi-space-size=32", "--max-semi-space-size=64"],
          maxWorkers: availableParallelism(),
          testTimeout: 30_000,
          hookTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: {
          name: "slow",
          include: [SLOW],
          // One more than cores: much of the time a worker waits for a browser or a kernel.
          maxWorkers: availableParallelism() + 1,
          sequence: { groupOrder: 1 },
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
    ],
  },
});
