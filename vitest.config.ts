import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    benchmark: { include: ["tests/bench/**/*.bench.ts"] },
    reporters: ["default", "./tests/support/plainSummary.ts"],
    testTimeout: 30_000,
  },
});
