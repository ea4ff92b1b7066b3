import { join } from "node:path";
import { expect, it } from "vitest";
import { resultSchema } from "../support/resultSchema.js";
import { ROOT } from "../support/runCli.js";

// Slow, for it compiles the sources to read their types.
it("the JSON Schema of results is that of the types (else: npm run schema)", async () => {
  const text = `${JSON.stringify(resultSchema(), undefined, 2)}\n`;
  await expect(text).toMatchFileSnapshot(join(ROOT, "docs/result.schema.json"));
});
