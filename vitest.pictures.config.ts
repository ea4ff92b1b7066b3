import { defineConfig } from "vitest/config";

/** Not tests: makes the pictures of the README from the example study. */
export default defineConfig({
  test: { include: ["tests/pictures/*.ts"], testTimeout: 300_000 },
});
