import { defineConfig } from "vitest/config";

/** Rooms without files, kernels or windows of their own: their tests run in threads. */
export const PURE_ROOMS = [
  "words",
  "quantities",
  "numerics",
  "findings",
  "lab",
  "grading",
  "soil",
  "guidance",
  "blend",
  "strength",
  "batch",
  "tables",
  "workshop",
].map((room) => `tests/${room}/**/*.test.ts`);

/** Browsers, kernels, installations and whole appendices: left out of the quick run. */
export const SLOW = "tests/**/*.slow.test.ts";

export default defineConfig({
  test: {
    reporters: ["default", "./tests/support/plainSummary.ts"],
    projects: [
      {
        extends: true,
        test: {
          name: "pure",
          include: PURE_ROOMS,
          exclude: [SLOW],
          pool: "threads",
          isolate: false,
          testTimeout: 30_000,
          hookTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: {
          name: "rooms",
          include: ["tests/**/*.test.ts"],
          exclude: [...PURE_ROOMS, SLOW],
          isolate: false,
          testTimeout: 30_000,
          hookTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: { name: "slow", include: [SLOW], testTimeout: 180_000, hookTimeout: 180_000 },
      },
    ],
  },
});
