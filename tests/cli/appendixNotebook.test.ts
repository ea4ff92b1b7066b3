import { expect, it } from "vitest";
import { appendixNotebook } from "../../src/cli/appendixNotebook.js";

it("takes the notebook in the study's language", () => {
  expect(appendixNotebook("en")).toBe("permit-appendix.ipynb");
  expect(appendixNotebook("en-ZA")).toBe("permit-appendix.ipynb");
  expect(appendixNotebook("es-MX")).toBe("permit-appendix.es.ipynb");
});
