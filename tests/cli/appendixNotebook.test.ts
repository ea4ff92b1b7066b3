import { expect, it } from "vitest";
import { appendixNotebook } from "../../src/cli/packageFiles.js";
import { copyStudy } from "../support/studyCopy.js";

it("takes the notebook in the study's language, and English where nothing can be read", () => {
  const study = copyStudy("reading-room");
  expect(appendixNotebook(study.folder)).toBe("permit-appendix.ipynb");
  study.edit("study.yaml", /^units: /m, 'language: "es-MX"\nunits: ');
  expect(appendixNotebook(study.folder)).toBe("permit-appendix.es.ipynb");
  study.remove("study.yaml");
  expect(appendixNotebook(study.folder)).toBe("permit-appendix.ipynb");
});
